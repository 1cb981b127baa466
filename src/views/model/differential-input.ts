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
  settled,
  wholeApiary,
} from "../../casebook/index.ts";
import { type Evidence, type FindingId, isTestId, publishedEvidence, tests } from "../../knowledge/index.ts";
import type { differential } from "../../reasoning/index.ts";
import { type Day, daysBetween, type Problem, problem, type Season, seasonOf } from "../../units/index.ts";
import { mitesInSister, readingsOf, testsOf } from "./colony-results.ts";
import { stopSince, stopsLifted } from "./done/stop-acts.ts";
import { stopName } from "./done/stops.ts";
import { seenAfterDeath } from "./seen-after-death.ts";
import { spreadOf, troubleIn } from "./spread.ts";

type Input = differential.DifferentialInput;
type State = NonNullable<Input["findings"][FindingId]>;

export interface AskedDifferential {
  readonly input: Input;
  /** The season that the ranking counts with, from which day and latitude; the latitude null where it is assumed. */
  readonly season: { readonly season: Season; readonly on: Day; readonly latitude: number | null };
  /** What lives around the apiary as somebody wrote it down, or a neighbour's find says; null where the usual is assumed. */
  readonly region: differential.Region | null;
  /** What was assumed or left out, to be said beside the answer. */
  readonly notes: readonly Problem[];
}

/** Without a latitude the season is that of the north, at this one. */
const assumedLatitude = 45;

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
  const date = lastLook(state, key);
  const sister = region?.acarapisWoodi === "found" ? null : mitesInSister(casebook, state, { key, lastLook: date });
  if (sister) notes.push(problem("mites-in-sister", "noted", "region.acarapisWoodi", { slots: sister }));
  notes.push(...liftsNotWeighed(casebook, state, key));
  if (isInConflict(apiary?.region)) notes.push(problem("region-in-conflict", "warned", "region"));
  const latitude = place?.latitude;
  if (latitude === undefined) notes.push(problem("no-latitude", "noted", "latitude"));
  const reckoned = sister ? { ...region, acarapisWoodi: "found" as const } : region;
  const colony = settled(state.colonyStates[key]);
  const input: Input = {
    date,
    // Without a latitude the season is that of the north, and the page says so.
    latitude: latitude ?? assumedLatitude,
    findings: { ...spreadOf(casebook, state, key), ...shared, ...own },
    ...(reckoned ? { region: reckoned } : {}),
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
    region: reckoned,
    notes,
  };
}

/** Stops lifted for this colony whose laboratory's result nobody wrote down as a result. */
const liftsNotWeighed = (casebook: Casebook, state: CaseState, key: string): readonly Problem[] =>
  stopsLifted(casebook, state)
    .filter((stop) => {
      if (stop.colonies.length > 0 && !stop.colonies.includes(key)) return false;
      // A result that the stop followed from, or one of before it, is not what the laboratory found on it.
      const isItsResult = ({ entry, value: { test, colony, on } }: CaseState["tests"][string]) =>
        (colony === null || colony === key) &&
        on >= stopSince(stop) &&
        !stop.answers.some((answer) => answer.entry === entry) &&
        isTestId(test) &&
        tests[test].conditions.some((each) => stop.conditions.includes(each));
      return !Object.values(state.tests).some(isItsResult);
    })
    .map(({ lifted, ...stop }) =>
      problem("lift-not-weighed", "warned", null, {
        slots: { what: stopName(stop), on: lifted.on, reference: lifted.laboratoryReference },
      }),
    );

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
 * What an answer of the day `on` would do to the season of a case: the season it was looked at in so far, with its last
 * day, and the one it would be ranked for; null where they are the same or nothing was looked at.
 */
export function seasonTurn(
  casebook: Casebook,
  state: CaseState,
  on: Day,
): { readonly from: Season; readonly to: Season; readonly last: Day } | null {
  const looked = Object.keys(state.findings).filter((key) => Object.keys(state.findings[key] ?? {}).length > 0);
  const last = looked
    .map((key) => lastLook(state, key))
    .sort()
    .at(-1);
  if (last === undefined || on <= last) return null;
  const place = state.apiary === null ? null : settled(casebook.apiaries[state.apiary]?.record);
  const latitude = place?.latitude ?? assumedLatitude;
  const [from, to] = [seasonOf(last, latitude), seasonOf(on, latitude)];
  return from === to ? null : { from, to, last };
}

/**
 * The answers without those on what only live bees show, where they were given for a day after the colony had died. They
 * are told. A colony found dead with no day of death may have shown them before: they count, and that is told too.
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
  const { diedOn, findings: late } = seenAfterDeath(state, key);
  if (late.length === 0) return all;
  const names = late.map((id) => evidence.findings[id]?.term ?? id).join("; ");
  notes.push(problem("seen-after-death", "warned", "findings", { slots: { findings: names, on: diedOn } }));
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
  const signs = (id: string) => troubleIn(state, id).filter((answer) => answer === "present").length;
  const [first = null] = [...colonies].sort((one, other) => signs(other.id) - signs(one.id));
  return first?.id ?? wholeApiary;
}
