/** How often an interval for a proportion holds the true one, summed exactly. */
import { ensure } from "../units/index.ts";
import { binomial } from "./binomial.ts";
import type { Interval, ProportionData } from "./intervals.ts";

/**
 * Chance that the interval made from a sample of n holds the true proportion p: the sum over every outcome x.
 *
 * @returns proportion 0–1
 * @throws DomainError unless n is a whole number ≥ 1, 0 ≤ p ≤ 1 and 0 < level < 1
 * @source Brown, Cai & DasGupta 2001, Statistical Science 16:101–133
 * @example
 * intervalCoverage({ interval: jeffreysInterval, n: 50, p: 0.05, level: 0.95 })  // → 0.885278851734
 */
export function intervalCoverage(request: {
  readonly interval: (data: ProportionData) => Interval;
  readonly n: number;
  /** The true proportion. */
  readonly p: number;
  readonly level: number;
}): number {
  const { interval, n, p, level } = request;
  ensure(Number.isInteger(n) && n >= 1, "n", n, "a whole number of 1 or more");
  const { pmf } = binomial({ n, p });
  let covered = 0;
  for (let x = 0; x <= n; x += 1) {
    const { low, high } = interval({ x, n, level });
    if (low <= p && p <= high) covered += pmf(x);
  }
  return covered;
}
