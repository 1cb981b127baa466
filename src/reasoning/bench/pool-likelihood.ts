/** Pools of bees tested as one: what the results say about the share infested, as score, information and likelihood. */
import { root } from "../../numerics/index.ts";
import { blocked, ensure, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";

/** Pools of one size. */
export interface PoolGroup {
  /** Bees in each pool, a whole number ≥ 1. */
  readonly size: number;
  /** Pools tested, a whole number ≥ 1. */
  readonly pools: number;
  /** Pools positive, a whole number from 0 to `pools`. */
  readonly positive: number;
}

/** Derivatives of the log-likelihood at a prevalence p. */
export interface PoolScore {
  /** First derivative. */
  readonly score: number;
  /** Expected information. */
  readonly information: number;
  /** First-order bias of the maximum-likelihood estimate. */
  readonly bias: number;
  /** Third central moment of the score. */
  readonly thirdMoment: number;
}

/** Score, information and bias at p in (0, 1), as Hepworth & Biggerstaff 2017 write them. */
export function poolScore(groups: readonly PoolGroup[], p: number): PoolScore {
  const logRest = Math.log1p(-p);
  const rest = 1 - p;
  let [score, information, pull, thirdMoment] = [0, 0, 0, 0];
  for (const { size, pools, positive } of groups) {
    const allClear = Math.exp(size * logRest);
    const some = -Math.expm1(size * logRest);
    const slope = (size * allClear) / rest;
    score += (positive * slope) / some - ((pools - positive) * size) / rest;
    information += (pools * size * slope) / (some * rest);
    pull += (pools * size * (size - 1) * slope) / (some * rest * rest);
    thirdMoment += (size / (rest * some)) ** 3 * pools * some * allClear * (1 - 2 * some);
  }
  return { score, information, bias: pull / (2 * information * information), thirdMoment };
}

/** Log-likelihood at p in (0, 1), up to a constant. */
export function poolLogLikelihood(groups: readonly PoolGroup[], p: number): number {
  const logRest = Math.log1p(-p);
  return groups.reduce((sum, { size, pools, positive }) => {
    const positives = positive === 0 ? 0 : positive * Math.log(-Math.expm1(size * logRest));
    return sum + positives + (pools - positive) * size * logRest;
  }, 0);
}

/** The zero of a function that is above 0 for small prevalences and below 0 for large ones, near `start`. */
export function prevalenceWhere(f: (p: number) => number, start: number): number {
  let [low, high] = [start, start];
  while (f(low) < 0) low /= 2;
  while (f(high) > 0) high += (1 - high) / 2;
  return low === high ? low : root({ f, low, high, tolerance: 0 });
}

/** Checks the counts. */
export function checkPools(groups: readonly PoolGroup[]): void {
  ensure(groups.length > 0, "groups", groups.length, "at least one");
  for (const { size, pools, positive } of groups) {
    ensure(Number.isInteger(size) && size >= 1, "size", size, "a whole number ≥ 1");
    ensure(Number.isInteger(pools) && pools >= 1, "pools", pools, "a whole number ≥ 1");
    const inside = Number.isInteger(positive) && positive >= 0 && positive <= pools;
    ensure(inside, "positive", positive, "a whole number from 0 to `pools`");
  }
}

/** Counts over all groups. */
export function poolTotals(groups: readonly PoolGroup[]): {
  readonly pools: number;
  readonly positive: number;
  readonly bees: number;
} {
  return groups.reduce(
    (sum, { size, pools, positive }) => ({
      pools: sum.pools + pools,
      positive: sum.positive + positive,
      bees: sum.bees + pools * size,
    }),
    { pools: 0, positive: 0, bees: 0 },
  );
}

/** Why the likelihood has no peak between 0 and 1; null when it has one. */
export function noPeak(groups: readonly PoolGroup[]): Result<never> | null {
  const { pools, positive } = poolTotals(groups);
  if (positive === 0) return blocked(benchProblem("no-pool-positive", "blocked", "positive", { pools }));
  if (positive === pools) return blocked(benchProblem("all-pools-positive", "blocked", "positive", { pools }));
  return null;
}
