/**
 * What a change of the evidence or the settings would do to past answers, before it is an entry; and the entry itself.
 *
 * @module views/model
 */
import { type Casebook, evidenceOf, type ReasoningSettings, standingChanges } from "../../casebook/index.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { changedEvidence, type NotedChange, placeOfChange, publishedEvidence } from "../../knowledge/index.ts";
import { experience } from "../../reasoning/index.ts";
import type { Day, Problem } from "../../units/index.ts";
import { closedCases, pastCases } from "./closed-cases.ts";

/** What is tried: further changes, standing ones taken back, other settings. */
export interface Trial {
  readonly changes?: readonly NotedChange[];
  /** Ids of the entries of changes that are taken back. */
  readonly without?: readonly string[];
  readonly settings?: ReasoningSettings;
}

/** How the programme reckons now, how it would, and the past answers between. */
export interface TrialOutcome {
  readonly before: experience.InUse;
  readonly after: experience.InUse;
  readonly answers: experience.ChangedAnswers;
  /** What the trial would bring that is not told already: changes left out, and notes. */
  readonly problems: readonly Problem[];
}

/**
 * The outcome of a trial on every case on record; `tell` hears which share is done.
 *
 * The evidence is made of all changes as they would stand, those on trial in the place of standing ones of their place:
 * so it is the evidence that accepting them makes. Cases are asked with what that evidence can take of their records.
 */
export function trialOf(
  casebook: Casebook,
  { changes = [], without = [], settings }: Trial,
  tell?: (share: number) => void,
): TrialOutcome {
  const programme = evidenceOf(casebook);
  const tried = new Set(changes.map(({ change }) => placeOfChange(change)));
  const kept = standingChanges(casebook).filter(
    ({ change, entry }) => !tried.has(placeOfChange(change)) && !without.includes(entry),
  );
  const { evidence, problems } = changedEvidence(publishedEvidence, [...kept, ...changes]);
  const then = { ...programme, evidence, settings: settings ?? programme.settings };
  const before = experience.evidenceInUse(programme, closedCases(casebook));
  const after = experience.evidenceInUse(then, closedCases(casebook, evidence));
  // The same cases and colonies in the same order: which are asked does not hang on the evidence.
  const asked = pastCases(casebook, evidence);
  const past = pastCases(casebook).map((each, at) => ({ ...each, inputAfter: asked[at]?.input ?? each.input }));
  const told = new Set(programme.problems.map(sameProblem));
  return {
    ...{ before, after },
    answers: experience.changesUnder(before, after, past, tell),
    problems: problems.filter((each) => !told.has(sameProblem(each))),
  };
}

const sameProblem = ({ code, field, slots }: Problem): string => JSON.stringify([code, field, slots]);

type Body<K extends EntryDraft["kind"]> = Extract<EntryDraft, { readonly kind: K }>["data"];

/** The entry of a change: it takes the place of every standing change of the same place. */
export function evidenceDraft(
  casebook: Casebook,
  programme: string,
  data: Body<"evidence-changed">,
  today: Day,
): EntryDraft {
  const standing = casebook.programmes[programme]?.changes[placeOfChange(data.change)];
  const replaces = standing?.candidates.map(({ entry }) => entry) ?? [];
  return { kind: "evidence-changed", at: today, about: [programme], replaces, data };
}

/** The entry of settings: it takes the place of every standing one. */
export function settingsDraft(
  casebook: Casebook,
  programme: string,
  data: Body<"reasoning-set">,
  today: Day,
): EntryDraft {
  const standing = casebook.programmes[programme]?.settings;
  const replaces = standing?.candidates.map(({ entry }) => entry) ?? [];
  return { kind: "reasoning-set", at: today, about: [programme], replaces, data };
}
