/**
 * What the differential is asked for a colony: everything on record of it, and nothing that is not.
 *
 * @module views/model
 */
import {
  type ApiaryState,
  type Casebook,
  type CaseState,
  coloniesOf,
  isInConflict,
  type SpecimenState,
  settled,
  specimensOf,
  wholeApiary,
} from "../../casebook/index.ts";
import {
  type Evidence,
  type FindingId,
  isConditionId,
  isTestId,
  publishedEvidence,
  speaksForApiary,
  tests,
} from "../../knowledge/index.ts";
import { bench, differential } from "../../reasoning/index.ts";
import { type Day, daysBetween, type Problem, problem, type Season, seasonOf } from "../../units/index.ts";
import { askedFindings } from "./findings-grid.ts";
import { present } from "./form.ts";

type Input = differential.DifferentialInput;
type Test = differential.TestInput;
type State = NonNullable<Input["findings"][FindingId]>;

export interface AskedDifferential {
  readonly input: Input;
  /** The season that the ranking counts with, from which day and latitude; the latitude null where it is assumed. */
  readonly season: { readonly season: Season; readonly on: Day; readonly latitude: number | null };
  /** What lives around the apiary as somebody wrote it down; null where the usual is assumed. */
  readonly region: differential.Region | null;
  /** What was assumed or left out, to be said beside the answer. */
  readonly notes: readonly Problem[];
}

/** Findings that speak of a colony doing well; they do not make it one that has the trouble. */
const goodSigns: readonly FindingId[] = [
  "normal_eggs_and_queen",
  "stores_ample",
  "calm_polished_cells",
  "hover_facing_hive",
];

/** Without a latitude the season is that of the north, at this one. */
const assumedLatitude = 45;

/** Fewest colonies at an apiary for "only one" or "most" to mean anything, by the definition of the findings. */
const fewestColonies = 4;

/**
 * The question put for one colony of a case; `key` is its id, or `whole-apiary`. With the evidence that the programme
 * uses its own findings are in; ids that the evidence does not have are left out.
 */
export function differentialInput(
  casebook: Casebook,
  state: CaseState,
  key: string,
  evidence: Evidence = publishedEvidence,
): AskedDifferential {
  const notes: Problem[] = [];
  const own = whileAlive(state, key, { findings: recorded({ state, key, evidence, notes }), evidence, notes });
  const shared = key === wholeApiary ? {} : recorded({ state, key: wholeApiary, evidence, notes });
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const place = settled(apiary?.record);
  const region = regionOf(apiary);
  const sister = mitesInSister(casebook, state, key);
  if (sister && region?.acarapisWoodi !== "found")
    notes.push(problem("mites-in-sister", "noted", "region.acarapisWoodi", { slots: sister }));
  if (isInConflict(apiary?.region)) notes.push(problem("region-in-conflict", "warned", "region"));
  const date = lastLook(state, key);
  const latitude = place?.latitude;
  if (latitude === undefined) notes.push(problem("no-latitude", "noted", "latitude"));
  const colony = settled(state.colonyStates[key]);
  const input: Input = {
    date,
    // Without a latitude the season is that of the north, and the page says so.
    latitude: latitude ?? assumedLatitude,
    findings: { ...spread(casebook, state), ...shared, ...own },
    ...(region || sister ? { region: { ...region, ...(sister ? { acarapisWoodi: "found" as const } : {}) } } : {}),
    tests: [...testsOf(state, key, { lastLook: date, notes }), ...readingsOf(casebook, state, key)],
    ...(colony
      ? {
          colony: {
            state: colony.state,
            ...(colony.diedOn === undefined ? {} : { daysSinceDeath: Math.max(0, daysBetween(colony.diedOn, date)) }),
          },
        }
      : {}),
  };
  return {
    input,
    season: { season: seasonOf(date, latitude ?? assumedLatitude), on: date, latitude: latitude ?? null },
    region,
    notes,
  };
}

/**
 * The last dissection that found mites in another colony of the apiary: where one colony has them, they live around the
 * rest. Its own find is no news of its surroundings: it is weighed as a test already.
 */
function mitesInSister(
  casebook: Casebook,
  state: CaseState,
  key: string,
): { readonly colony: string; readonly on: Day } | null {
  const apiary = state.apiary === null ? undefined : casebook.apiaries[state.apiary];
  const sisters = Object.values(apiary?.colonies ?? {}).filter(({ id }) => id !== key);
  if (sisters.length === 0) return null;
  const codes = new Map(sisters.map(({ id, record }) => [id, settled(record)?.code ?? id]));
  const told = Object.values(casebook.cases)
    .filter((each) => each.apiary === state.apiary)
    .flatMap((each) => sisters.flatMap(({ id }) => testsOf(each, id, null).map((test) => [id, test] as const)));
  const read = Object.values(casebook.specimens)
    .filter(({ colony }) => colony !== null && codes.has(colony))
    .flatMap((specimen) => dissectionsOf(specimen).map((test) => [specimen.colony ?? "", test] as const));
  const finds = [...told, ...read]
    .filter(([, { test, positive = 0 }]) => test === "tracheal-dissection" && positive > 0)
    .map(([id, { date = "" }]) => ({ colony: codes.get(id) ?? id, on: date }));
  return finds.sort((one, other) => one.on.localeCompare(other.on)).at(-1) ?? null;
}

/** What was written down of the region, without its source. */
function regionOf(apiary: ApiaryState | undefined): differential.Region | null {
  const told = settled(apiary?.region);
  if (!told) return null;
  const { source: _, ...region } = told;
  return region;
}

/** Settled findings under a key. Where two people differ the finding counts for nothing, and that is said. */
function recorded({
  state,
  key,
  evidence: { findings },
  notes,
}: {
  readonly state: CaseState;
  readonly key: string;
  readonly evidence: Evidence;
  readonly notes: Problem[];
}): Partial<Record<FindingId, State>> {
  const found: Partial<Record<FindingId, State>> = {};
  for (const [id, kept] of Object.entries(state.findings[key] ?? {})) {
    const finding = Object.hasOwn(findings, id) ? findings[id] : undefined;
    if (finding === undefined) continue;
    const value = settled(kept);
    if (value === null) notes.push(problem("finding-in-conflict", "warned", id, { slots: { finding: finding.term } }));
    else found[id as FindingId] = value;
  }
  return found;
}

/**
 * The answers without those on what only live bees show, where they were given of a colony that had died by then. They
 * are told.
 */
function whileAlive(
  state: CaseState,
  key: string,
  {
    findings: all,
    evidence,
    notes,
  }: {
    readonly findings: Partial<Record<FindingId, State>>;
    readonly evidence: Evidence;
    readonly notes: Problem[];
  },
): Partial<Record<FindingId, State>> {
  const colony = settled(state.colonyStates[key]);
  if (colony?.state !== "dead") return all;
  const dead = colony.diedOn ?? colony.on;
  const seenOn = (id: string) => state.findings[key]?.[id]?.candidates[0]?.at.slice(0, 10) ?? "";
  const late = (Object.keys(all) as FindingId[]).filter(
    (id) => differential.needsLiveBees.includes(id) && all[id] !== "not-looked" && seenOn(id) >= dead,
  );
  if (late.length === 0) return all;
  const names = late.map((id) => evidence.findings[id]?.term ?? id).join(", ");
  notes.push(problem("seen-after-death", "warned", "findings", { slots: { findings: names, on: dead } }));
  return Object.fromEntries(Object.entries(all).filter(([id]) => !late.includes(id as FindingId)));
}

/** The latest day on which a finding of the colony or the place was looked at; the day of the call when none was. */
function lastLook(state: CaseState, key: string): Day {
  const days = [key, wholeApiary].flatMap((each) =>
    Object.values(state.findings[each] ?? {}).flatMap((kept) =>
      kept.candidates.flatMap((candidate) => (candidate.value === "not-looked" ? [] : candidate.at.slice(0, 10))),
    ),
  );
  return days.sort().at(-1) ?? state.record?.candidates[0].value.openedOn ?? "1970-01-01";
}

/**
 * "Only one colony" and "most colonies", worked out from the records: only where four colonies or more are on record
 * and each was looked at for at least one sign, since not looked for is not absent.
 */
function spread(casebook: Casebook, state: CaseState): Partial<Record<FindingId, State>> {
  const all = Object.keys((state.apiary === null ? undefined : casebook.apiaries[state.apiary])?.colonies ?? {});
  const looked = all.filter((colony) => answers(state, colony).length > 0);
  if (all.length < fewestColonies || looked.length < all.length) return {};
  const affected = all.filter((colony) => answers(state, colony).includes("present")).length;
  if (affected === 1) return { single_colony: "present" };
  return affected * 2 >= all.length ? { most_colonies: "present" } : {};
}

/** Answers to the signs of trouble of a colony, "not looked" left out. */
function answers(state: CaseState, colony: string): readonly State[] {
  return askedFindings
    .filter((finding) => finding.kind === "sign" && !goodSigns.includes(finding.id))
    .flatMap((finding) => settled(state.findings[colony]?.[finding.id]) ?? [])
    .filter((answer) => answer !== "not-looked");
}

/** A result of so many days before the last look is told to be old: the colony has gone through a season since. Judgement. */
const oldAfterDays = 90;

/**
 * Results that came from elsewhere: of the colony, or of the whole apiary. One that cannot be is left out and told, so
 * that it does not take the answer of every colony with it; one from long before is weighed and told. Nothing is told
 * where there is no place for it.
 */
function testsOf(
  state: CaseState,
  key: string,
  told: { readonly lastLook: Day; readonly notes: Problem[] } | null,
): readonly Test[] {
  return Object.values(state.tests)
    .map((candidate) => candidate.value)
    .filter(({ colony, test }) => colony === key || colony === null || speaksForApiary(test))
    .flatMap(({ colony: _, specimen: __, on, laboratory: ___, note: ____, which, ...counts }) => {
      const asked: Test = present({ ...counts, which: which?.filter(isConditionId), date: on });
      const slots = { test: isTestId(counts.test) ? tests[counts.test].term : counts.test, on };
      const unfit = differential.unfitTest(asked);
      if (unfit !== null) {
        const expected = unfit.expected ?? "";
        told?.notes.push(problem("test-cannot-be", "warned", null, { slots: { ...slots, expected } }));
        return [];
      }
      const age = told === null ? 0 : daysBetween(on, told.lastLook);
      if (age > oldAfterDays)
        told?.notes.push(problem("test-long-before", "warned", null, { slots: { ...slots, days: age } }));
      return [asked];
    });
}

/** Dissections of the colony read here to the end. */
const readingsOf = (casebook: Casebook, state: CaseState, key: string): readonly Test[] =>
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

/** The colonies of a case and how much is known of each: the one with most signs present first. */
export function colonyChoices(
  casebook: Casebook,
  state: CaseState,
): readonly { readonly key: string; readonly code: string }[] {
  const colonies = coloniesOf(casebook, state.id).map((colony) => ({ key: colony.id, code: colony.code ?? colony.id }));
  return colonies;
}

/** The colony a page opens with: the one with most signs present, the first when none has any. */
export function mostTroubled(casebook: Casebook, state: CaseState): string {
  const colonies = coloniesOf(casebook, state.id);
  const signs = (id: string) => answers(state, id).filter((answer) => answer === "present").length;
  const [first = null] = [...colonies].sort((one, other) => signs(other.id) - signs(one.id));
  return first?.id ?? wholeApiary;
}
