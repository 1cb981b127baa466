/**
 * A case as it stood on record at an instant: what was written down later is not there.
 *
 * @module views/model
 */
import type { Candidate, Casebook, CaseState, Kept, SpecimenState } from "../../casebook/index.ts";

/**
 * The casebook in which this case, the results of others of its apiary, and what is said of its region hold only what was written down before
 * the instant: a region is often told anew once a laboratory has found something. Slots that are then empty are gone. A
 * value that was corrected later is gone too: the first entry is no longer kept here.
 *
 * The clock of a device is believed: for looking back, never for deciding what is true.
 */
export function casebookBefore(casebook: Casebook, caseId: string, instant: string): Casebook {
  const state = casebook.cases[caseId];
  if (state === undefined) return casebook;
  const kept = keptBefore(instant);
  const isBefore = (candidate: Candidate<unknown>) => candidate.recordedAt < instant;
  const before: CaseState = {
    ...state,
    findings: each(state.findings, (own) => each(own, kept)),
    colonyStates: each(state.colonyStates, kept),
    tests: each(state.tests, (test) => (isBefore(test) ? test : null)),
    outcomes: {},
    closed: null,
  };
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const isSister = (id: string) =>
    id === caseId || (state.apiary !== null && casebook.cases[id]?.apiary === state.apiary);
  const region = apiary?.region ? kept(apiary.region) : null;
  return {
    ...casebook,
    apiaries: apiary === undefined ? casebook.apiaries : { ...casebook.apiaries, [apiary.id]: { ...apiary, region } },
    cases: {
      ...each(casebook.cases, (other) =>
        isSister(other.id) ? { ...other, tests: each(other.tests, (test) => (isBefore(test) ? test : null)) } : other,
      ),
      [caseId]: before,
    },
    specimens: each(casebook.specimens, (specimen) =>
      specimen.case !== null && isSister(specimen.case) ? specimenBefore(specimen, instant) : specimen,
    ),
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
