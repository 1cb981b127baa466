/**
 * Results on record of a colony as the differential takes them: tests told, and dissections read here to the end.
 *
 * @module views/model
 */
import {
  type Casebook,
  type CaseState,
  casesAt,
  type SpecimenState,
  settled,
  specimensOf,
} from "../../casebook/index.ts";
import { isConditionId, isTestId, speaksForApiary, tests } from "../../knowledge/index.ts";
import { bench, differential } from "../../reasoning/index.ts";
import { type Day, daysBetween, isDay, type Problem, problem } from "../../units/index.ts";
import { present } from "./form.ts";
import { toldDissections } from "./found/told-dissections.ts";

type Test = differential.TestInput;

/** A result of so many days before the last look is told to be old: the colony has gone through a season since. Judgement. */
const oldAfterDays = 90;

/** One older than half a year tells of a colony with other bees, and is left out. Judgement. */
const tooOldAfterDays = 183;

/**
 * Results that came from elsewhere: of the colony, or of the whole apiary. One that cannot be is left out and told, so
 * that it does not take the answer of every colony with it; one from long before is weighed and told, one from longer ago left out and told.
 */
export function testsOf(
  state: CaseState,
  key: string,
  { lastLook: looked, notes }: { readonly lastLook: Day; readonly notes: Problem[] },
): readonly Test[] {
  return Object.values(state.tests)
    .map((candidate) => candidate.value)
    .filter(({ colony, test }) => colony === key || colony === null || speaksForApiary(test))
    .flatMap(({ colony: _, specimen: __, on, laboratory: ___, note: ____, which, ...counts }) => {
      if (!isTestId(counts.test)) {
        notes.push(problem("test-unknown", "warned", null, { slots: { test: counts.test, on } }));
        return [];
      }
      const asked: Test = present({ ...counts, which: which?.filter(isConditionId), date: on });
      const slots = { test: tests[counts.test].term, on };
      const unfit = differential.unfitTest(asked);
      if (unfit !== null) {
        const expected = unfit.expected ?? "";
        notes.push(problem("test-cannot-be", "warned", null, { slots: { ...slots, expected } }));
        return [];
      }
      const days = daysBetween(on, looked);
      if (days > tooOldAfterDays) {
        notes.push(problem("test-too-old", "warned", null, { slots: { ...slots, days } }));
        return [];
      }
      if (days > oldAfterDays) notes.push(problem("test-long-before", "warned", null, { slots: { ...slots, days } }));
      return [asked];
    });
}

/** Dissections of the colony read here to the end. */
export const readingsOf = (casebook: Casebook, state: CaseState, key: string): readonly Test[] =>
  specimensOf(casebook, state.id)
    .filter((specimen) => specimen.colony === key)
    .flatMap(dissectionsOf);

/** The result of a specimen that was read to the end, of the reading that was finished last; none where none was. */
function dissectionsOf(specimen: SpecimenState): readonly Test[] {
  const finished = Object.values(specimen.readings)
    .flatMap((reading) => {
      const end = settled(reading.finished);
      return end ? [{ reading, on: end.on }] : [];
    })
    .sort((one, other) => one.on.localeCompare(other.on))
    .at(-1);
  const label = settled(specimen.label);
  if (!finished || !label) return [];
  const counted = bench.tally(Object.values(finished.reading.bees).flatMap((bee) => settled(bee) ?? []));
  const received = settled(specimen.received);
  return [
    {
      test: "tracheal-dissection",
      positive: counted.positive,
      examined: counted.positive + counted.clear,
      unreadable: counted.partlyRead + counted.unreadable,
      date: received?.takenOn ?? label.takenOn ?? finished.on,
      takenFrom: label.from,
      ...(received ? { aliveWhenTaken: received.aliveWhenTaken } : {}),
    },
  ];
}

/** A neighbour's find older than this tells nothing of now: a year, so that the season comes round. Judgement. */
const neighbourFindDays = 366;

/**
 * The last dissection that found mites in another colony of the apiary, in the year before the last look: where one
 * colony has them, they live around the rest. Its own find, and one of the whole apiary, is weighed as a test already.
 */
export function mitesInSister(
  casebook: Casebook,
  state: CaseState,
  { key, lastLook }: { readonly key: string; readonly lastLook: Day },
): { readonly colony: string; readonly on: Day } | null {
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const codes = new Map(
    Object.values(apiary?.colonies ?? {})
      .filter(({ id }) => id !== key)
      .map(({ id, record }) => [id, settled(record)?.code ?? id]),
  );
  if (apiary === undefined || codes.size === 0) return null;
  const finds = casesAt(casebook, apiary.id)
    .flatMap((each) => [
      ...toldDissections(each).map(({ on, ...told }) => ({ ...told, date: on })),
      ...specimensOf(casebook, each.id).flatMap((specimen) =>
        dissectionsOf(specimen).map((read) => ({ ...read, colony: specimen.colony })),
      ),
    ])
    .filter(({ positive = 0 }) => positive > 0)
    .flatMap(({ colony, date = "" }) => {
      const code = codes.get(colony ?? "");
      return code === undefined ? [] : [{ colony: code, on: date }];
    })
    .filter(({ on }) => isDay(on) && on <= lastLook && daysBetween(on, lastLook) <= neighbourFindDays);
  return finds.sort((one, other) => one.on.localeCompare(other.on)).at(-1) ?? null;
}
