/** What a share of infested bees means by the handbooks: bands and lines with their sources, which do not agree. */
import { type Band, type Citations, type ThresholdId, thresholds } from "../../knowledge/index.ts";
import { answered, type Estimate, ensure, type Problem, type Result, type Season } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";

/** over: the whole interval is at or above the line; under: all of it below; either: the line lies inside. */
export type Position = "over" | "under" | "either";

/** One line of one source, and where the estimate stands. */
export interface Statement {
  readonly id: ThresholdId;
  readonly position: Position;
  /** The line in percent of bees infested; a span where the source gives one. */
  readonly fromPercent: number;
  readonly toPercent: number;
  readonly words: string;
  readonly but: string | null;
  readonly season: string | null;
  readonly region: string | null;
  readonly citations: Citations;
}

export interface Reading {
  /** The band of the point estimate; null in a gap where nothing is said. */
  readonly band: Band | null;
  readonly lowBand: Band | null;
  readonly highBand: Band | null;
  /** Every band the interval touches, lowest first. */
  readonly bandsCrossed: readonly Band[];
  readonly bandsFrom: Citations;
  readonly statements: readonly Statement[];
  readonly rule: "BE13";
}

/**
 * Reads a share of infested bees against the bands and every line of the handbooks.
 *
 * There is no single threshold. Where a band says nothing (20 to 30, 40 to 50 %) the band is null. Lines given as a
 * span count as over from their upper end, under below their lower end.
 *
 * @returns Reading with warnings `interval-spans-bands`, `sources-disagree`, `bands-out-of-season`
 * @throws DomainError when the estimate is not a share
 * @source knowledge: tracheal-bands and the other tracheal thresholds
 *
 * @example
 * reading({ value: 0.34, low: 0.21, high: 0.49, level: 0.95, interval: "confidence", method: "clopper-pearson", rule: "BE5", n: 50 }, "autumn").value.band.means  // → damage likely
 */
export function reading(estimate: Estimate, season: Season): Result<Reading> {
  const { value, low, high } = estimate;
  ensure(low >= 0 && low <= value && value <= high && high <= 1, "estimate", `${low}, ${value}, ${high}`, "a share");
  const { bands, citations } = thresholds["tracheal-bands"];
  const bandAt = (share: number) =>
    bands.find(({ from, to }) => 100 * share >= from && (to === null || 100 * share < to)) ?? null;
  const crossed = bands.filter(({ from, to }) => 100 * high >= from && (to === null || 100 * low < to));
  const statements = lines.map(({ id, fromPercent, toPercent }): Statement => {
    const { words, but, season: when, region, citations: by } = thresholds[id];
    const position = 100 * low >= toPercent ? "over" : 100 * high < fromPercent ? "under" : "either";
    return { id, position, fromPercent, toPercent, words, but, season: when, region, citations: by };
  });
  const count = (position: Position) => statements.filter((each) => each.position === position).length;
  const problems: Problem[] = [];
  if (crossed.length !== 1 || bandAt(low) === null || bandAt(high) === null) {
    const slots = { lowPercent: 100 * low, highPercent: 100 * high };
    problems.push(benchProblem("interval-spans-bands", "warned", "estimate", slots));
  }
  if (count("over") > 0 && count("under") > 0) {
    const slots = { over: count("over"), under: count("under") };
    problems.push(benchProblem("sources-disagree", "noted", "estimate", slots));
  }
  if (season === "spring" || season === "summer") {
    problems.push(benchProblem("bands-out-of-season", "warned", "season", { season }));
  }
  return answered(
    {
      band: bandAt(value),
      lowBand: bandAt(low),
      highBand: bandAt(high),
      bandsCrossed: crossed,
      bandsFrom: citations,
      statements,
      rule: "BE13",
    },
    problems,
  );
}

/** Lines of knowledge about the share of bees infested with tracheal mites, each with its two ends. */
const lines = (Object.keys(thresholds) as ThresholdId[]).flatMap((id) => {
  const { about, figure } = thresholds[id];
  if (about !== "tracheal_mites" || figure === null || figure.unit !== "percent of bees infested") return [];
  const [from, to] = figure.kind === "figure" ? [figure.value, figure.value] : [figure.low, figure.high];
  return from === null || to === null ? [] : [{ id, fromPercent: from, toPercent: to }];
});
