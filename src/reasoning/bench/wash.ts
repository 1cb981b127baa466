/** Varroa from a wash: mites per 100 bees with the limits of one count. */
import { gammaQuantile, gammaUpperQuantile } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";

/**
 * Mites per bee on the bees washed, corrected for what the wash leaves behind when that is known.
 *
 * Model: mites counted are Poisson; limits are Garwood's exact ones, divided by bees and recovery. They speak for
 * this vial: counts of many colonies vary far more (variance about 22 times the mean in the trial below), so never
 * use them to compare colonies. Without a recovery nothing is corrected and a note says so.
 *
 * @returns Estimate in mites per bee (may exceed 1); or `nothing-examined`
 * @throws DomainError for counts that are not whole or a recovery outside (0, 1]
 * @source Garwood 1936 (limits); Aurell et al. 2024, doi 10.5281/zenodo.10612430 (spread, and 2313 of 2343 mites in
 *   the first three washes)
 *
 * @example
 * washEstimate({ mites: 9, bees: 300 }).value.value  // → 0.03
 */
export function washEstimate(wash: {
  readonly mites: number;
  readonly bees: number;
  /** Share of the mites on the bees that the wash brings down, 0 < r ≤ 1. */
  readonly recovery?: number;
  readonly level?: number;
}): Result<Estimate> {
  const { mites, bees, recovery, level = 0.95 } = wash;
  ensure(Number.isInteger(mites) && mites >= 0, "mites", mites, "a whole number ≥ 0");
  ensure(Number.isInteger(bees) && bees >= 0, "bees", bees, "a whole number ≥ 0");
  ensure(recovery === undefined || (recovery > 0 && recovery <= 1), "recovery", recovery, "in (0, 1]");
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  if (bees === 0) return blocked(benchProblem("nothing-examined", "blocked", "bees", {}));
  const counted = bees * (recovery ?? 1);
  const outside = (1 - level) / 2;
  const problems: Problem[] = [benchProblem("one-wash-one-vial", "noted", "bees", { bees })];
  if (recovery === undefined) problems.push(benchProblem("recovery-not-given", "noted", "recovery", { mites, bees }));
  return answered(
    {
      value: mites / counted,
      low: mites === 0 ? 0 : gammaQuantile({ p: outside, a: mites }) / counted,
      high: gammaUpperQuantile({ p: outside, a: mites + 1 }) / counted,
      level,
      interval: "confidence",
      method: "garwood-poisson",
      rule: "BE11",
      n: bees,
    },
    problems,
  );
}
