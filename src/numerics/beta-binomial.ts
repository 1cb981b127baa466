/** The beta-binomial distribution: successes among n trials whose chance itself varies as a beta variable. */
import { ensure } from "../units/index.ts";
import { logCountsWidth, saddlePair } from "./binomial.ts";
import { countDistribution, type DiscreteDistribution } from "./distribution.ts";
import { twoProduct } from "./exact-arithmetic.ts";
import { logBetaWidth } from "./incomplete-beta.ts";
import { complement, sumRatios } from "./ratio-sum.ts";

export interface BetaBinomialDesign {
  /** Trials, a whole number ≥ 0. */
  readonly n: number;
  /** First shape of the beta distribution of the chance. */
  readonly a: number;
  /** Second shape. */
  readonly b: number;
}

/**
 * The number of successes among n trials that share one chance drawn from beta(a, b).
 *
 * @throws DomainError unless n is a whole number ≥ 0 and both shapes are finite and above 0
 * @source Skellam 1948, Journal of the Royal Statistical Society B 10:257–261 for the model; own saddle-point form
 * @example
 * betaBinomial({ n: 4, a: 1, b: 1 }).pmf(2)  // → 0.2
 */
export function betaBinomial({ n, a, b }: BetaBinomialDesign): DiscreteDistribution {
  ensure(Number.isInteger(n) && n >= 0, "n", n, "a whole number of 0 or more");
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  ensure(b > 0 && b < Infinity, "b", b, "a finite number above 0");
  const total = a + b;
  const mean = n * (a / total);
  const logPmf = (k: number): number => {
    // Any share gives the same answer; at the posterior mean one of the three deviances is 0 and none cancels.
    const p = (a + k) / (total + n);
    const q = (b + n - k) / (total + n);
    const ours = twoProduct(k, b);
    const theirs = twoProduct(n - k, a);
    const ahead = (ours.value - theirs.value + (ours.rest - theirs.rest)) / (total + n);
    return (
      logCountsWidth(k, n) +
      saddlePair({ successes: k, failures: n - k, p, q, ahead }) +
      saddlePair({ successes: a, failures: b, p, q, ahead: -ahead }) +
      logBetaWidth(a, b) -
      logBetaWidth(a + k, b + n - k)
    );
  };
  // With a shape below 1 the chances may rise again towards that end, so the early stop must not be used.
  const lower = (k: number) => {
    const ratio = (i: number) => ((k - i) / (n - k + i + 1)) * ((n - k + i + b) / (k - i - 1 + a));
    return Math.exp(logPmf(k)) * (a < 1 ? sumAllRatios(k, ratio) : sumRatios(k, ratio));
  };
  const upper = (k: number) => {
    const ratio = (i: number) => ((n - k - 1 - i) / (k + 2 + i)) * ((k + 1 + i + a) / (n - k - 2 - i + b));
    return Math.exp(logPmf(k + 1)) * (b < 1 ? sumAllRatios(n - k - 1, ratio) : sumRatios(n - k - 1, ratio));
  };
  return countDistribution({
    support: { low: 0, high: n },
    mean,
    variance: mean * (b / total) * ((total + n) / (total + 1)),
    logPmf,
    cdf: (k) => (k < mean ? lower(k) : complement(upper(k), () => lower(k))),
    sf: (k) => (k < mean ? complement(lower(k), () => upper(k)) : upper(k)),
  });
}

function sumAllRatios(count: number, ratio: (i: number) => number): number {
  let term = 1;
  let sum = 1;
  for (let i = 0; i < count; i += 1) {
    term *= ratio(i);
    sum += term;
  }
  return sum;
}
