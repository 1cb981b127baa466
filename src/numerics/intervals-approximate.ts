/** Two more closed-form intervals for a proportion: Wilson's with continuity correction, and Agresti and Coull's. */
import { checkedAlpha, type Interval, type ProportionData } from "./intervals.ts";
import { normalUpperQuantile } from "./normal.ts";

/**
 * Wilson's interval with continuity correction: nearly as wide as Clopper and Pearson's, without a quantile of beta.
 *
 * At x = 0 the low end is exactly 0, at x = n the high end exactly 1. No end leaves [0, 1], so none is clamped.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Newcombe 1998, Statistics in Medicine 17:857–872, method 4
 * @example
 * wilsonCorrectedInterval({ x: 81, n: 263, level: 0.95 }).low  // → 0.253508682295
 */
export function wilsonCorrectedInterval(data: ProportionData): Interval {
  const z = normalUpperQuantile(checkedAlpha(data) / 2);
  const { x, n } = data;
  // The corrected ends multiply to (2x − 1)²/4n over the sum: dividing keeps the digits of a small low end.
  const low = (2 * x - 1) ** 2 / (2 * n * (2 * x + z * z - 1 + z * correctedRoot({ z, n, x: n - x })));
  const high = (2 * x + z * z + 1 + z * correctedRoot({ z, n, x })) / (2 * (n + z * z));
  return { low: x === 0 ? 0 : low, high: x === n ? 1 : high };
}

/** √(z² + 2 − 1/n + 4p(nq − 1)); the one of the low end is that of n − x. */
const correctedRoot = ({ z, n, x }: { readonly z: number; readonly n: number; readonly x: number }): number =>
  Math.sqrt(z * z + 2 - 1 / n + (4 * x * (n - x - 1)) / n);

/** An interval whose formula can leave [0, 1]: the ends as they come, and cut to what a proportion can be. */
export interface CutInterval extends Interval {
  readonly rawLow: number;
  readonly rawHigh: number;
}

/**
 * Agresti and Coull's interval: Wald's, after z²/2 of each kind were added. Good for larger n, wide for small ones.
 *
 * Two-sided at x = 0 and x = n as well: half of 1 − level stays with each end.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Agresti & Coull 1998, The American Statistician 52:119–126
 * @example
 * agrestiCoullInterval({ x: 0, n: 20, level: 0.95 }).high  // → 0.189809560542
 * agrestiCoullInterval({ x: 0, n: 20, level: 0.95 }).rawLow  // → -0.0286844024897
 */
export function agrestiCoullInterval(data: ProportionData): CutInterval {
  const z = normalUpperQuantile(checkedAlpha(data) / 2);
  const { x, n } = data;
  const total = n + z * z;
  const centre = (x + (z * z) / 2) / total;
  const half = z * Math.sqrt((centre * (1 - centre)) / total);
  const [rawLow, rawHigh] = [centre - half, centre + half];
  return { low: Math.max(0, rawLow), high: Math.min(1, rawHigh), rawLow, rawHigh };
}
