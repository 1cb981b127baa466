/**
 * The closed cases of a casebook as experience takes them, and its past questions.
 *
 * @module views/model
 */
import {
  type Casebook,
  type CaseState,
  coloniesOf,
  evidenceOf,
  isInConflict,
  settled,
  specimensOf,
  wholeApiary,
} from "../../casebook/index.ts";
import type { Evidence } from "../../knowledge/index.ts";
import { differential, experience } from "../../reasoning/index.ts";
import { casebookBefore } from "./as-of.ts";
import { differentialInput, mostTroubled } from "./differential-input.ts";
import type { Taught } from "./own-evidence.ts";

type ClosedCase = experience.ClosedCase;

/**
 * Every closed case. `whole` is told of the colony in which a result confirms a cause, the first by code; where none
 * does, of the one with most signs, since nobody wrote down which it was. `before` is told of the colony that the page
 * opens with, the one with most signs: what was asked then, from what was on record before the first result able to
 * confirm one of the causes; where none is on record, before the closing. Findings that the evidence does not have are
 * left out; it is that of the programme.
 */
export function closedCases(
  casebook: Casebook,
  evidence: Evidence = evidenceOf(casebook).evidence,
): readonly ClosedCase[] {
  return Object.values(casebook.cases).flatMap((state) => {
    const closed = settled(state.closed);
    if (closed === null) return [];
    const key = mostTroubled(casebook, state);
    const { confirmedCauses, confirmedBy = null, on } = closed;
    const instant = confirmingInstant(casebook, state, confirmedCauses) ?? state.closed?.candidates[0].recordedAt ?? "";
    return [
      {
        ...{ id: state.id, closedOn: on, confirmedCauses, confirmedBy },
        results: resultsOf(casebook, state),
        whole: differentialInput(casebook, state, confirmedColony(casebook, state, confirmedCauses) ?? key, evidence)
          .input,
        before: inputBefore(casebook, state, { key, instant, evidence }),
      },
    ];
  });
}

/**
 * The question of each colony of each case of which anything was seen or tested; of a case without one, that of the
 * whole apiary. What a change of the evidence is tried on: a page answers for each colony.
 */
export function pastCases(
  casebook: Casebook,
  evidence: Evidence = evidenceOf(casebook).evidence,
): readonly experience.PastCase[] {
  return Object.values(casebook.cases)
    .filter((state) => state.record !== null)
    .flatMap((state): readonly experience.PastCase[] => {
      const asked = (key: string) => differentialInput(casebook, state, key, evidence).input;
      const colonies = coloniesOf(casebook, state.id).filter(({ id }) => isKnownOf(casebook, state, id));
      return colonies.length === 0
        ? [{ id: state.id, colony: null, input: asked(wholeApiary) }]
        : colonies.map(({ id, code }) => ({ id: state.id, colony: code ?? id, input: asked(id) }));
    });
}

/** Whether anything is on record of this colony itself. */
const isKnownOf = (casebook: Casebook, state: CaseState, colony: string): boolean =>
  Object.keys(state.findings[colony] ?? {}).length > 0 ||
  Object.values(state.tests).some(({ value }) => value.colony === colony) ||
  specimensOf(casebook, state.id).some((specimen) => specimen.colony === colony);

/**
 * How the casebook's programme reckons now: its evidence with its changes and experience, and its settings. A case with
 * two closings side by side teaches nothing, and that is said.
 */
export function inUseOf(casebook: Casebook): experience.InUse {
  const inUse = experience.evidenceInUse(evidenceOf(casebook), closedCases(casebook));
  const undecided = Object.values(casebook.cases)
    .filter(({ closed }) => isInConflict(closed))
    .map(({ id }) => experience.experienceProblem("closing-in-conflict", "warned", id, { case: id }));
  return { ...inUse, problems: [...inUse.problems, ...undecided] };
}

/** What the closed cases of the casebook taught. Reads each of them: not for the page's own thread. */
export function taughtBy(casebook: Casebook): Taught {
  const { lessons, counts } = inUseOf(casebook).experience;
  return { cases: lessons.length, counts };
}

/** Results of tests of every colony of the case, and of the apiary. */
function resultsOf(casebook: Casebook, state: CaseState): readonly differential.TestInput[] {
  const keys = [...coloniesOf(casebook, state.id).map((colony) => colony.id), wholeApiary];
  return keys.flatMap((key) => differentialInput(casebook, state, key).input.tests ?? []);
}

/** The first colony by code of which a result of its own confirms one of the causes; null where none does. */
function confirmedColony(casebook: Casebook, state: CaseState, causes: readonly string[]): string | null {
  const isConfirmed = ({ id }: { readonly id: string }) => {
    const tests = Object.fromEntries(Object.entries(state.tests).filter(([, { value }]) => value.colony === id));
    const own = differentialInput(casebook, { ...state, tests }, id).input.tests ?? [];
    return own.some((result) => causes.some((cause) => differential.confirms(result, cause)));
  };
  return coloniesOf(casebook, state.id).find(isConfirmed)?.id ?? null;
}

/** When the first result able to confirm a cause was written down; null where none was. */
function confirmingInstant(casebook: Casebook, state: CaseState, causes: readonly string[]): string | null {
  const specimens = Object.values(casebook.specimens).filter((specimen) => specimen.case === state.id);
  const instants = [
    ...Object.values(state.tests).map(({ recordedAt }) => recordedAt),
    ...specimens.flatMap(({ readings }) =>
      Object.values(readings).flatMap(({ finished }) => finished?.candidates.map(({ recordedAt }) => recordedAt) ?? []),
    ),
  ].sort();
  const confirmsBy = (instant: string) => {
    // The result itself must be in: an instant later than its own by the least that texts can tell.
    const then = casebookBefore(casebook, state.id, `${instant}~`);
    const known = then.cases[state.id];
    return (
      known !== undefined &&
      resultsOf(then, known).some((result) => causes.some((cause) => differential.confirms(result, cause)))
    );
  };
  return instants.find(confirmsBy) ?? null;
}

/** The question as it could have been put before the instant; null where nothing was looked for or tested yet. */
function inputBefore(
  casebook: Casebook,
  state: CaseState,
  { key, instant, evidence }: { readonly key: string; readonly instant: string; readonly evidence: Evidence },
): ClosedCase["before"] {
  const then = casebookBefore(casebook, state.id, instant);
  const known = then.cases[state.id];
  if (known === undefined) return null;
  const { input } = differentialInput(then, known, key, evidence);
  const isLooked = Object.values(input.findings).some((answer) => answer !== "not-looked");
  return isLooked || (input.tests ?? []).length > 0 ? input : null;
}
