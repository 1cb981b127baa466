/** Mites per bee examined and mites per infested bee, kept apart from the share infested. */
import { studentT } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";

export interface MiteCounts {
  /** Mites in each bee read, clear bees as 0; one number per bee. */
  readonly mitesPerBee: readonly number[];
  /** Probability content, 0 < level < 1; 0.95 when not given. */
  readonly level?: number;
}

/**
 * Abundance: mites per bee over all bees read.
 *
 * Limits: Student's t for the mean on the logarithmic scale (delta method), so they stay above 0. Approximate:
 * with mites in few bees the true mean lies outside more often than the level says. Where all counts are equal,
 * Poisson's variance stands in for none.
 *
 * @returns Estimate in mites per bee, or `nothing-examined`, `no-mites-counted`, `too-few-to-estimate`
 * @throws DomainError for counts that are not whole numbers ≥ 0
 * @source COLOSS BEEBOOK, tracheal mite methods, 3.2.2 (the quantity); limits by the delta method
 *
 * @example
 * abundance({ mitesPerBee: [0, 0, 4, 8] }).value.value  // → 3
 */
export function abundance({ mitesPerBee, level = 0.95 }: MiteCounts): Result<Estimate> {
  return meanOnLogScale(mitesPerBee, level, "BE6");
}

/**
 * Intensity: mites per infested bee.
 *
 * Limits as for `abundance`, over the infested bees alone.
 *
 * @returns Estimate in mites per infested bee, or `nothing-examined`, `no-mites-counted`, `too-few-to-estimate`
 * @throws DomainError for counts that are not whole numbers ≥ 0
 * @source COLOSS BEEBOOK, tracheal mite methods, 3.2.2 (the quantity); limits by the delta method
 *
 * @example
 * intensity({ mitesPerBee: [0, 0, 4, 8] }).value.value  // → 6
 */
export function intensity({ mitesPerBee, level = 0.95 }: MiteCounts): Result<Estimate> {
  if (mitesPerBee.length === 0) return blocked(benchProblem("nothing-examined", "blocked", "mitesPerBee", {}));
  const infested = mitesPerBee.filter((mites) => mites !== 0);
  if (infested.length > 0) return meanOnLogScale(infested, level, "BE6");
  return blocked(benchProblem("no-mites-counted", "blocked", "mitesPerBee", { bees: mitesPerBee.length }));
}

function meanOnLogScale(counts: readonly number[], level: number, rule: string): Result<Estimate> {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  for (const mites of counts) ensure(Number.isInteger(mites) && mites >= 0, "mitesPerBee", mites, "whole and ≥ 0");
  const n = counts.length;
  if (n === 0) return blocked(benchProblem("nothing-examined", "blocked", "mitesPerBee", {}));
  const mean = counts.reduce((sum, mites) => sum + mites, 0) / n;
  if (mean === 0) return blocked(benchProblem("no-mites-counted", "blocked", "mitesPerBee", { bees: n }));
  if (n < 2) return blocked(benchProblem("too-few-to-estimate", "blocked", "mitesPerBee", { bees: n }));
  const spread = counts.reduce((sum, mites) => sum + (mites - mean) ** 2, 0) / (n - 1);
  // Equal counts show no spread at all; chance alone, Poisson, spreads by the mean.
  const variance = spread === 0 ? mean : spread;
  const width = (studentT({ df: n - 1 }).upperQuantile((1 - level) / 2) * Math.sqrt(variance / n)) / mean;
  return answered({
    value: mean,
    low: mean * Math.exp(-width),
    high: mean * Math.exp(width),
    level,
    interval: "confidence",
    method: spread === 0 ? "student-t-log-mean-poisson" : "student-t-log-mean",
    rule,
    n,
  });
}
