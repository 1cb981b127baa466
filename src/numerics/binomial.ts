/** The binomial distribution: successes among n independent trials. */
import { ensure } from "../units/index.ts";
import { saddleTerm } from "./deviance.ts";
import { countDistribution, type DiscreteDistribution } from "./distribution.ts";
import { differenceFromShare } from "./exact-arithmetic.ts";
import { lowerBetaTail, upperBetaTail } from "./incomplete-beta.ts";
import { stirlingError } from "./log-gamma.ts";

export interface BinomialDesign {
  /** Trials, a whole number ≥ 0. */
  readonly n: number;
  /** Chance of success in each, 0 ≤ p ≤ 1. */
  readonly p: number;
}

/**
 * The number of successes among n independent trials, each with chance p.
 *
 * @throws DomainError unless n is a whole number ≥ 0 and 0 ≤ p ≤ 1
 * @source Loader 2000, Fast and accurate computation of binomial probabilities; tails by the incomplete beta function
 * @example
 * binomial({ n: 10, p: 0.5 }).pmf(5)  // → 0.24609375
 * binomial({ n: 59, p: 0.05 }).sf(0)  // → 0.951505474751
 */
export function binomial({ n, p }: BinomialDesign): DiscreteDistribution {
  ensure(Number.isInteger(n) && n >= 0, "n", n, "a whole number of 0 or more");
  ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
  const point = (k: number) => ({ x: p, y: 1 - p, a: k + 1, b: n - k });
  return countDistribution({
    support: { low: 0, high: n },
    mean: n * p,
    variance: n * p * (1 - p),
    logPmf: (k) => logBinomialPmf({ k, n, p }),
    cdf: (k) => upperBetaTail(point(k)).value,
    sf: (k) => lowerBetaTail(point(k)).value,
  });
}

/** ln P(X = k) for whole 0 ≤ k ≤ n. */
function logBinomialPmf({ k, n, p }: BinomialDesign & { readonly k: number }): number {
  if (p === 0) return k === 0 ? 0 : -Infinity;
  if (p === 1) return k === n ? 0 : -Infinity;
  if (k === 0) return n * Math.log1p(-p);
  if (k === n) return n * Math.log(p);
  const failures = n - k;
  const ahead = differenceFromShare(k, n, 0, p);
  return logCountsWidth(k, n) + saddlePair({ successes: k, failures, p, q: 1 - p, ahead });
}

export interface CountsAgainstShare {
  /** Counts, or the two shapes of a beta distribution. */
  readonly successes: number;
  readonly failures: number;
  readonly p: number;
  /** 1 − p. */
  readonly q: number;
  /** successes − (successes + failures)·p, as exact as can be. */
  readonly ahead: number;
}

/** Minus half the deviance of successes and failures against the share p. */
export function saddlePair({ successes, failures, p, q, ahead }: CountsAgainstShare): number {
  const total = successes + failures;
  return (
    saddleTerm({ observed: successes, expected: total * p, excess: -ahead }) +
    saddleTerm({ observed: failures, expected: total * q, excess: ahead })
  );
}

/** ln of C(n, k)·(k/n)ᵏ·(1 − k/n)ⁿ⁻ᵏ: the binomial chance of k at its own best share. */
export function logCountsWidth(k: number, n: number): number {
  if (k === 0 || k === n) return 0;
  const width = -0.5 * Math.log(2 * Math.PI * k * ((n - k) / n));
  return width + stirlingError(n) - stirlingError(k) - stirlingError(n - k);
}
