/**
 * The entries that an act on a page becomes. Ids come in as a function, so that the same act gives the same entries.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, settled, wholeApiary } from "../../casebook/index.ts";
import type { BodyOf, EntryDraft, FindingState } from "../../journal/index.ts";
import type { Day } from "../../units/index.ts";
import { coloniesOfApiary } from "./apiary-view.ts";
import { colonyCodes } from "./codes.ts";
import type { Opening } from "./forms/case-form.ts";
import type { RedFlagId } from "./red-flag-answers.ts";

/** Gives a new opaque id at each call. */
export type NewId = () => string;

/** Apiary and colonies where they are new, then the case. */
export function openCaseDrafts(input: {
  readonly opening: Opening;
  readonly casebook: Casebook;
  readonly today: Day;
  readonly newId: NewId;
}): { readonly caseId: string; readonly drafts: readonly EntryDraft[] } {
  const { opening, casebook, today, newId } = input;
  const { apiary } = opening;
  const apiaryId = "id" in apiary ? apiary.id : newId();
  const code = "id" in apiary ? (settled(casebook.apiaries[apiary.id]?.record)?.code ?? "") : apiary.body.code;
  const taken = coloniesOfApiary(casebook, apiaryId).map((colony) => colony.code);
  const colonies = colonyCodes(code, taken, opening.newColonies).map((each) => ({ id: newId(), code: each }));
  const caseId = newId();
  return {
    caseId,
    drafts: [
      ...("id" in apiary
        ? []
        : [{ kind: "apiary-registered", at: today, about: [apiaryId], data: apiary.body } as const]),
      ...registerColonyDrafts(apiaryId, colonies, today),
      {
        kind: "case-opened",
        at: opening.case.openedOn,
        about: [caseId, apiaryId],
        data: { ...opening.case, colonies: [...opening.colonies, ...colonies.map((colony) => colony.id)] },
      },
    ],
  };
}

/** One entry a colony. */
export const registerColonyDrafts = (
  apiary: string,
  colonies: readonly { readonly id: string; readonly code: string }[],
  today: Day,
): readonly EntryDraft[] =>
  colonies.map(({ id, code }) => ({ kind: "colony-registered", at: today, about: [apiary, id], data: { code } }));

/** The answer to a red flag of the day `on`; it replaces every answer that stands. */
export function redFlagDraft(state: CaseState, flag: RedFlagId, answer: FindingState, on: Day): EntryDraft {
  return {
    kind: "red-flag-answered",
    at: on,
    about: [state.id, flag],
    replaces: entriesOf(state.redFlags[flag]),
    data: { flag, state: answer, on },
  };
}

/**
 * A finding of a colony, or of the whole apiary; it replaces every answer that stands. A finding that excludes this one
 * goes back to "not looked" when this one is present: only one of the two can be scored.
 */
export function findingDrafts(input: {
  readonly state: CaseState;
  /** Colony id, or `whole-apiary`. */
  readonly key: string;
  readonly finding: string;
  readonly exclusiveWith: string | null;
  readonly answer: FindingState;
  /** Day on which it was seen. */
  readonly on: Day;
}): readonly EntryDraft[] {
  const { state, key, finding, exclusiveWith, answer, on } = input;
  const draft = (id: string, value: FindingState): EntryDraft => ({
    kind: "finding-recorded",
    at: on,
    about: key === wholeApiary ? [state.id] : [state.id, key],
    replaces: entriesOf(state.findings[key]?.[id]),
    data: { colony: key === wholeApiary ? null : key, finding: id, state: value, on },
  });
  const other = exclusiveWith === null ? null : settled(state.findings[key]?.[exclusiveWith]);
  const excluded = answer === "present" && exclusiveWith !== null && other === "present";
  return [draft(finding, answer), ...(excluded ? [draft(exclusiveWith, "not-looked")] : [])];
}

/** Alive, dying or dead, as seen on the day `on`; a dead one with the day of its death, where that is known. */
export function colonyStateDraft(
  state: CaseState,
  colony: string,
  seen: Pick<BodyOf<"colony-state-recorded">, "state" | "on" | "diedOn">,
): EntryDraft {
  return {
    kind: "colony-state-recorded",
    at: seen.on,
    about: [state.id, colony],
    replaces: entriesOf(state.colonyStates[colony]),
    data: { colony, ...seen },
  };
}

/** Whom the case waits on from now, and until when. */
export const handOnDraft = (state: CaseState, data: BodyOf<"case-handed-on">, today: Day): EntryDraft => ({
  kind: "case-handed-on",
  at: today,
  about: [state.id],
  replaces: entriesOf(state.handedOn),
  data,
});

/** A look for the yard list, or a test for the kit. */
export function stepDraft(state: CaseState, step: Omit<BodyOf<"step-planned">, "colonies">, today: Day): EntryDraft {
  return {
    kind: "step-planned",
    at: today,
    about: [state.id],
    replaces: entriesOf(state.steps[step.step]),
    data: { ...step, colonies: [] },
  };
}

/** A sampling plan and a labelled specimen for each vial. */
export function samplingDrafts(input: {
  readonly caseId: string;
  readonly plan: BodyOf<"sampling-planned">;
  /** Code of each vial, one a colony of the plan, in its order. */
  readonly codes: readonly string[];
  readonly today: Day;
  readonly newId: NewId;
}): readonly EntryDraft[] {
  const { caseId, plan, codes, today, newId } = input;
  return [
    { kind: "sampling-planned", at: today, about: [caseId, newId()], data: plan },
    ...plan.colonies.map((colony, index): EntryDraft => {
      const code = codes[index] ?? "";
      return {
        kind: "specimen-labelled",
        at: today,
        about: [newId(), caseId, colony],
        data: {
          code,
          case: caseId,
          colony,
          takenOn: null,
          from: plan.from,
          preservative: plan.preservative,
          purpose: plan.purpose,
        },
      };
    }),
  ];
}

const entriesOf = (
  kept: { readonly candidates: readonly { readonly entry: string }[] } | null | undefined,
): readonly string[] => kept?.candidates.map((candidate) => candidate.entry) ?? [];
