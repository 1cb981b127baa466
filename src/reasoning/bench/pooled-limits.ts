/** Limits of the share of bees infested, from pools. */
import {
  blakerInterval,
  clopperPearsonInterval,
  type Interval,
  jeffreysInterval,
  midPInterval,
  normalUpperQuantile,
  root,
  wilsonInterval,
} from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { checkPools, noPeak, type PoolGroup, poolLogLikelihood, poolScore } from "./pool-likelihood.ts";
import { likeliest, oneSize } from "./pooled-prevalence.ts";
import { benchProblem } from "./problems.ts";

export interface PooledRequest {
  readonly groups: readonly PoolGroup[];
  /** 0.95 when not given. */
  readonly level?: number;
}

/** Each end by itself: one can be found where the other cannot. */
export interface PooledLimits {
  readonly low: Result<number>;
  readonly high: Result<number>;
}

/**
 * Score limits, pools of any sizes: where the score is z of its standard deviations from 0.
 *
 * @returns PooledLimits; or `no-pool-positive`, `all-pools-positive`; an end not found is `pooled-limit-out-of-reach`
 * @throws DomainError for counts that cannot be or a level outside (0, 1)
 * @source Tebbs & Bilder 2004, Journal of Agricultural, Biological, and Environmental Statistics 9:79–90
 *
 * @example
 * pooledScoreLimits({ groups: [{ size: 7, pools: 24, positive: 3 }] }).value.low.value  // → 0.00632494931891
 */
export function pooledScoreLimits(request: PooledRequest): Result<PooledLimits> {
  return scoreLimits(request, 0);
}

/**
 * Score limits corrected for skewness: the customary choice for pools of unequal sizes.
 *
 * @returns PooledLimits; or `no-pool-positive`, `all-pools-positive`; an end not found is `pooled-limit-out-of-reach`
 * @throws DomainError for counts that cannot be or a level outside (0, 1)
 * @source Gart 1991, Biometrika 78:219–224; Hepworth 2005, Journal of Agricultural, Biological, and Environmental
 *   Statistics 10:478–497
 *
 * @example
 * pooledSkewScoreLimits({ groups: [{ size: 7, pools: 24, positive: 3 }] }).value.high.value  // → 0.0497869861907
 */
export function pooledSkewScoreLimits(request: PooledRequest): Result<PooledLimits> {
  return scoreLimits(request, 1);
}

/**
 * Likelihood-ratio limits, pools of any sizes.
 *
 * @returns Interval; or `no-pool-positive`, `all-pools-positive`
 * @throws DomainError for counts that cannot be or a level outside (0, 1)
 * @source Wilks 1938 for the law; Hepworth 2005
 *
 * @example
 * pooledLikelihoodLimits({ groups: [{ size: 7, pools: 24, positive: 3 }] }).value.low  // → 0.00473008844254
 */
export function pooledLikelihoodLimits(request: PooledRequest): Result<Interval> {
  const { groups, z } = checked(request);
  const edge = noPeak(groups);
  if (edge) return edge;
  const peak = likeliest(groups);
  const top = poolLogLikelihood(groups, peak);
  const excess = (p: number) => 2 * (top - poolLogLikelihood(groups, p)) - z * z;
  let [low, high] = [peak, peak];
  while (excess(low) < 0) low /= 2;
  while (excess(high) < 0) high += (1 - high) / 2;
  return answered({
    low: root({ f: excess, low, high: peak, tolerance: 0 }),
    high: root({ f: excess, low: peak, high, tolerance: 0 }),
  });
}

const exact = {
  "clopper-pearson": clopperPearsonInterval,
  blaker: blakerInterval,
  "mid-p": midPInterval,
  wilson: wilsonInterval,
  jeffreys: jeffreysInterval,
} as const;

export type PoolShareMethod = keyof typeof exact;

/**
 * Limits for pools of one size: those of the share of positive pools, t, turned into bees by 1 − (1 − t)^(1/m).
 *
 * They keep the coverage of the method, at no pool and at all pools positive as well; then the high end is 1.
 *
 * @returns Interval, or `pool-sizes-differ`
 * @throws DomainError for counts that cannot be or a level outside (0, 1)
 * @source transformation of the limits of a proportion
 *
 * @example
 * equalPoolLimits({ groups: [{ size: 10, pools: 12, positive: 0 }], method: "clopper-pearson" }).value.high  // → 0.0302729725774
 */
export function equalPoolLimits(request: PooledRequest & { readonly method: PoolShareMethod }): Result<Interval> {
  const { groups, level } = checked(request);
  const one = oneSize(groups);
  if (!one.ok) return one;
  const { size, pools, positive } = one.value;
  const { low, high } = exact[request.method]({ x: positive, n: pools, level });
  return answered({ low: beeShare(low, size), high: beeShare(high, size) });
}

/** Share of bees behind a share of pools. */
export const beeShare = (poolShare: number, size: number): number => -Math.expm1(Math.log1p(-poolShare) / size);

function scoreLimits(request: PooledRequest, skew: 0 | 1): Result<PooledLimits> {
  const { groups, z } = checked(request);
  const edge = noPeak(groups);
  if (edge) return edge;
  const peak = likeliest(groups);
  const standing = (p: number): number => {
    const { score, information, thirdMoment } = poolScore(groups, p);
    const skewness = thirdMoment / information ** 1.5;
    return score / Math.sqrt(information) - (skew * skewness * (z * z - 1)) / 6;
  };
  return answered({
    low: firstBelow({ f: (p) => z - standing(p), from: peak, towards: 0, end: "low" }),
    high: firstBelow({ f: (p) => z + standing(p), from: peak, towards: 1, end: "high" }),
  });
}

/** The limit nearest to `from` on its way to 0 or 1 where f falls below 0; looked for in steps, then solved. */
function firstBelow(search: {
  readonly f: (p: number) => number;
  readonly from: number;
  readonly towards: 0 | 1;
  readonly end: "low" | "high";
}): Result<number> {
  const { f, from, towards, end } = search;
  let near = from;
  // A correction for skewness larger than z itself would start beyond the limit.
  for (let step = 0; step < steps && f(from) > 0; step += 1) {
    const far = towards === 0 ? near * shrink : 1 - (1 - near) * shrink;
    const value = f(far);
    if (value === 0) return answered(far);
    if (value < 0) return answered(root({ f, low: Math.min(near, far), high: Math.max(near, far), tolerance: 0 }));
    near = far;
  }
  return blocked(benchProblem("pooled-limit-out-of-reach", "blocked", null, { end }));
}

/** A step brings the distance to the end down to this share of it: 1000 steps make 1e-13. */
const shrink = 0.97;
const steps = 1000;

function checked({ groups, level = 0.95 }: PooledRequest) {
  checkPools(groups);
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  return { groups, level, z: normalUpperQuantile((1 - level) / 2) };
}
