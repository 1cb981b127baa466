/** Intervals for a share of a sample that is worth so many independent ones, which need not be whole. */
import { ensure } from "../units/index.ts";
import { betaQuantile, betaUpperQuantile } from "./beta-quantile.ts";
import type { Interval } from "./intervals.ts";
import { normalUpperQuantile } from "./normal.ts";

export interface EffectiveCounts {
  /** 0 ≤ x ≤ n, not necessarily whole. */
  readonly x: number;
  /** Above 0, not necessarily whole. */
  readonly n: number;
  /** Probability content of the interval, 0 < level < 1. */
  readonly level: number;
}

/**
 * Wilson's score interval for counts that need not be whole, such as those of an effective sample size.
 *
 * @throws DomainError unless 0 ≤ x ≤ n, n is finite and above 0, and 0 < level < 1
 * @source Wilson 1927, Journal of the American Statistical Association 22:209–212
 * @example
 * effectiveWilsonInterval({ x: 2.5, n: 12.5, level: 0.95 }).low  // → 0.06416025
 */
export function effectiveWilsonInterval(data: EffectiveCounts): Interval {
  const alpha = checkedAlpha(data);
  const { x, n } = data;
  const square = normalUpperQuantile(alpha / 2) ** 2;
  const root = Math.sqrt(square * (square / 4 + x * ((n - x) / n)));
  const sum = (hits: number) => hits + square / 2 + root;
  // The two ends multiply to p²/(1 + z²/n): dividing instead of subtracting keeps the digits of a small end.
  const high = sum(x) / (n + square);
  const low = x === 0 ? 0 : (x * (x / n)) / sum(x);
  return { low, high: x === n ? 1 : high };
}

/**
 * Clopper and Pearson's beta quantiles for counts that need not be whole. Holds its level only where they are.
 *
 * @throws DomainError unless 0 ≤ x ≤ n, n is finite and above 0, and 0 < level < 1
 * @source Clopper & Pearson 1934, Biometrika 26:404–413; Korn & Graubard 1998, Survey Methodology 24:193–201 (from memory)
 * @example
 * effectiveClopperPearsonInterval({ x: 0, n: 20, level: 0.95 }).high  // → 0.1684334710
 */
export function effectiveClopperPearsonInterval(data: EffectiveCounts): Interval {
  const p = checkedAlpha(data) / 2;
  const { x, n } = data;
  return {
    low: x === 0 ? 0 : betaQuantile({ p, a: x, b: n - x + 1 }),
    high: x === n ? 1 : betaUpperQuantile({ p, a: x + 1, b: n - x }),
  };
}

/** Checks the data; returns 1 − level. */
function checkedAlpha({ x, n, level }: EffectiveCounts): number {
  ensure(n > 0 && n < Infinity, "n", n, "a finite number above 0");
  ensure(x >= 0 && x <= n, "x", x, "from 0 to n");
  ensure(level > 0 && level < 1, "level", level, "between 0 and 1");
  return 1 - level;
}
