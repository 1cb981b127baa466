/** Differences of shares, unconditional and paired tests, sizes and power: print, second opinions, laws, edges. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/newcombe-1998b-difference.json" with { type: "json" };
import scipy from "../../../tests/golden/scipy-manual-two-by-two.json" with { type: "json" };
import { normalSf } from "../../numerics/index.ts";
import type { Estimate, Result } from "../../units/index.ts";
import { fisherTest } from "../bench/index.ts";
import {
  abbott,
  barnardTest,
  boschlooTest,
  changeRatio,
  clustersPerGroup,
  type DifferenceMethod,
  efficacyLimits,
  fisherPower,
  groupSize,
  hendersonTilton,
  katzRatio,
  koopmanRatio,
  type Share,
  schneiderOrelli,
  shareDifference,
  sharesOfTable,
  shareWithout,
  signFlipTest,
  signTest,
  wilcoxonTest,
} from "./index.ts";

const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};
const share = ([infested, examined]: readonly number[]): Share => ({
  infested: infested as number,
  examined: examined as number,
});
const anyShare = fc
  .tuple(fc.integer({ min: 0, max: 12 }), fc.integer({ min: 0, max: 12 }))
  .filter(([x, rest]) => x + rest > 0)
  .map(([infested, rest]) => ({ infested, examined: infested + rest }));
const methods: readonly DifferenceMethod[] = ["newcombe", "miettinen-nurminen", "mee"];

describe("the difference of two shares", () => {
  it.each([
    ["newcombe", golden.newcombe],
    ["miettinen-nurminen", golden.miettinenNurminen],
  ] as const)("[EF202] 56/70 less 48/80 by %s as printed", (method, [low, high]) => {
    const found = of(shareDifference({ first: share(golden.first), second: share(golden.second), method }));
    const halfUnit = 0.5e-4; // four decimals are printed
    expect(Math.abs(found.low - (low as number))).toBeLessThanOrEqual(halfUnit);
    expect(Math.abs(found.high - (high as number))).toBeLessThanOrEqual(halfUnit);
  });

  it("[EF202] trap: what one software calls score limits, .0526 to .3440, is where no score test turns", () => {
    const [first, second] = [share(golden.first), share(golden.second)];
    const { low, high } = of(shareDifference({ first, second, method: "miettinen-nurminen" }));
    const [wrongLow, wrongHigh] = golden.saidByStatsmodels as [number, number];
    const scores = [low, high, wrongLow, wrongHigh].map((difference) => {
      let best = { likelihood: Number.NEGATIVE_INFINITY, p2: 0 };
      for (let p2 = 1e-5; p2 < 1 - difference; p2 += 1e-5) {
        const p1 = p2 + difference;
        const likelihood = 56 * Math.log(p1) + 14 * Math.log(1 - p1) + 48 * Math.log(p2) + 32 * Math.log(1 - p2);
        if (likelihood > best.likelihood) best = { likelihood, p2 };
      }
      const p1 = best.p2 + difference;
      const variance = ((p1 * (1 - p1)) / 70 + (best.p2 * (1 - best.p2)) / 80) * (150 / 149);
      return Math.abs((0.8 - 0.6 - difference) / Math.sqrt(variance));
    });
    expect(scores[0]).toBeCloseTo(1.959964, 4); // the grid knows p2 to 1e-5
    expect(scores[1]).toBeCloseTo(1.959964, 4);
    expect((scores[2] as number) - 1.959964).toBeGreaterThan(1e-3);
    expect((scores[3] as number) - 1.959964).toBeGreaterThan(0.05);
  });

  it("[EF202] holds the difference, stays within −1 and 1, mirrors, and the wider method is wider", () => {
    fc.assert(
      fc.property(anyShare, anyShare, (first, second) => {
        const [, wide, narrow] = methods.map((method) => {
          const found = of(shareDifference({ first, second, method }));
          const back = of(shareDifference({ first: second, second: first, method }));
          expect(found.low).toBeLessThanOrEqual(found.value + 1e-12);
          expect(found.high).toBeGreaterThanOrEqual(found.value - 1e-12);
          expect(Math.min(found.low + 1, 1 - found.high)).toBeGreaterThanOrEqual(-1e-12);
          // the search narrows to about 1e-15, the slope of the score is at least a thousandth
          expect(Math.abs(found.low + back.high)).toBeLessThan(1e-10);
          return found;
        });
        expect((wide?.high ?? 0) - (narrow?.high ?? 0)).toBeGreaterThan(-1e-10);
      }),
      { seed: 1998, numRuns: 150 },
    );
  });

  it("[EF202] Mee's limits are where the score test just rejects, by brute force over the second share", () => {
    const [first, second] = [share([3, 14]), share([9, 17])];
    const { low, high } = of(shareDifference({ first, second, method: "mee" }));
    const logOf = (x: number, n: number, p: number) =>
      (x === 0 ? 0 : x * Math.log(p)) + (x === n ? 0 : (n - x) * Math.log(1 - p));
    for (const difference of [low, high]) {
      let best = { likelihood: Number.NEGATIVE_INFINITY, p2: 0 };
      for (let p2 = Math.max(0, -difference); p2 <= Math.min(1, 1 - difference); p2 += 1e-5) {
        const likelihood = logOf(3, 14, p2 + difference) + logOf(9, 17, p2);
        if (likelihood > best.likelihood) best = { likelihood, p2 };
      }
      const p1 = best.p2 + difference;
      const variance = (p1 * (1 - p1)) / 14 + (best.p2 * (1 - best.p2)) / 17;
      const z = (3 / 14 - 9 / 17 - difference) / Math.sqrt(variance);
      expect(Math.abs(z)).toBeCloseTo(1.959964, 4); // the grid knows p2 to 1e-5
    }
  });
});

describe("tests that hold no margin fixed", () => {
  const vaccine = sharesOfTable({ a: 7, b: 8, c: 12, d: 3 });

  it("[EF200] 7/15 against 12/15: 3/15 against 8/15 ties with it and is counted, which rounding must not change", () => {
    const less = { ...vaccine, alternative: "less" } as const;
    const counted = of(barnardTest(less));
    expect(counted.statistic).toBeCloseTo(-1.8943380760602064, 12);
    expect(counted.pValue).toBeCloseTo(0.03410915466, 9); // both orders lead to one set of tables here
    expect(of(boschlooTest(less)).pValue).toBeCloseTo(counted.pValue, 9);
    // as SciPy's manual prints it, .03407: the tie lost to the last bit of a double
    expect(of(barnardTest({ ...less, tieSlack: 0 })).pValue).toBeCloseTo(0.03407671637, 9);
  });

  it("[EF200] trap: the manual's .03407 for Barnard lost a tie; counted it is .0341; Fisher as printed", () => {
    const { catches, vaccine: printed } = scipy;
    const less = { ...sharesOfTable(printed), alternative: "less" } as const;
    const fiveDecimals = (p: number) => Number(p.toFixed(5));
    expect(Math.abs(of(barnardTest({ ...less, tieSlack: 0 })).pValue - printed.barnardLess)).toBeLessThan(1e-5); // printed cut, not rounded
    expect(fiveDecimals(of(barnardTest(less)).pValue)).toBe(printed.barnardWithTie);
    expect(Number(fisherTest(printed).less.toFixed(3))).toBe(printed.fisherLess);
    expect(Math.abs(fisherTest(catches).twoSided - catches.fisherTwoSided)).toBeLessThan(1e-4); // .03497, printed cut
  });

  it("[EF200] the largest chance is found: none on a fine grid of common shares is larger", () => {
    fc.assert(
      fc.property(anyShare, anyShare, (first, second) => {
        const { statistic, pValue, commonShare } = of(barnardTest({ first, second }));
        const [n1, n2] = [first.examined, second.examined];
        const score = (x1: number, x2: number) => {
          const pooled = (x1 + x2) / (n1 + n2);
          const gap = x1 / n1 - x2 / n2;
          return Math.abs(gap) < 1e-14 ? 0 : gap / Math.sqrt(pooled * (1 - pooled) * (1 / n1 + 1 / n2));
        };
        const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k);
        const chanceAt = (p: number) => {
          let sum = 0;
          for (let x1 = 0; x1 <= n1; x1++) {
            for (let x2 = 0; x2 <= n2; x2++) {
              if (Math.abs(score(x1, x2)) < Math.abs(statistic) - 1e-9) continue;
              sum += choose(n1, x1) * choose(n2, x2) * p ** (x1 + x2) * (1 - p) ** (n1 + n2 - x1 - x2);
            }
          }
          return sum;
        };
        expect(chanceAt(commonShare)).toBeCloseTo(pValue, 9);
        for (let p = 0.01; p < 1; p += 0.01) expect(chanceAt(p)).toBeLessThanOrEqual(pValue + 1e-12);
      }),
      { seed: 1947, numRuns: 12 },
    );
  });

  it("[EF201] is never above Fisher's one-sided P, and turned around it is the other side", () => {
    fc.assert(
      fc.property(anyShare, anyShare, (first, second) => {
        const fisher = fisherTest({
          a: first.infested,
          b: first.examined - first.infested,
          c: second.infested,
          d: second.examined - second.infested,
        });
        for (const alternative of ["less", "greater"] as const) {
          const found = of(boschlooTest({ first, second, alternative }));
          expect(found.pValue).toBeLessThanOrEqual(fisher[alternative] + 1e-12);
          const other = alternative === "less" ? "greater" : "less";
          const turned = of(boschlooTest({ first: second, second: first, alternative: other }));
          expect(turned.pValue).toBeCloseTo(found.pValue, 9);
        }
      }),
      { seed: 1970, numRuns: 40 },
    );
  });

  it("[EF200] an empty group is refused", () => {
    const empty = { first: share([0, 0]), second: share([1, 5]) };
    for (const result of [barnardTest(empty), boschlooTest(empty), shareDifference(empty)]) {
      expect(result).toMatchObject({ ok: false, problems: [{ code: "group-not-examined" }] });
    }
  });
});

describe("before and after in the same colonies", () => {
  it("[EF203] tied changes: Wilcoxon's is refused, signs and flips serve", () => {
    const pairs = { before: [12, 30, 7, 22, 18, 9, 40, 15], after: [3, 12, 8, 5, 9, 2, 18, 14] };
    expect(wilcoxonTest(pairs)).toMatchObject({ ok: false, problems: [{ code: "changes-tie" }] });
    expect(of(signTest(pairs))).toMatchObject({ statistic: 7, differing: 8 });
    expect(of(signTest(pairs)).pValue).toBeCloseTo(0.0703125, 14);
    expect(of(signFlipTest(pairs)).pValue).toBe(0.0234375);
  });

  it("[EF203] Wilcoxon's law is that of all flips of the ranks", () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 60 }), { minLength: 1, maxLength: 10 }), (sizes) => {
        const after = sizes.map((size, i) => (i % 3 === 0 ? size : -size));
        const ranks = sizes.map((size) => 1 + sizes.filter((other) => other < size).length);
        const byRank = signFlipTest({
          before: ranks.map(() => 0),
          after: ranks.map((rank, i) => (i % 3 === 0 ? rank : -rank)),
        });
        const exact = wilcoxonTest({ before: sizes.map(() => 0), after });
        expect(of(exact).pValue).toBeCloseTo(of(byRank).pValue, 12);
      }),
      { seed: 1945, numRuns: 60 },
    );
  });

  it("[EF203] no pair that differs, and more than sixteen to list, are refused", () => {
    const same = { before: [4, 5], after: [4, 5] };
    for (const test of [signTest, wilcoxonTest, signFlipTest]) {
      expect(test(same)).toMatchObject({ ok: false, problems: [{ code: "no-pair-differs", slots: { pairs: 2 } }] });
    }
    const many = { before: Array.from({ length: 17 }, (_, i) => i + 1), after: Array.from({ length: 17 }, () => 0) };
    expect(signFlipTest(many)).toMatchObject({ ok: false, problems: [{ code: "too-many-pairs-to-list" }] });
    expect(of(wilcoxonTest(many)).pValue).toBeCloseTo(2 / 2 ** 17, 15);
    expect(() => signTest({ before: [1], after: [] })).toThrow("after must be");
  });
});

describe("sizes and power", () => {
  it("[EF204] .6 against .4 takes 97, corrected 107; equal shares are refused; colonies by design effect", () => {
    expect(of(groupSize({ firstShare: 0.6, secondShare: 0.4 }))).toMatchObject({
      perGroup: 97,
      perGroupCorrected: 107,
    });
    expect(groupSize({ firstShare: 0.4, secondShare: 0.4 })).toMatchObject({
      ok: false,
      problems: [{ code: "shares-equal" }],
    });
    const single = clustersPerGroup({ individuals: 97, perCluster: 1, icc: 0.7 });
    expect(single).toEqual({ designEffect: 1, perGroup: 97, perGroupPlusOne: 98 });
  });

  it("[EF204] the corrected size reaches its power with Fisher's test, the uncorrected does not", () => {
    const shares = { firstShare: 0.6, secondShare: 0.3 };
    const { perGroup, perGroupCorrected } = of(groupSize(shares));
    const powerAt = (size: number) => fisherPower({ ...shares, firstSize: size, secondSize: size });
    expect(powerAt(perGroupCorrected)).toBeGreaterThan(0.79); // a normal approximation: a hundredth either way
    expect(powerAt(perGroup)).toBeLessThan(0.8);
  });

  it("[EF207] a power of half of alpha or less has no size, and a ratio needs groups that were looked at", () => {
    const shares = { firstShare: 0.6, secondShare: 0.4 };
    expect(() => groupSize({ ...shares, power: 0.02 })).toThrow("power must be");
    expect(of(groupSize({ ...shares, power: 0.03 })).perGroup).toBe(1);
    const pair = { first: share([1, 5]), second: share([0, 5]), level: 0.95 };
    for (const ratio of [katzRatio, koopmanRatio]) {
      expect(() => ratio(pair)).toThrow("second must be");
      expect(() => ratio({ ...pair, first: share([6, 5]) })).toThrow("first must be");
      expect(() => ratio({ ...pair, second: share([1, 5]), level: 1 })).toThrow("level must be");
    }
  });

  it("[EF205] equals the double sum table by table, and at equal shares stays below alpha", () => {
    const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n, k - 1) * (n - k + 1)) / k);
    const pmf = (n: number, x: number, p: number) => choose(n, x) * p ** x * (1 - p) ** (n - x);
    for (const by of ["fisher", "mid-p"] as const) {
      let sum = 0;
      for (let a = 0; a <= 9; a++) {
        for (let c = 0; c <= 12; c++) {
          const { twoSided, midP } = fisherTest({ a, b: 9 - a, c, d: 12 - c });
          if ((by === "fisher" ? twoSided : midP.twoSided) <= 0.05) sum += pmf(9, a, 0.7) * pmf(12, c, 0.2);
        }
      }
      const found = fisherPower({ firstShare: 0.7, secondShare: 0.2, firstSize: 9, secondSize: 12, by });
      expect(found).toBeCloseTo(sum, 12);
    }
    expect(fisherPower({ firstShare: 0.3, secondShare: 0.3, firstSize: 20, secondSize: 25 })).toBeLessThan(0.05);
  });
});

it("[EF206] the ratio and its limits are those of the efficacy, and the dead tell the same as the living", () => {
  const trial = {
    kind: "counts",
    treated: { before: { mites: 300 }, after: { mites: 15 } },
    control: { before: { mites: 250 }, after: { mites: 300 } },
    overdispersion: 2,
  } as const;
  const [change, estimate] = [of(changeRatio(trial)), of(hendersonTilton(trial))];
  expect(change.logStandardError).toBeCloseTo(Math.sqrt(2 * (1 / 300 + 1 / 15 + 1 / 250 + 1 / 300)), 12);
  expect(efficacyLimits(change)).toEqual({ low: estimate.low, high: estimate.high });
  const [treated, control] = [share([12, 100]), share([80, 100])];
  const dead = schneiderOrelli({ treatedDead: shareWithout(treated), controlDead: shareWithout(control) });
  expect(of(dead)).toBeCloseTo(of(abbott({ treated, control })).value, 12);
});

it("[EF208] a design effect of 4 doubles Katz's width on the logarithm, divides Koopman's chi-square, and moves no value", () => {
  const [treated, control] = [share([12, 100]), share([80, 100])];
  const width = (found: { readonly low: number; readonly high: number }) =>
    Math.log((1 - found.low) / (1 - found.high));
  const [alone, alike] = [1, 4].map((designEffect) => of(abbott({ treated, control, designEffect })));
  expect(alike?.value).toBe(alone?.value);
  expect(width(alike as Estimate) / width(alone as Estimate)).toBeCloseTo(2, 12);
  // z(0.95) twice is z at the level 1 − 2·(1 − Φ(3.919927969)): the same limits by another way
  const twice = 1 - 2 * normalSf(2 * 1.959963984540054);
  const score = of(abbott({ treated, control, method: "koopman", designEffect: 4 }));
  const wider = of(abbott({ treated, control, method: "koopman", level: twice }));
  expect(score.low).toBeCloseTo(wider.low, 8);
  expect(score.high).toBeCloseTo(wider.high, 8);
  const trial = {
    kind: "shares",
    treated: { before: share([30, 100]), after: share([4, 100]) },
    control: { before: share([28, 100]), after: share([35, 100]) },
  } as const;
  const [plain, clustered] = [1, 4].map((designEffect) => of(hendersonTilton({ ...trial, designEffect })));
  expect(width(clustered as Estimate) / width(plain as Estimate)).toBeCloseTo(2, 12);
  expect(() => abbott({ treated, control, designEffect: 0.5 })).toThrow("designEffect");
});
