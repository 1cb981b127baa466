/**
 * A case as it stood on record at an instant: what was written down later is not there.
 *
 * @module views/model
 */
import {
  type Casebook,
  type CaseState,
  casesAt,
  type Kept,
  type SpecimenState,
  specimensOf,
} from "../../casebook/index.ts";

/**
 * The casebook of the case's apiary alone, in which this case, the results of others there, and what is said of the
 * region hold only what was written down before the instant: a region is often told anew once a laboratory has found
 * something. Slots that are then empty are gone. A value that was corrected later is gone too: the first entry is no
 * longer kept here.
 *
 * The clock of a device is believed: for looking back, never for deciding what is true.
 */
export function casebookBefore(casebook: Casebook, caseId: string, instant: string): Casebook {
  const state = casebook.cases[caseId];
  if (state === undefined) return casebook;
  const kept = keptBefore(instant);
  const tests = (of: CaseState) => each(of.tests, (test) => (test.recordedAt < instant ? test : null));
  const before: CaseState = {
    ...state,
    findings: each(state.findings, (own) => each(own, kept)),
    colonyStates: each(state.colonyStates, kept),
    tests: tests(state),
    outcomes: {},
    closed: null,
  };
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const sisters = apiary === undefined ? [] : casesAt(casebook, apiary.id).filter(({ id }) => id !== caseId);
  const specimens = [state, ...sisters].flatMap(({ id }) => specimensOf(casebook, id));
  return {
    ...casebook,
    apiaries:
      apiary === undefined
        ? {}
        : { [apiary.id]: { ...apiary, region: apiary.region === null ? null : kept(apiary.region) } },
    cases: Object.fromEntries(
      [before, ...sisters.map((other) => ({ ...other, tests: tests(other) }))].map((of) => [of.id, of]),
    ),
    specimens: Object.fromEntries(specimens.map((specimen) => [specimen.id, specimenBefore(specimen, instant)])),
  };
}

/** The specimen with the readings that were finished before the instant. */
function specimenBefore(specimen: SpecimenState, instant: string): SpecimenState {
  const kept = keptBefore(instant);
  return {
    ...specimen,
    readings: each(specimen.readings, (reading) => {
      const finished = reading.finished === null ? null : kept(reading.finished);
      return finished === null ? null : { ...reading, finished };
    }),
  };
}

const keptBefore =
  (instant: string) =>
  <T>(slot: Kept<T>): Kept<T> | null => {
    const [first, ...more] = slot.candidates.filter(({ recordedAt }) => recordedAt < instant);
    return first === undefined ? null : { candidates: [first, ...more] };
  };

/** The members changed; those that become null are gone. */
function each<From, To>(record: Readonly<Record<string, From>>, change: (from: From) => To | null): Record<string, To> {
  return Object.fromEntries(
    Object.entries(record).flatMap(([key, member]) => {
      const made = change(member);
      return made === null ? [] : [[key, made]];
    }),
  );
}
