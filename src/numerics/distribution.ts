/** What every distribution can be asked, and the search that finds quantiles of counts. */
import { ensure } from "../units/index.ts";

export interface Support {
  readonly low: number;
  /** May be Infinity. */
  readonly high: number;
}

interface Distribution {
  /** Smallest and largest value that can occur. */
  readonly support: Support;
  readonly mean: number;
  readonly variance: number;
  /** P(X ≤ x). */
  readonly cdf: (x: number) => number;
  /** P(X > x): never computed as 1 − cdf where that would lose digits. */
  readonly sf: (x: number) => number;
  /** Smallest x with P(X ≤ x) ≥ p. */
  readonly quantile: (p: number) => number;
  /** Smallest x with P(X > x) ≤ q: the quantile counted from the upper end. */
  readonly upperQuantile: (q: number) => number;
}

/** A distribution of counts. Outside the support, and between whole numbers, the chance of a value is 0. */
export interface DiscreteDistribution extends Distribution {
  readonly kind: "discrete";
  /** P(X = k). */
  readonly pmf: (k: number) => number;
  /** ln P(X = k), −Infinity where the chance is 0. */
  readonly logPmf: (k: number) => number;
}

/** A distribution with a density. */
export interface ContinuousDistribution extends Distribution {
  readonly kind: "continuous";
  readonly pdf: (x: number) => number;
  /** ln of the density, −Infinity where it is 0. */
  readonly logPdf: (x: number) => number;
}

interface CountModel {
  readonly support: Support;
  readonly mean: number;
  readonly variance: number;
  /** For whole k within the support. */
  readonly logPmf: (k: number) => number;
  /** For whole k, low ≤ k < high. */
  readonly cdf: (k: number) => number;
  /** For whole k, low ≤ k < high. */
  readonly sf: (k: number) => number;
}

/** Completes a distribution of counts from what is special to it: values off the support, and both quantiles. */
export function countDistribution({ support, mean, variance, logPmf, cdf, sf }: CountModel): DiscreteDistribution {
  const { low, high } = support;
  const logAt = (k: number) => {
    ensure(!Number.isNaN(k), "k", k, "a number");
    return Number.isInteger(k) && k >= low && k <= high ? logPmf(k) : -Infinity;
  };
  const below = (x: number) => {
    ensure(!Number.isNaN(x), "x", x, "a number");
    return x < low ? 0 : x >= high ? 1 : cdf(Math.floor(x));
  };
  const above = (x: number) => {
    ensure(!Number.isNaN(x), "x", x, "a number");
    return x < low ? 1 : x >= high ? 0 : sf(Math.floor(x));
  };
  const search = (enough: (k: number) => boolean) => smallest({ support, mean, variance, enough });
  return {
    kind: "discrete",
    support,
    mean,
    variance,
    logPmf: logAt,
    pmf: (k) => Math.exp(logAt(k)),
    cdf: below,
    sf: above,
    quantile: (p) => {
      ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
      return p === 1 ? high : search((k) => below(k) >= p);
    },
    upperQuantile: (q) => {
      ensure(q >= 0 && q <= 1, "q", q, "from 0 to 1");
      return q === 0 ? high : search((k) => above(k) <= q);
    },
  };
}

interface CountSearch extends Pick<CountModel, "support" | "mean" | "variance"> {
  /** False below some count, true from there on. */
  readonly enough: (k: number) => boolean;
}

/** The smallest count that is enough: doubling steps out from the mean, then halving. */
function smallest({ support: { low, high }, mean, variance, enough }: CountSearch): number {
  const start = Math.min(Math.max(Math.floor(mean), low), high);
  let step = Math.max(1, Math.floor(Math.sqrt(variance)));
  let short = low - 1;
  let reached = high;
  if (enough(start)) {
    reached = start;
    while (reached - step >= low && enough(reached - step)) {
      reached -= step;
      step *= 2;
    }
    // Below the support nothing is enough; within it only what was tried is known to fall short.
    short = Math.max(low - 1, reached - step);
  } else {
    short = start;
    while (short + step < high && !enough(short + step)) {
      short += step;
      step *= 2;
    }
    reached = Math.min(high, short + step);
  }
  while (reached - short > 1) {
    const middle = Math.floor(short + (reached - short) / 2);
    if (enough(middle)) reached = middle;
    else short = middle;
  }
  return reached;
}
