/** Mites per bee as a negative binomial: few bees carry most mites. Its likelihood, shared by every fit of counts. */
import { logFactorial, logGammaStep } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";
import { countsAbove } from "./counts-above.ts";

/** Counts that occur with one mean. */
export interface CountsOfMean {
  /** A whole number ≥ 0. */
  readonly count: number;
  /** Expected count, above 0. */
  readonly mean: number;
  /** How many bees have this count and this mean. */
  readonly bees: number;
}

/**
 * Log-likelihood of counts with aggregation k: variance m + m²/k, so a small k means mites in few bees.
 *
 * @throws DomainError unless k is above 0
 * @source Anscombe 1950; form of R's MASS
 *
 * @example
 * negativeBinomialLogLikelihood([{ count: 0, mean: 1, bees: 1 }], 1)  // → -0.69314718056
 */
export function negativeBinomialLogLikelihood(counts: readonly CountsOfMean[], k: number): number {
  ensure(k > 0 && Number.isFinite(k), "k", k, "above 0");
  return counts.reduce((sum, { count, mean, bees }) => {
    const ways = count === 0 ? 0 : logGammaStep(k, count) - logFactorial(count);
    const drawn = count === 0 ? 0 : count * (Math.log(mean) - Math.log(k + mean));
    return sum + bees * (ways + drawn - k * Math.log1p(mean / k));
  }, 0);
}

/**
 * Log-likelihood of the same counts without aggregation.
 *
 * @source Poisson law
 *
 * @example
 * poissonLogLikelihood([{ count: 0, mean: 1, bees: 2 }])  // → -2
 */
export const poissonLogLikelihood = (counts: readonly CountsOfMean[]): number =>
  counts.reduce(
    (sum, { count, mean, bees }) =>
      sum + bees * ((count === 0 ? 0 : count * Math.log(mean)) - mean - logFactorial(count)),
    0,
  );

/** Slope of the log-likelihood in k, means held: Σ [ψ(y + k) − ψ(k) + ln(k/(k + m)) + 1 − (k + y)/(k + m)]. */
export const slopeInK = (counts: readonly CountsOfMean[], k: number): number =>
  counts.reduce(
    (sum, { count, mean, bees }) => sum + bees * ((mean - count) / (k + mean) - Math.log1p(mean / k)),
    // ψ(y + k) − ψ(k) is Σ 1/(k + i) over i < y for a whole y: no digits are lost in a difference.
    beesAbove(counts).reduce((sum, bees, i) => sum + bees / (k + i), 0),
  );

/** Minus the slope of `slopeInK`: the information on k. */
export const informationOnK = (counts: readonly CountsOfMean[], k: number): number =>
  counts.reduce(
    (sum, { count, mean, bees }) => sum + bees * ((mean - count) / (k + mean) ** 2 - mean / (k * (k + mean))),
    beesAbove(counts).reduce((sum, bees, i) => sum + bees / (k + i) ** 2, 0),
  );

/** For i = 0, 1, … below the highest count: how many bees have more than i. */
const beesAbove = (counts: readonly CountsOfMean[]): Float64Array =>
  countsAbove(
    counts.map(({ count }) => count),
    counts.map(({ bees }) => bees),
  );
