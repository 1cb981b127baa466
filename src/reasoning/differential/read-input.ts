/** Checks a case and fills in the defaults; says what is wrong field by field. */
import { type Evidence, type FindingId, nothingWrongShare, publishedEvidence } from "../../knowledge/index.ts";
import {
  answered,
  blocked,
  isDay,
  type Problem,
  problem,
  type Result,
  type Season,
  seasonOf,
} from "../../units/index.ts";
import type { AnyInput, DifferentialInput, ReadCase, Region } from "./input.ts";
import { defaultThresholds, ranges } from "./judgements.ts";
import { readTests } from "./read-tests.ts";
import { unknownFields, words, wrong } from "./wrong-value.ts";

const seasons: readonly Season[] = ["winter", "spring", "summer", "autumn"];
const colonyStates = ["alive", "dying", "dead"] as const;
const findingStates = ["present", "absent", "not-looked"] as const;
const regionWords = {
  varroa: ["present", "absent"],
  acarapisWoodi: ["unknown", "found", "absent"],
  smallHiveBeetle: ["absent", "present", "endemic"],
  tropilaelaps: ["absent", "present", "endemic"],
  vespa: ["absent", "established"],
} as const;
const inputFields = [
  "season",
  "date",
  "latitude",
  "colony",
  "region",
  "findings",
  "tests",
  "nothingWrong",
  "thresholds",
  "draws",
  "seed",
];

/** The case with its defaults, or every problem that stands in its way. */
export function readInput(input: AnyInput, evidence: Evidence = publishedEvidence): Result<ReadCase> {
  if (typeof input !== "object" || input === null) {
    return blocked(wrong("", input, "an object with season or date, and findings"));
  }
  const problems: Problem[] = unknownFields(input as unknown as Record<string, unknown>, inputFields, "");
  const season = readSeason(input, problems);
  const state = input.colony?.state ?? "alive";
  if (!colonyStates.includes(state)) problems.push(wrong("colony.state", state, words(colonyStates)));
  const daysSinceDeath = input.colony?.daysSinceDeath ?? null;
  if (daysSinceDeath !== null && !(Number.isFinite(daysSinceDeath) && daysSinceDeath >= 0)) {
    problems.push(wrong("colony.daysSinceDeath", daysSinceDeath, "days, 0 or more"));
  }
  if (daysSinceDeath !== null && state !== "dead") {
    problems.push(wrong("colony.daysSinceDeath", daysSinceDeath, "only for a colony whose state is dead"));
  }
  const region = readRegion(input.region, problems);
  const { present, absent } = readFindings(input.findings, evidence, problems);
  const { tests, testsAt, setAside, found } = readTests(input.tests, problems, input);
  const nothingWrong = input.nothingWrong ?? nothingWrongShare;
  between("nothingWrong", nothingWrong, problems);
  const thresholds = { ...defaultThresholds, ...input.thresholds };
  between("thresholds.leading", thresholds.leading, problems);
  between("thresholds.open", thresholds.open, problems);
  noteLowBars(thresholds, problems);
  const draws = input.draws ?? ranges.draws;
  if (!(Number.isInteger(draws) && draws >= ranges.fewest && draws <= ranges.most)) {
    problems.push(wrong("draws", draws, `a whole number from ${ranges.fewest} to ${ranges.most}`));
  }
  const seed = input.seed ?? 1;
  if (!(Number.isSafeInteger(seed) && seed >= 0)) problems.push(wrong("seed", seed, "a whole number, 0 or more"));
  const latitude = input.latitude ?? null;
  const read = {
    latitude,
    colonyState: state,
    daysSinceDeath,
    region,
    present,
    absent,
    tests,
    testsAt,
    setAside,
    found,
    nothingWrong,
    thresholds,
    draws,
    seed,
  };
  return season === null || problems.some(({ severity }) => severity === "blocked")
    ? blocked(...problems)
    : answered({ season, ...read }, problems);
}

function readSeason({ season, date, latitude }: DifferentialInput, problems: Problem[]): Season | null {
  const before = problems.length;
  if (season !== undefined && !seasons.includes(season)) problems.push(wrong("season", season, words(seasons)));
  if (date !== undefined && !(typeof date === "string" && isDay(date))) {
    problems.push(wrong("date", date, "a day as YYYY-MM-DD"));
  }
  if (latitude !== undefined && !(Number.isFinite(latitude) && latitude >= -90 && latitude <= 90)) {
    problems.push(wrong("latitude", latitude, "degrees from −90 to 90, south negative"));
  }
  if (season === undefined && date === undefined) {
    problems.push(wrong("season", season, `${words(seasons)}, or a date with a latitude`));
  }
  if (date !== undefined && latitude === undefined) {
    problems.push(
      wrong("latitude", latitude, "degrees beside the date, since south of the equator seasons are turned"),
    );
  }
  if (problems.length > before) return null;
  if (date === undefined || latitude === undefined) return season ?? null;
  const byDate = seasonOf(date, latitude);
  if (season !== undefined && season !== byDate) {
    problems.push(
      problem("season-and-date-differ", "blocked", "season", {
        given: season,
        expected: `${byDate}, which the date and latitude say`,
        slots: { season, byDate, date },
      }),
    );
    return null;
  }
  return byDate;
}

function readRegion(region: Region | undefined, problems: Problem[]): Required<Region> {
  const given: Readonly<Record<string, unknown>> = (region ?? {}) as Record<string, unknown>;
  problems.push(...unknownFields(given, Object.keys(regionWords), "region."));
  const read: Record<string, string> = {};
  for (const [field, allowed] of Object.entries(regionWords)) {
    const value = given[field] ?? allowed[0];
    if (!(allowed as readonly unknown[]).includes(value))
      problems.push(wrong(`region.${field}`, value, words(allowed)));
    read[field] = String(value);
  }
  return read as unknown as Required<Region>;
}

/** Present and absent findings in the order of the knowledge, so that the order they were given in does not matter. */
function readFindings(
  given: AnyInput["findings"],
  { findingIds: known, findings }: Evidence,
  problems: Problem[],
): { present: readonly FindingId[]; absent: readonly FindingId[] } {
  if (typeof given !== "object" || given === null || Array.isArray(given)) {
    problems.push(wrong("findings", given, "an object of finding ids, each present, absent or not-looked"));
    return { present: [], absent: [] };
  }
  for (const [id, state] of Object.entries(given)) {
    if (!known.includes(id)) {
      problems.push(
        problem("unknown-finding", "blocked", `findings.${id}`, {
          given: id,
          expected: "the id of a finding",
          slots: { finding: id },
        }),
      );
    } else if (!findingStates.includes(state as never)) {
      problems.push(wrong(`findings.${id}`, state, words(findingStates)));
    }
  }
  const findingIds = known as readonly FindingId[];
  const other = (id: string) => findings[id]?.exclusiveWith ?? null;
  const present = findingIds.filter((id) => given[id] === "present");
  for (const id of present) {
    const partner = other(id) as FindingId | null;
    if (partner !== null && id < partner && present.includes(partner)) {
      problems.push(
        problem("exclusive-findings", "blocked", `findings.${id}`, {
          given: "present",
          expected: `not together with ${partner}: score one, leave the other not-looked`,
          slots: { finding: id, other: partner },
        }),
      );
    }
  }
  // Of an exclusive pair the one that is present says all there is: that the other is absent adds nothing.
  const absent = findingIds.filter((id) => {
    const partner = other(id) as FindingId | null;
    return given[id] === "absent" && !(partner !== null && present.includes(partner));
  });
  return { present, absent };
}

/** Bars that let a cause be named which is less likely than not, or past a likelier one: taken as they are, and told. */
function noteLowBars({ leading, open }: ReadCase["thresholds"], problems: Problem[]): void {
  if (leading < 0.5)
    problems.push(problem("threshold-below-half", "warned", "thresholds.leading", { slots: { leading } }));
  if (open > leading)
    problems.push(problem("thresholds-crossed", "warned", "thresholds.open", { slots: { open, leading } }));
}

function between(field: string, value: unknown, problems: Problem[]): void {
  if (!(typeof value === "number" && value > 0 && value < 1)) problems.push(wrong(field, value, "between 0 and 1"));
}
