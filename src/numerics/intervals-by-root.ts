/** Intervals for a proportion whose ends are roots: mid-P and likelihood ratio. */

import { binomial, saddlePair } from "./binomial.ts";
import { differenceFromShare } from "./exact-arithmetic.ts";
import { checkedAlpha, clopperPearsonInterval, type Interval, type ProportionData } from "./intervals.ts";
import { normalUpperQuantile } from "./normal.ts";
import { root } from "./root.ts";

/**
 * The mid-P interval: Clopper and Pearson's with only half the chance of x itself; on average close to its level.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Lancaster 1961, Journal of the American Statistical Association 56:223–234; Newcombe 1998, method 6
 * @example
 * midPInterval({ x: 5, n: 25, level: 0.95 }).low  // → 0.077188655771
 */
export function midPInterval(data: ProportionData): Interval {
  const alpha = checkedAlpha(data);
  const { x, n } = data;
  const outer = clopperPearsonInterval(data);
  const beyond = (p: number, side: "sf" | "cdf"): number => {
    const chance = binomial({ n, p });
    return (side === "sf" ? chance.sf(x) : chance.cdf(x - 1)) + chance.pmf(x) / 2 - alpha / 2;
  };
  return {
    low: x === 0 ? 0 : root({ f: (p) => beyond(p, "sf"), low: outer.low, high: 1, tolerance: 0 }),
    high: x === n ? 1 : root({ f: (p) => beyond(p, "cdf"), low: 0, high: outer.high, tolerance: 0 }),
  };
}

/**
 * The likelihood-ratio interval: every p whose deviance from x of n stays within the chi-square quantile.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Newcombe 1998, Statistics in Medicine 17:857–872, method 7
 * @example
 * likelihoodRatioInterval({ x: 0, n: 20, level: 0.95 }).high  // → 0.0915691154798
 */
export function likelihoodRatioInterval(data: ProportionData): Interval {
  const allowed = normalUpperQuantile(checkedAlpha(data) / 2) ** 2 / 2;
  const { x, n } = data;
  const best = x / n;
  const excess = (p: number): number =>
    -allowed - saddlePair({ successes: x, failures: n - x, p, q: 1 - p, ahead: differenceFromShare(x, n, 0, p) });
  // Where ln p is this far below that of x/n the deviance is surely larger: the other term gives back less than x.
  const far = (count: number) => (count / n) * Math.exp(-allowed / count - 1);
  const low = () => (x === n ? Math.exp(-allowed / n) : root({ f: excess, low: far(x), high: best, tolerance: 0 }));
  const high = () =>
    x === 0 ? -Math.expm1(-allowed / n) : root({ f: excess, low: best, high: 1 - far(n - x), tolerance: 0 });
  return { low: x === 0 ? 0 : low(), high: x === n ? 1 : high() };
}
