/** Pooled tests: the names of the reference cases on ours. */
import { bench, sampling } from "../../../src/reasoning/index.ts";
import type { Result } from "../../../src/units/index.ts";

/** The value, or the refusal as the library says it. */
const or = <T>(result: Result<T>): unknown => (result.ok ? result.value : result);

const exact = {
  clopper_pearson: "clopper-pearson",
  wilson: "wilson",
  jeffreys: "jeffreys",
  blaker: "blaker",
  midp: "mid-p",
} as const;

interface Pools {
  readonly x: readonly number[];
  readonly m: readonly number[];
  readonly n: readonly number[];
  readonly conf?: number;
}

/** Both ends under one name; of a method that refuses, neither. */
const ends = (name: string, low: unknown, high: unknown) => ({ [`${name}_lo`]: low, [`${name}_hi`]: high });

export const methods = {
  pooled_prevalence: ({ x, m, n, conf = 0.95 }: Pools) => {
    const groups = x.map((positive, i) => ({ positive, size: m[i] as number, pools: n[i] as number }));
    const request = { groups, level: conf };
    const found = bench.pooledPrevalence(groups);
    if (!found.ok) return found;
    const corrected = bench.pooledCorrections(groups);
    const likelihood = bench.pooledLikelihoodLimits(request);
    const score = bench.pooledScoreLimits(request);
    const skew = bench.pooledSkewScoreLimits(request);
    return {
      mle: found.value.maximumLikelihood,
      min_infection_rate: found.value.minimumInfectionRate,
      se_mle: corrected.ok ? corrected.value.standardError : corrected,
      gart: corrected.ok ? corrected.value.gart : corrected,
      firth: corrected.ok ? corrected.value.firth : corrected,
      burrows: or(bench.burrowsPrevalence(groups)),
      ...(likelihood.ok
        ? ends("lrt", likelihood.value.low, likelihood.value.high)
        : ends("lrt", likelihood, likelihood)),
      ...(score.ok ? ends("score", or(score.value.low), or(score.value.high)) : ends("score", score, score)),
      ...(skew.ok ? ends("skew_score", or(skew.value.low), or(skew.value.high)) : ends("skew_score", skew, skew)),
      ...Object.fromEntries(
        Object.entries(exact).flatMap(([name, method]) => {
          const limits = bench.equalPoolLimits({ ...request, method });
          return Object.entries(
            limits.ok ? ends(name, limits.value.low, limits.value.high) : ends(name, limits, limits),
          );
        }),
      ),
    };
  },
  pooled_imperfect: (input: {
    readonly x: number;
    readonly n: number;
    readonly m: number;
    readonly se: number;
    readonly sp: number;
    readonly conf?: number;
  }) => {
    const { x, n, m, se, sp, conf = 0.95 } = input;
    const found = bench.imperfectPools({
      positive: x,
      pools: n,
      size: m,
      sensitivity: se,
      specificity: sp,
      level: conf,
    });
    if (!found.ok) return found;
    const { value, limits } = found.value;
    return { p: value, lo: limits.low, hi: limits.high };
  },
  pools_to_detect: (input: {
    readonly k: number;
    readonly p: number;
    readonly se_pool: number;
    readonly conf?: number;
  }) => {
    const { k, p, se_pool, conf = 0.95 } = input;
    const design = sampling.poolsToDetect({ size: k, prevalence: p, sensitivity: se_pool, confidence: conf });
    return { pools: design.pools, prob_detect: design.reached };
  },
  dorfman: ({ p, kmax = 200 }: { readonly p: number; readonly kmax?: number }) => {
    const found = sampling.dorfmanPools({ prevalence: p, largest: kmax });
    return found.ok ? { pool_size: found.value.size, tests_per_unit: found.value.testsPerBee } : found;
  },
  pool_design_dilution: (input: {
    readonly p: number;
    readonly lam: number;
    readonly target: number;
    readonly cost_pool: number;
    readonly cost_unit: number;
    readonly kmax?: number;
  }) => {
    const { p, lam, target, cost_pool, cost_unit, kmax = 100 } = input;
    const { best, limit, sizes } = sampling.poolDilution({
      prevalence: p,
      signal: lam,
      confidence: target,
      costPerPool: cost_pool,
      costPerBee: cost_unit,
      largest: kmax,
    });
    return {
      k: best.size,
      pools: best.pools,
      cost: best.cost,
      pool_pos_prob: best.reacts,
      limit_pool_pos_prob: limit,
      at_k: sizes
        .filter(({ size }) => [1, 5, 10, 20, 50, 100].includes(size))
        .map(({ size, pools, reacts }) => [size, pools, reacts]),
    };
  },
};
