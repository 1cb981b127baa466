/** Two-sided intervals for a proportion, x of n. */
import { ensure } from "../units/index.ts";
import { betaQuantile, betaUpperQuantile } from "./beta-quantile.ts";
import { effectiveClopperPearsonInterval, effectiveWilsonInterval } from "./effective-intervals.ts";

export interface ProportionData {
  /** How many of the n have the property. Whole, 0 ≤ x ≤ n. */
  readonly x: number;
  /** How many were looked at. Whole, ≥ 1. */
  readonly n: number;
  /** Probability content of the interval, 0 < level < 1. */
  readonly level: number;
}

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/**
 * Wilson's score interval: a good general choice, on average close to its level.
 *
 * At x = 0 the low end is exactly 0, at x = n the high end exactly 1.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Wilson 1927, Journal of the American Statistical Association 22:209–212; Newcombe 1998, Statistics in Medicine 17:857–872
 * @example
 * wilsonInterval({ x: 81, n: 263, level: 0.95 }).low  // → 0.255288519878
 */
export function wilsonInterval(data: ProportionData): Interval {
  checkedAlpha(data);
  return effectiveWilsonInterval(data);
}

/**
 * Clopper and Pearson's interval: holds at least its level whatever the true proportion, so it is wide.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Clopper & Pearson 1934, Biometrika 26:404–413
 * @example
 * clopperPearsonInterval({ x: 0, n: 20, level: 0.95 }).high  // → 0.1684334710
 */
export function clopperPearsonInterval(data: ProportionData): Interval {
  checkedAlpha(data);
  return effectiveClopperPearsonInterval(data);
}

/**
 * Jeffreys's credible interval, equal tails of beta(x + ½, n − x + ½).
 *
 * At x = 0 the low end is set to 0 and at x = n the high end to 1, while the other end keeps half of 1 − level:
 * the interval stays two-sided.
 *
 * @throws DomainError unless x and n are whole with 0 ≤ x ≤ n, n ≥ 1, and 0 < level < 1
 * @source Brown, Cai & DasGupta 2001, Statistical Science 16:101–133
 * @example
 * jeffreysInterval({ x: 0, n: 20, level: 0.95 }).high  // → 0.1166389829
 */
export function jeffreysInterval(data: ProportionData): Interval {
  const p = checkedAlpha(data) / 2;
  const { x, n } = data;
  const shapes = { a: x + 0.5, b: n - x + 0.5 };
  return {
    low: x === 0 ? 0 : betaQuantile({ p, ...shapes }),
    high: x === n ? 1 : betaUpperQuantile({ p, ...shapes }),
  };
}

/** Checks the data; returns 1 − level. */
export function checkedAlpha({ x, n, level }: ProportionData): number {
  ensure(Number.isInteger(n) && n >= 1, "n", n, "a whole number of 1 or more");
  ensure(Number.isInteger(x) && x >= 0 && x <= n, "x", x, "a whole number from 0 to n");
  ensure(level > 0 && level < 1, "level", level, "between 0 and 1");
  return 1 - level;
}
