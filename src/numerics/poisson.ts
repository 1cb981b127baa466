/** The Poisson distribution: counts of rare, independent happenings. */
import { ensure } from "../units/index.ts";
import { saddleTerm } from "./deviance.ts";
import { countDistribution, type DiscreteDistribution } from "./distribution.ts";
import { lowerGammaTail, upperGammaTail } from "./incomplete-gamma.ts";
import { stirlingError } from "./log-gamma.ts";

/**
 * The number of independent happenings where `mean` are expected.
 *
 * @throws DomainError unless mean is finite and ≥ 0
 * @source Loader 2000, Fast and accurate computation of binomial probabilities; tails by the incomplete gamma function
 * @example
 * poisson({ mean: 2 }).pmf(0)  // → 0.1353352832366127
 */
export function poisson({ mean }: { readonly mean: number }): DiscreteDistribution {
  ensure(mean >= 0 && mean < Infinity, "mean", mean, "a finite number of 0 or more");
  return countDistribution({
    support: { low: 0, high: mean === 0 ? 0 : Infinity },
    mean,
    variance: mean,
    logPmf: (k) =>
      k === 0
        ? -mean
        : saddleTerm({ observed: k, expected: mean, excess: mean - k }) -
          0.5 * Math.log(2 * Math.PI * k) -
          stirlingError(k),
    cdf: (k) => upperGammaTail(k + 1, mean).value,
    sf: (k) => lowerGammaTail(k + 1, mean).value,
  });
}
