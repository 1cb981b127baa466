/** The ratio of two shares with limits: Katz's on the logarithm, Koopman's by inverting a score test. */
import { type Interval, normalUpperQuantile, root } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";
import { ensureShare, type Share } from "./group.ts";

export interface RatioLimits {
  /** First share over second share. */
  readonly ratio: number;
  readonly low: number;
  readonly high: number;
  /** True when half was added to every count to get the limits. */
  readonly halfAdded: boolean;
}

export interface SharePair {
  readonly first: Share;
  /** With at least one infested. */
  readonly second: Share;
  readonly level: number;
  /** Multiplies the variance: how much less bees of one colony tell than bees drawn alone; 1 when not given. */
  readonly designEffect?: number;
}

/**
 * Limits of the efficacy 1 − ratio from those of the ratio: swapped, and not cut off at either end.
 *
 * @returns proportions, `high` at most 1
 * @source definition of efficacy
 *
 * @example
 * efficacyLimits({ ratio: 0.15, low: 0.09, high: 0.26, halfAdded: false })  // → {"low":0.74,"high":0.91}
 */
export const efficacyLimits = ({ low, high }: RatioLimits): Interval => ({ low: 1 - high, high: 1 - low });

/** Whether all were infested in each share: Katz's variance is then 0 and his limits close on the ratio. */
export const allInfested = (...shares: readonly Share[]): boolean =>
  shares.every(({ infested, examined }) => infested === examined);

/** The upper normal quantile of a two-sided level. */
export function twoSidedQuantile(level: number): number {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  return normalUpperQuantile((1 - level) / 2);
}

function ensurePair({ first, second }: SharePair): void {
  ensureShare("first", first);
  ensureShare("second", second);
  ensure(second.infested >= 1, "second", second.infested, "at least 1 infested, or there is no ratio");
}

/**
 * Katz's limits: the logarithm has variance 1/a − 1/n₁ + 1/b − 1/n₂.
 *
 * With a = 0 half is added to all four counts for the limits; the ratio itself stays 0, outside them.
 *
 * @throws DomainError for counts that are not whole or do not fit, none infested in the second, a level outside (0, 1)
 * @source Katz et al. 1978
 *
 * @example
 * katzRatio({ first: { infested: 12, examined: 100 }, second: { infested: 80, examined: 100 }, level: 0.95 }).high  // → 0.2573320540
 */
export function katzRatio(pair: SharePair): RatioLimits {
  ensurePair(pair);
  const { first, second, level, designEffect = 1 } = pair;
  const halfAdded = first.infested === 0;
  const half = halfAdded ? 0.5 : 0;
  const [a, n1] = [first.infested + half, first.examined + half];
  const [b, n2] = [second.infested + half, second.examined + half];
  const width = twoSidedQuantile(level) * Math.sqrt(designEffect * (1 / a - 1 / n1 + 1 / b - 1 / n2));
  const centre = a / n1 / (b / n2);
  return {
    ratio: plainRatio(first, second),
    low: centre * Math.exp(-width),
    high: centre * Math.exp(width),
    halfAdded,
  };
}

/**
 * Koopman's score limits: all ratios that Pearson's chi-square does not reject.
 *
 * Nothing is added; at a = 0 the low end is 0 and the high end still holds. With a design effect the chi-square is
 * divided by it.
 *
 * @throws DomainError as `katzRatio`
 * @source Koopman 1984, Biometrics 40:513–517
 *
 * @example
 * koopmanRatio({ first: { infested: 36, examined: 40 }, second: { infested: 16, examined: 80 }, level: 0.95 }).high  // → 7.1522234349
 */
export function koopmanRatio(pair: SharePair): RatioLimits {
  ensurePair(pair);
  const { first, second, level, designEffect = 1 } = pair;
  const ratio = plainRatio(first, second);
  const allowed = designEffect * twoSidedQuantile(level) ** 2;
  const excess = (logRatio: number) => scoreChiSquare(Math.exp(logRatio), first, second) - allowed;
  const observed = ratio === 0 ? insideOf(excess, Math.log(0.25 / first.examined)) : Math.log(ratio);
  const beyond = (direction: 1 | -1) => {
    let step = 1;
    while (excess(observed + direction * step) < 0 && step < 512) step *= 2;
    return observed + direction * step;
  };
  const high = Math.exp(root({ f: excess, low: observed, high: beyond(1) }));
  const low = ratio === 0 ? 0 : Math.exp(root({ f: excess, low: beyond(-1), high: observed }));
  return { ratio, low, high, halfAdded: false };
}

/** With none in the first group the chi-square falls to 0 with the ratio: somewhere below, every level holds it. */
function insideOf(excess: (logRatio: number) => number, from: number): number {
  let inside = from;
  while (excess(inside) >= 0) inside -= 2;
  return inside;
}

const plainRatio = (first: Share, second: Share): number =>
  (first.infested * second.examined) / (first.examined * second.infested);

/** Pearson's chi-square at the likeliest pair of shares with this ratio (a quadratic in the second share). */
function scoreChiSquare(ratio: number, first: Share, second: Share): number {
  const [a, n1, b, n2] = [first.infested, first.examined, second.infested, second.examined];
  const square = (n1 + n2) * ratio;
  const linear = n1 * ratio + a + n2 + b * ratio;
  const rooted = Math.sqrt(Math.max(0, linear * linear - 4 * square * (a + b)));
  const p2 = (2 * (a + b)) / (linear + rooted);
  const p1 = ratio * p2;
  const part = (x: number, n: number, p: number) => {
    const gap = (x - n * p) ** 2;
    return gap === 0 ? 0 : gap / (n * p * (1 - p));
  };
  return part(a, n1, p1) + part(b, n2, p2);
}
