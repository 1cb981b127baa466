/** Pools: check values, Burrows and Firth, the edges, single bees, the top of the likelihood and what is refused. */
import fc from "fast-check";
import { expect, it } from "vitest";
import checks from "../../../tests/golden/pooled-check-values.json" with { type: "json" };
import {
  blakerInterval,
  clopperPearsonInterval,
  likelihoodRatioInterval,
  midPInterval,
  wilsonInterval,
} from "../../numerics/index.ts";
import {
  burrowsPrevalence,
  equalPoolLimits,
  imperfectPools,
  type PooledLimits,
  pooledCorrections,
  pooledLikelihoodLimits,
  pooledPrevalence,
  pooledScoreLimits,
  pooledSkewScoreLimits,
} from "./index.ts";
import { poolLogLikelihood } from "./pool-likelihood.ts";

const value = <T>(result: { readonly ok: boolean; readonly value?: T }): T => {
  if (!result.ok || result.value === undefined) throw new Error(`no answer: ${JSON.stringify(result)}`);
  return result.value;
};
const both = ({ low, high }: PooledLimits) => [value(low), value(high)];
const near = (got: number, expected: number, tolerance: number) =>
  expect(Math.abs(got - expected), `${got} is not ${expected}`).toBeLessThanOrEqual(tolerance);

it.each(checks.rows)("[BE108] $groups", ({ groups, maximumLikelihood, gart, firth, score, skewScore, likelihood }) => {
  const accuracy = 1e-8;
  near(value(pooledPrevalence(groups)).maximumLikelihood, maximumLikelihood, accuracy);
  near(value(pooledCorrections(groups)).gart, gart, accuracy);
  near(value(pooledCorrections(groups)).firth, firth, accuracy);
  for (const [got, expected] of [
    [both(value(pooledScoreLimits({ groups }))), score],
    [both(value(pooledSkewScoreLimits({ groups }))), skewScore],
    [Object.values(value(pooledLikelihoodLimits({ groups }))), likelihood],
  ]) {
    near(got?.[0] as number, expected?.[0] as number, accuracy);
    near(got?.[1] as number, expected?.[1] as number, accuracy);
  }
});

/** Pools of one size, some but not all positive. */
const someOfEqual = fc
  .record({ size: fc.integer({ min: 1, max: 60 }), pools: fc.integer({ min: 2, max: 80 }) })
  .chain((pools) => fc.integer({ min: 1, max: pools.pools - 1 }).map((positive) => ({ ...pools, positive })));

it("[BE109] Burrows is Firth for pools of one size, in one group or several", () => {
  fc.assert(
    fc.property(someOfEqual, (group) => {
      const firth = value(pooledCorrections([group])).firth;
      const burrows = value(burrowsPrevalence([group]));
      expect(Math.abs(burrows / firth - 1)).toBeLessThan(1e-9); // a root against a closed form
      const split = [
        { ...group, pools: group.positive, positive: group.positive },
        { ...group, pools: group.pools - group.positive, positive: 0 },
      ];
      expect(value(burrowsPrevalence(split))).toBe(burrows);
    }),
    { seed: 1987, numRuns: 150 },
  );
});

it("[BE110] none positive: 0, no corrections, an upper limit", () => {
  const groups = [{ size: 10, pools: 12, positive: 0 }];
  const found = pooledPrevalence(groups);
  expect(value(found)).toEqual({ maximumLikelihood: 0, minimumInfectionRate: 0 });
  expect(found.problems.map(({ code, severity }) => [code, severity])).toEqual([["no-pool-positive", "warned"]]);
  for (const refused of [
    pooledCorrections(groups),
    pooledScoreLimits({ groups }),
    pooledSkewScoreLimits({ groups }),
    pooledLikelihoodLimits({ groups }),
  ]) {
    expect(refused.ok).toBe(false);
    expect(refused.problems[0]?.code).toBe("no-pool-positive");
  }
  const limits = value(equalPoolLimits({ groups, method: "clopper-pearson" }));
  expect(limits.low).toBe(0);
  near(limits.high, 0.03027297257742012, 1e-12); // computed elsewhere
});

it("[BE110] all positive: told to be no estimate, a lower limit only", () => {
  const groups = [{ size: 10, pools: 12, positive: 12 }];
  const found = pooledPrevalence(groups);
  expect(value(found).maximumLikelihood).toBe(1);
  expect(found.problems.map(({ code, severity }) => [code, severity])).toEqual([["all-pools-positive", "warned"]]);
  expect(pooledCorrections(groups).problems[0]?.code).toBe("all-pools-positive");
  expect(pooledSkewScoreLimits({ groups }).ok).toBe(false);
  const limits = value(equalPoolLimits({ groups, method: "clopper-pearson" }));
  // (α/2)^(1/12) of the pools, in closed form
  near(limits.low, 1 - (1 - 0.025 ** (1 / 12)) ** (1 / 10), 1e-13);
  expect(limits.high).toBe(1);
});

it("[BE111] pools of one bee are bees", () => {
  fc.assert(
    fc.property(someOfEqual, ({ pools, positive }) => {
      const groups = [{ size: 1, pools, positive }];
      const data = { x: positive, n: pools, level: 0.95 };
      near(value(pooledPrevalence(groups)).maximumLikelihood, positive / pools, 1e-13);
      near(value(pooledCorrections(groups)).standardError ** 2, (positive * (pools - positive)) / pools ** 3, 1e-13);
      const wilson = wilsonInterval(data);
      const score = both(value(pooledScoreLimits({ groups })));
      near(score[0] as number, wilson.low, 1e-12);
      near(score[1] as number, wilson.high, 1e-12);
      const ratio = likelihoodRatioInterval(data);
      const likelihood = value(pooledLikelihoodLimits({ groups }));
      near(likelihood.low, ratio.low, 1e-12);
      near(likelihood.high, ratio.high, 1e-12);
      for (const [method, plain] of [
        ["clopper-pearson", clopperPearsonInterval(data)],
        ["blaker", blakerInterval(data)],
        ["mid-p", midPInterval(data)],
      ] as const) {
        const limits = value(equalPoolLimits({ groups, method }));
        near(limits.low, plain.low, 1e-14);
        near(limits.high, plain.high, 1e-14);
      }
    }),
    { seed: 1927, numRuns: 60 },
  );
});

const mixed = fc
  .array(
    fc
      .record({ size: fc.integer({ min: 1, max: 50 }), pools: fc.integer({ min: 1, max: 20 }) })
      .chain((pools) => fc.integer({ min: 0, max: pools.pools }).map((positive) => ({ ...pools, positive }))),
    { minLength: 1, maxLength: 4 },
  )
  .filter((groups) => groups.some(({ positive }) => positive > 0))
  .filter((groups) => groups.some(({ positive, pools }) => positive < pools));

it("[BE112] the likeliest is at the top, its limits equally far down, more level reaching farther", () => {
  fc.assert(
    fc.property(mixed, (groups) => {
      const peak = value(pooledPrevalence(groups)).maximumLikelihood;
      const at = (p: number) => poolLogLikelihood(groups, p);
      const rounding = 1e-9;
      for (const beside of [peak * 0.99, peak * 1.01, peak + (1 - peak) * 0.01, peak / 2, (1 + peak) / 2]) {
        if (beside < 1) expect(at(beside)).toBeLessThanOrEqual(at(peak) + rounding);
      }
      const limits = value(pooledLikelihoodLimits({ groups }));
      const drop = 1.920729410347; // half the 95 % quantile of chi-square with 1 degree of freedom
      near(at(peak) - at(limits.low), drop, 1e-6);
      near(at(peak) - at(limits.high), drop, 1e-6);
      const wider = value(pooledLikelihoodLimits({ groups, level: 0.99 }));
      expect(wider.low).toBeLessThan(limits.low);
      expect(wider.high).toBeGreaterThan(limits.high);
    }),
    { seed: 1943, numRuns: 100 },
  );
});

it("[BE113] says which limit a method does not have, and which methods need one size", () => {
  const groups = [{ size: 10, pools: 20, positive: 1 }];
  const limits = value(pooledSkewScoreLimits({ groups, level: 0.9999 }));
  expect(limits.low.problems[0]).toMatchObject({ code: "pooled-limit-out-of-reach", slots: { end: "low" } });
  expect(limits.high.ok).toBe(true);
  const several = [...groups, { size: 5, pools: 20, positive: 1 }];
  expect(equalPoolLimits({ groups: several, method: "wilson" }).problems[0]?.code).toBe("pool-sizes-differ");
  expect(burrowsPrevalence(several).problems[0]?.code).toBe("pool-sizes-differ");
  expect(() => pooledPrevalence([{ size: 5, pools: 2, positive: 3 }])).toThrow("positive");
  expect(() => pooledPrevalence([])).toThrow("groups");
});

it("[BE114] corrects pools as single tests are corrected, then turns them into bees", () => {
  const perfect = value(imperfectPools({ size: 7, pools: 24, positive: 3, sensitivity: 1, specificity: 1 }));
  near(perfect.value, value(pooledPrevalence([{ size: 7, pools: 24, positive: 3 }])).maximumLikelihood, 1e-13);
  const found = value(imperfectPools({ size: 10, pools: 20, positive: 4, sensitivity: 0.9, specificity: 0.99 }));
  near(found.value, 0.023728068238862643, 1e-10); // computed elsewhere
  near(found.limits.low, 0.005450172002999021, 1e-10);
  near(found.limits.high, 0.06318186357740874, 1e-10);
  const none = value(imperfectPools({ size: 10, pools: 20, positive: 0, sensitivity: 0.9, specificity: 0.9 }));
  expect(none.value).toBe(0);
  near(none.rawPoolShare, -0.125, 1e-12);
  const coin = imperfectPools({ size: 10, pools: 20, positive: 4, sensitivity: 0.5, specificity: 0.5 });
  expect(coin.problems[0]?.code).toBe("test-no-better-than-chance");
});
