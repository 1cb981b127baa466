/** Rates of areas, trends and random intercepts: shrinkage, mirrors, second opinions, and what is refused. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { integral, logChoose, normal } from "../../numerics/index.ts";
import {
  type AreaCount,
  claytonKaldor,
  type ExpectedCount,
  type GroupedCount,
  logisticRandomIntercept,
  marshallGlobal,
  marshallLocal,
  oddsRatio,
  randomInterceptTests,
  surveillanceProblemCodes,
  trendTest,
  typicalShare,
} from "./index.ts";

const areas = fc.array(
  fc.record({ cases: fc.integer({ min: 0, max: 40 }), population: fc.integer({ min: 20, max: 900 }) }),
  { minLength: 2, maxLength: 15 },
);
const code = (result: { readonly problems: readonly { readonly code: string }[] }) => result.problems[0]?.code;

describe("Marshall's rates", () => {
  it("[SV161] lie between the area's rate and the mean, nearer to it the larger the area", () => {
    fc.assert(
      fc.property(areas, (list) => {
        const found = marshallGlobal(list);
        if (!found.ok) {
          expect(code(found)).toBe("nothing-counted");
          return;
        }
        const { mean, rates, smoothed, excessVariance } = found.value;
        for (const [i, each] of smoothed.entries()) {
          const rate = rates[i] as number;
          expect(each).toBeGreaterThanOrEqual(Math.min(rate, mean) - 1e-15);
          expect(each).toBeLessThanOrEqual(Math.max(rate, mean) + 1e-15);
          if (excessVariance <= 0) expect(each).toBe(mean);
        }
        expect(found.problems.map((each) => each.code)).toEqual(
          excessVariance <= 0 ? ["areas-no-more-than-chance"] : [],
        );
      }),
      { seed: 1991, numRuns: 200 },
    );
  });

  it("[SV162] trap: every area a neighbour of every other gives the global rates under both readings", () => {
    const list: readonly AreaCount[] = [
      { cases: 8, population: 100 },
      { cases: 1, population: 250 },
      { cases: 30, population: 140 },
    ];
    const [whole, local] = [
      marshallGlobal(list),
      marshallLocal(list.map((each, i) => ({ ...each, neighbours: [0, 1, 2].filter((j) => j !== i) }))),
    ];
    if (!whole.ok || !local.ok) throw new Error("refused");
    for (const [i, each] of whole.value.smoothed.entries()) {
      expect(local.value.byFocalMean[i]).toBeCloseTo(each, 14);
      expect(local.value.byOwnMeans[i]).toBeCloseTo(each, 14);
    }
  });

  it("[SV162] trap: the two readings differ on a row of areas; alone keeps its rate; no case gives 0", () => {
    const row = [3, 1, 9, 0, 0, 0, 4].map((cases, i) => ({
      cases,
      population: 60 + 10 * i,
      neighbours: i === 6 ? [] : [i - 1, i + 1].filter((j) => j >= 0 && j < 6),
    }));
    const found = marshallLocal(row);
    if (!found.ok) throw new Error("refused");
    expect(found.value.byFocalMean[6]).toBeCloseTo(4 / 120, 14);
    expect(found.value.byOwnMeans[6]).toBeCloseTo(4 / 120, 14);
    expect(found.value.byFocalMean[4]).toBe(0);
    expect(found.value.byOwnMeans[4]).toBe(0);
    const differ = found.value.byFocalMean.some((each, i) => Math.abs(each - (found.value.byOwnMeans[i] ?? 0)) > 1e-4);
    expect(differ).toBe(true);
  });

  it("[SV167] one area, no population, no case, an unknown neighbour: refused", () => {
    const good = { cases: 3, population: 50, neighbours: [] };
    expect(code(marshallGlobal([good]))).toBe("too-few-areas");
    expect(code(marshallGlobal([good, { cases: 1, population: 0 }]))).toBe("area-without-population");
    expect(
      code(
        marshallGlobal([
          { cases: 0, population: 5 },
          { cases: 0, population: 9 },
        ]),
      ),
    ).toBe("nothing-counted");
    expect(code(marshallLocal([good, { ...good, neighbours: [2] }]))).toBe("neighbour-unknown");
    expect(() => marshallGlobal([{ cases: -1, population: 3 }])).toThrow("cases must be");
  });
});

describe("the Poisson–gamma model", () => {
  const varied: readonly ExpectedCount[] = [9, 1, 12, 2, 7, 0, 15].map((cases, i) => ({ cases, expected: 3 + i / 2 }));

  it("[SV164] the likelihood told is the integral over the gamma, and no nearby shape or rate is likelier", () => {
    const found = claytonKaldor(varied);
    if (!found.ok) throw new Error("refused");
    const { shape, rate, logLikelihood, slopeLeft } = found.value.byLikelihood;
    const byIntegral = (nu: number, alpha: number) =>
      varied.reduce((sum, { cases, expected }) => {
        // Γ(ν) by the same integral keeps the check apart from our gamma function.
        const weigh = (power: number, speed: number) =>
          integral({ f: (t) => t ** power * Math.exp(-speed * t), low: 0, high: 400, relative: 1e-11 }).value;
        const factorial = Array.from({ length: cases }, (_, j) => Math.log(j + 1)).reduce((a, b) => a + b, 0);
        const top = Math.log(weigh(nu - 1 + cases, alpha + expected)) + cases * Math.log(expected) - factorial;
        return sum + top - Math.log(weigh(nu - 1, alpha));
      }, 0);
    expect(byIntegral(shape, rate)).toBeCloseTo(logLikelihood, 6);
    expect(slopeLeft).toBeLessThan(1e-8);
    for (const [a, b] of [
      [1.05, 1],
      [0.95, 1],
      [1, 1.05],
      [1, 0.95],
    ] as const) {
      expect(byIntegral(shape * a, rate * b)).toBeLessThan(logLikelihood);
    }
  });

  it("[SV164] the moments settle where their two equations hold", () => {
    const found = claytonKaldor(varied);
    if (!found.ok || !found.value.byMoments.ok) throw new Error("refused");
    const { shape, rate, smoothed } = found.value.byMoments.value;
    const mean = smoothed.reduce((sum, each) => sum + each, 0) / smoothed.length;
    const squares = smoothed.reduce(
      (sum, each, i) => sum + (1 + rate / (varied[i]?.expected ?? 1)) * (each - mean) ** 2,
      0,
    );
    expect(mean).toBeCloseTo(shape / rate, 10);
    expect(squares / (smoothed.length - 1)).toBeCloseTo(shape / rate ** 2, 10);
  });

  it("[SV163] areas that differ no more than chance have no shape of greatest likelihood", () => {
    const alike = [4, 5, 5, 4, 6].map((cases) => ({ cases, expected: 5 }));
    expect(code(claytonKaldor(alike))).toBe("areas-no-more-than-chance");
    expect(
      code(
        claytonKaldor([
          { cases: 0, expected: 5 },
          { cases: 0, expected: 2 },
        ]),
      ),
    ).toBe("nothing-counted");
  });
});

describe("trend", () => {
  const groups = [12, 18, 22, 30].map((positive, i) => ({ positive, examined: 200, score: 2020 + i }));

  it("[SV165] turns with the scores, does not mind where they start, and is chi-square for two groups", () => {
    const test = (list: typeof groups) => {
      const found = trendTest(list);
      if (!found.ok) throw new Error("refused");
      return found.value;
    };
    expect(test(groups.map((each) => ({ ...each, score: -each.score }))).z).toBeCloseTo(-test(groups).z, 12);
    expect(test(groups.map((each) => ({ ...each, score: each.score - 2020 }))).z).toBeCloseTo(test(groups).z, 10);
    // Pearson's chi-square of 12 and 30 of 200 each: 400·(12·170 − 30·188)²/(200·200·42·358).
    const two = test([groups[0], groups[3]] as typeof groups);
    expect(two.chiSquare).toBeCloseTo((400 * (12 * 170 - 30 * 188) ** 2) / (200 * 200 * 42 * 358), 10);
  });

  it("[SV169] scores of any size give the same trend", () => {
    const z = (scale: number) => {
      const found = trendTest(groups.map((each) => ({ ...each, score: (each.score - 2021.3) * scale })));
      if (!found.ok) throw new Error("refused");
      return found.value.z;
    };
    for (const scale of [1e-300, 1e-12, 1e200, 1e304]) expect(z(scale)).toBeCloseTo(z(1), 10);
  });

  it("[SV167] one group, none or all positive, or scores all alike: refused", () => {
    const empty = { positive: 0, examined: 0, score: 9 };
    expect(code(trendTest([groups[0] as (typeof groups)[0], empty]))).toBe("too-few-groups");
    expect(code(trendTest(groups.map((each) => ({ ...each, positive: 0 }))))).toBe("trend-not-defined");
    expect(code(trendTest(groups.map((each) => ({ ...each, score: 1 }))))).toBe("scores-all-alike");
    expect(() => trendTest([{ positive: 5, examined: 3, score: 1 }])).toThrow("positive must be");
  });
});

describe("logistic regression with a random intercept", () => {
  const herds = [
    [2, 1, 0],
    [9, 7, 3],
    [1, 0, 0],
    [5, 6, 1],
    [0, 2, 1],
    [12, 4, 5],
  ];
  const rows: readonly GroupedCount[] = herds.flatMap((herd, group) =>
    herd.map((positive, period) => ({
      positive,
      examined: 14 + period,
      group: `herd ${group}`,
      covariates: [1, period],
    })),
  );
  const fitted = (list: readonly GroupedCount[], nodes = 25) => {
    const fit = logisticRandomIntercept(list, { nodes });
    if (!fit.ok || fit.value.kind !== "spread") throw new Error(fit.problems[0]?.code);
    return fit.value;
  };
  const byIntegral = ([a, b]: readonly number[], sigma: number) =>
    herds.reduce((sum, herd) => {
      const f = (z: number) =>
        herd.reduce(
          (product, positive, period) => {
            const p = 1 / (1 + Math.exp(-((a as number) + (b as number) * period + sigma * z)));
            const n = 14 + period;
            return product * Math.exp(logChoose(n, positive)) * p ** positive * (1 - p) ** (n - positive);
          },
          normal({ mean: 0, sd: 1 }).pdf(z),
        );
      return sum + Math.log(integral({ f, low: -9, high: 9, relative: 1e-11 }).value);
    }, 0);

  it("[SV166] the likelihood is the integral by another rule, and no nearby point is likelier", () => {
    const { coefficients, sigma, logLikelihood, slopeLeft, logLikelihoodPlain } = fitted(rows);
    const best = coefficients.map(({ value }) => value);
    // 25 adaptive nodes leave an error far below the tolerance of a fit.
    expect(byIntegral(best, sigma)).toBeCloseTo(logLikelihood, 7);
    expect(slopeLeft).toBeLessThan(1e-7);
    expect(logLikelihoodPlain).toBeLessThan(logLikelihood);
    for (const [i, step] of [
      [0, 0.02],
      [0, -0.02],
      [1, 0.02],
      [1, -0.02],
      [2, 0.02],
      [2, -0.02],
    ] as const) {
      const point = best.map((each, j) => each + (i === j ? step : 0));
      expect(byIntegral(point, sigma * (i === 2 ? 1 + step : 1))).toBeLessThan(logLikelihood);
    }
  });

  it("[SV166] standard errors are those of the curvature of the likelihood", () => {
    const { coefficients, sigma, standardErrors, seLogSigma } = fitted(rows);
    const best = [...coefficients.map(({ value }) => value), Math.log(sigma)];
    const h = 1e-3;
    const at = (i: number, j: number, a: number, b: number) => {
      const point = best.map((each, k) => each + (k === i ? a * h : 0) + (k === j ? b * h : 0));
      return byIntegral(point, Math.exp(point[2] as number));
    };
    const bend = best.map((_, i) =>
      best.map((_, j) => -(at(i, j, 1, 1) - at(i, j, 1, -1) - at(i, j, -1, 1) + at(i, j, -1, -1)) / (4 * h * h)),
    );
    // Put back: curvature times a column of variances must be 1 on its own place. Variances by Cramer's rule.
    const [[a, b, c], [, d, e], [, , f]] = bend as [number, number, number][] as [
      [number, number, number],
      [number, number, number],
      [number, number, number],
    ];
    const determinant = a * (d * f - e * e) - b * (b * f - c * e) + c * (b * e - c * d);
    const variances = [d * f - e * e, a * f - c * c, a * d - b * b].map((each) => each / determinant);
    for (const [i, se] of [...standardErrors, seLogSigma].entries()) {
      expect(se / Math.sqrt(variances[i] as number)).toBeCloseTo(1, 3);
    }
  });

  it("[SV166] 25 nodes or 60 show no difference, nor does the order of the rows", () => {
    const [one, other, turned] = [fitted(rows), fitted(rows, 60), fitted([...rows].reverse())];
    expect(other.logLikelihood).toBeCloseTo(one.logLikelihood, 7);
    expect(other.sigma).toBeCloseTo(one.sigma, 6);
    expect(turned.sigma).toBeCloseTo(one.sigma, 9);
  });

  it("[SV168] groups that differ no more than chance: plain logistic regression, named by a warning", () => {
    const even = rows.map((row, i) => ({ ...row, positive: 4 + (i % 2) }));
    const fit = logisticRandomIntercept(even);
    if (!fit.ok || fit.value.kind !== "no-spread") throw new Error("not at the edge");
    expect(fit.problems).toMatchObject([
      { code: "groups-no-more-than-chance", severity: "warned", slots: { groups: 6 } },
    ]);
    const { coefficients, standardErrors, sigma, logLikelihood, logLikelihoodPlain } = fit.value;
    expect(sigma).toBe(0);
    expect(logLikelihood).toBe(logLikelihoodPlain);
    // At the top of the plain likelihood the residuals are at right angles to every column, and the standard errors are
    // those of the inverse of Xᵀ W X: two by two, by hand.
    const [a, b] = coefficients.map(({ value }) => value) as [number, number];
    const sums = { level: 0, slope: 0, w: 0, wx: 0, wxx: 0 };
    for (const { positive, examined, covariates } of even) {
      const x = covariates[1] as number;
      const p = 1 / (1 + Math.exp(-a - b * x));
      const weight = examined * p * (1 - p);
      sums.level += positive - examined * p;
      sums.slope += x * (positive - examined * p);
      sums.w += weight;
      sums.wx += weight * x;
      sums.wxx += weight * x * x;
    }
    expect(Math.abs(sums.level)).toBeLessThan(1e-7);
    expect(Math.abs(sums.slope)).toBeLessThan(1e-7);
    const determinant = sums.w * sums.wxx - sums.wx ** 2;
    expect(standardErrors[0]).toBeCloseTo(Math.sqrt(sums.wxx / determinant), 9);
    expect(standardErrors[1]).toBeCloseTo(Math.sqrt(sums.w / determinant), 9);
  });

  it("[SV169] a group without a positive beside one with many settles", () => {
    const lopsided = [
      [1, 20],
      [9, 20],
      [0, 25],
    ].map(([positive = 0, examined = 0], i) => ({ positive, examined, group: `${i}`, covariates: [1] }));
    const [fit, finer] = [fitted(lopsided), fitted(lopsided, 150)];
    expect(fit.slopeLeft).toBeLessThan(1e-7);
    expect(fit.sigma).toBeCloseTo(finer.sigma, 3);
    expect(fit.logLikelihood).toBeCloseTo(finer.logLikelihood, 4); // what 25 nodes leave of a lopsided integrand
  });

  it("[SV169] large groups, half of them clear, settle at the top of the likelihood", () => {
    const large = [
      [0, 1795, 0, 4744],
      [641, 3342, 935, 4190],
      [0, 3276, 0, 2694],
      [53, 2423, 30, 3573],
      [336, 4242, 601, 4581],
      [0, 4519, 0, 2515],
    ].flatMap(([a = 0, n = 0, b = 0, m = 0], i) => [
      { positive: a, examined: n, group: `${i}`, covariates: [1, 0] },
      { positive: b, examined: m, group: `${i}`, covariates: [1, 1] },
    ]);
    const fit = fitted(large);
    // SciPy: simplex search, the integral by 40,001 even steps.
    expect(fit.coefficients[0]?.value).toBeCloseTo(-8.363596, 4);
    expect(fit.coefficients[1]?.value).toBeCloseTo(0.28943757, 5);
    expect(fit.sigma).toBeCloseTo(6.2595429, 3);
    expect(fit.logLikelihood).toBeCloseTo(-64.71813406, 6);
  });

  it("[SV168] one unit a group says nothing of a spread and is refused", () => {
    const single = [0, 1, 1, 0, 1].map((positive, i) => ({ positive, examined: 1, group: `${i}`, covariates: [1] }));
    expect(code(logisticRandomIntercept(single))).toBe("one-unit-a-group");
  });

  it("[SV163] separation, columns that repeat each other and all or none are refused by name", () => {
    const changed = (change: (row: GroupedCount, i: number) => Partial<GroupedCount>) =>
      logisticRandomIntercept(rows.map((row, i) => ({ ...row, ...change(row, i) })));
    const never = changed((row) => ({
      positive: row.covariates[1] === 2 ? 0 : row.positive,
      covariates: [1, row.covariates[1] === 2 ? 1 : 0],
    }));
    expect(never.problems[0]).toMatchObject({ code: "covariates-separate", slots: { covariate: 2 } });
    expect(code(changed((row) => ({ covariates: [1, 2, row.covariates[1] as number] })))).toBe("covariates-redundant");
    const split = changed((row, i) => ({ positive: i < 9 ? 0 : row.examined, covariates: [1] }));
    expect(code(split)).toBe("groups-all-or-none");
    expect(code(logisticRandomIntercept(rows.slice(0, 3)))).toBe("too-few-groups");
    expect(() => logisticRandomIntercept([])).toThrow("covariates must be");
    expect(() => changed((_, i) => ({ covariates: i === 3 ? [1] : [1, 2] }))).toThrow("covariates must be");
  });
});

it("[SV163] no code is listed twice", () => {
  expect(new Set(surveillanceProblemCodes).size).toBe(surveillanceProblemCodes.length);
});

describe("what a fit says in shares, odds and tests", () => {
  const rows = (shift: number): readonly GroupedCount[] =>
    [3, 9, 4, 12, 1, 6, 0, 5].map((positive, i) => ({
      positive,
      examined: 20,
      group: String(Math.floor(i / 2)),
      covariates: [1, (i % 2) - shift],
    }));

  it("[SV170] the share at the second time is that of a fit whose origin is moved there, and the ratio of odds leads to it", () => {
    const [here, there] = [logisticRandomIntercept(rows(0)), logisticRandomIntercept(rows(1))];
    if (!here.ok || !there.ok) throw new Error("refused");
    const odds = (share: number) => share / (1 - share);
    const [first, slope] = here.value.coefficients;
    const [second] = there.value.coefficients;
    if (!first || !slope || !second) throw new Error("no coefficients");
    const ratio = odds(typicalShare(second).value) / odds(typicalShare(first).value);
    expect(oddsRatio(slope).value).toBeCloseTo(ratio, 6); // both fits are right to about 1e-8
    for (const each of [oddsRatio(slope), typicalShare(first)]) {
      expect(each.low).toBeLessThan(each.value);
      expect(each.high).toBeGreaterThan(each.value);
    }
  });

  it("[SV171] an idle covariate gains nothing; half of chi-square for the groups; fits of other sizes are no pair", () => {
    const still = rows(0).map((row, i) => ({ ...row, positive: [4, 4, 12, 12, 2, 2, 7, 7][i] ?? 0 }));
    const [fit, part] = [
      logisticRandomIntercept(still),
      logisticRandomIntercept(still.map((row) => ({ ...row, covariates: [1] }))),
    ];
    if (!fit.ok || !part.ok) throw new Error("refused");
    const tests = randomInterceptTests(fit.value, part.value);
    expect(tests.covariates.statistic).toBeCloseTo(0, 8); // equal shares at both times
    expect(tests.covariates.pValue).toBeGreaterThan(0.999);
    const gain = 2 * (fit.value.logLikelihood - fit.value.logLikelihoodPlain);
    expect(tests.groups.statistic).toBeCloseTo(gain, 12);
    // chi-square with one degree is a squared normal, so half of its tail is one tail of the normal
    expect(tests.groups.pValue).toBeCloseTo(normal({ mean: 0, sd: 1 }).sf(Math.sqrt(gain)), 12);
    expect(() => randomInterceptTests(part.value, fit.value)).toThrow("larger must be");
    const alike = { coefficients: [1, 2], logLikelihood: -10, logLikelihoodPlain: -10 };
    expect(randomInterceptTests(alike, { coefficients: [1], logLikelihood: -12 }).groups).toEqual({
      statistic: 0,
      pValue: 1,
    });
  });
});
