/** Share of bees infested, from pools of bees tested as one. */
import { answered, blocked, type Problem, type Result } from "../../units/index.ts";
import { checkPools, noPeak, type PoolGroup, poolScore, poolTotals, prevalenceWhere } from "./pool-likelihood.ts";
import { benchProblem } from "./problems.ts";

export interface PooledPrevalence {
  /** Maximum-likelihood estimate; 0 when no pool is positive, 1 when all are. */
  readonly maximumLikelihood: number;
  /** Positive pools per bee: counts one infested bee in each, so it is too small. */
  readonly minimumInfectionRate: number;
}

/**
 * The likeliest share of infested bees, pools of any sizes, test without error.
 *
 * With every pool positive the likeliest share is 1, whatever the truth above some bound: the warning says that this
 * is no estimate. Only a lower limit can be had then, from smaller pools an estimate as well.
 *
 * @returns PooledPrevalence with the warnings `no-pool-positive`, `all-pools-positive`
 * @throws DomainError for counts that cannot be
 * @source Chiang & Reeves 1962, American Journal of Hygiene 75:377–391; Farrington 1992, Statistics in Medicine
 *   11:1591–1597
 *
 * @example
 * pooledPrevalence([{ size: 7, pools: 24, positive: 3 }]).value.maximumLikelihood  // → 0.0188951194267
 */
export function pooledPrevalence(groups: readonly PoolGroup[]): Result<PooledPrevalence> {
  checkPools(groups);
  const { bees, pools, positive } = poolTotals(groups);
  const minimumInfectionRate = positive / bees;
  const edge = noPeak(groups);
  if (edge === null) return answered({ maximumLikelihood: likeliest(groups), minimumInfectionRate });
  const code = positive === 0 ? "no-pool-positive" : "all-pools-positive";
  const problems: readonly Problem[] = [benchProblem(code, "warned", "positive", { pools })];
  return answered({ maximumLikelihood: positive === 0 ? 0 : 1, minimumInfectionRate }, problems);
}

/** Three estimates with less bias than the likeliest, and its standard error. */
export interface PooledCorrections {
  readonly standardError: number;
  /** The likeliest minus its first-order bias. */
  readonly gart: number;
  /** Where the score is met by the bias it causes. */
  readonly firth: number;
}

/**
 * Bias-corrected estimates. Firth's is the one to report.
 *
 * @returns PooledCorrections; or `no-pool-positive`, `all-pools-positive`
 * @throws DomainError for counts that cannot be
 * @source Gart 1991, Biometrika 78:219–224; Hepworth & Biggerstaff 2017, Journal of Agricultural, Biological, and
 *   Environmental Statistics 22:602–614
 *
 * @example
 * pooledCorrections([{ size: 7, pools: 24, positive: 3 }]).value.firth  // → 0.0185442233672
 */
export function pooledCorrections(groups: readonly PoolGroup[]): Result<PooledCorrections> {
  checkPools(groups);
  const edge = noPeak(groups);
  if (edge) return edge;
  const peak = likeliest(groups);
  const { information, bias } = poolScore(groups, peak);
  const firth = prevalenceWhere((p) => {
    const at = poolScore(groups, p);
    return at.score - at.information * at.bias;
  }, peak);
  return answered({ standardError: 1 / Math.sqrt(information), gart: peak - bias, firth });
}

/**
 * Burrows's estimate for pools of one size: 1 − ((n − x + v)/(n + v))^(1/m), v = (m − 1)/2m. Equals Firth's there, and
 * stays below 1 when every pool is positive.
 *
 * @returns proportion, or `pool-sizes-differ`
 * @throws DomainError for counts that cannot be
 * @source Burrows 1987, Phytopathology 77:363–365
 *
 * @example
 * burrowsPrevalence([{ size: 7, pools: 24, positive: 3 }]).value  // → 0.0185442233672
 */
export function burrowsPrevalence(groups: readonly PoolGroup[]): Result<number> {
  checkPools(groups);
  const one = oneSize(groups);
  if (!one.ok) return one;
  const { size, pools, positive } = one.value;
  const extra = (size - 1) / (2 * size);
  return answered(-Math.expm1(Math.log((pools - positive + extra) / (pools + extra)) / size));
}

/** The groups as one, or `pool-sizes-differ`. */
export function oneSize(groups: readonly PoolGroup[]): Result<PoolGroup> {
  const [first, ...others] = groups as readonly [PoolGroup, ...PoolGroup[]];
  if (others.some(({ size }) => size !== first.size)) {
    const sizes = groups.map(({ size }) => size);
    const slots = { smallest: Math.min(...sizes), largest: Math.max(...sizes) };
    return blocked(benchProblem("pool-sizes-differ", "blocked", "size", slots));
  }
  const { pools, positive } = poolTotals(groups);
  return answered({ size: first.size, pools, positive });
}

/** The maximum of the likelihood, where there is one between 0 and 1. */
export function likeliest(groups: readonly PoolGroup[]): number {
  const { bees, pools, positive } = poolTotals(groups);
  const start = -Math.expm1((Math.log1p(-positive / pools) * pools) / bees);
  return prevalenceWhere((p) => poolScore(groups, p).score, start);
}
