/**
 * What a change of the evidence or the settings would do to past answers, before it is an entry; and the entry itself.
 *
 * @module views/model
 */
import { type Casebook, evidenceOf, type ReasoningSettings } from "../../casebook/index.ts";
import type { EntryDraft } from "../../journal/index.ts";
import { changedEvidence, type NotedChange, placeOfChange } from "../../knowledge/index.ts";
import { experience } from "../../reasoning/index.ts";
import type { Day, Problem } from "../../units/index.ts";
import { closedCases, pastCases } from "./closed-cases.ts";

/** What is tried: further changes, other settings, or both. */
export interface Trial {
  readonly changes?: readonly NotedChange[];
  readonly settings?: ReasoningSettings;
}

/** How the programme reckons now, how it would, and the past answers between. */
export interface TrialOutcome {
  readonly before: experience.InUse;
  readonly after: experience.InUse;
  readonly answers: experience.ChangedAnswers;
  /** Changes on trial that would be left out, and why. */
  readonly problems: readonly Problem[];
}

/** The outcome of a trial on every case on record; `tell` hears which share is done. A change on trial takes the place of a standing one of its place. */
export function trialOf(
  casebook: Casebook,
  { changes = [], settings }: Trial,
  tell?: (share: number) => void,
): TrialOutcome {
  const programme = evidenceOf(casebook);
  const cases = closedCases(casebook);
  const { evidence, problems } = changedEvidence(programme.evidence, changes);
  const before = experience.evidenceInUse(programme, cases);
  const after = experience.evidenceInUse({ ...programme, evidence, settings: settings ?? programme.settings }, cases);
  return { before, after, answers: experience.changesUnder(before, after, pastCases(casebook), tell), problems };
}

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
