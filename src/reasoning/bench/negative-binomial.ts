/** Mites per bee as a negative binomial: few bees carry most mites. Its likelihood, shared by every fit of counts. */
import { logFactorial, logGammaStep } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";

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
  counts.reduce((sum, { count, mean, bees }) => {
    let steps = 0;
    // ψ(y + k) − ψ(k) is this sum for a whole y: no digits are lost in a difference.
    for (let i = 0; i < count; i++) steps += 1 / (k + i);
    return sum + bees * (steps - Math.log1p(mean / k) + (mean - count) / (k + mean));
  }, 0);

/** Minus the slope of `slopeInK`: the information on k. */
export const informationOnK = (counts: readonly CountsOfMean[], k: number): number =>
  counts.reduce((sum, { count, mean, bees }) => {
    let steps = 0;
    for (let i = 0; i < count; i++) steps += 1 / (k + i) ** 2;
    return sum + bees * (steps - mean / (k * (k + mean)) + (mean - count) / (k + mean) ** 2);
  }, 0);
