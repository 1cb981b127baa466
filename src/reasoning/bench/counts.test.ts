/** Mites per bee: aggregation against print and by brute force, prevalence and abundance, regression, refusals. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/bliss-fisher-1953-red-mites.json" with { type: "json" };
import type { Result } from "../../units/index.ts";
import {
  abundanceOfPrevalence,
  compareCountFits,
  expectedCounts,
  fitCountRegression,
  fitCounts,
  negativeBinomialLogLikelihood,
  prevalenceOfAbundance,
  rateRatios,
} from "./index.ts";

const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};
const codeOf = (result: Result<unknown>) => (result.ok ? "answered" : result.problems[0]?.code);

describe("mites per bee", () => {
  it("[BE206] red mites on 150 leaves as printed: k 1.02459", () => {
    const { counts, leaves, k, mean } = golden;
    const found = of(fitCounts({ counts, bees: leaves }));
    expect(found.mean).toBeCloseTo(mean, 4);
    expect(of(found.fit).k).toBeCloseTo(k, 5);
    const oneByOne = counts.flatMap((count, i) => Array.from({ length: leaves[i] as number }, () => count));
    expect(of(of(fitCounts({ counts: oneByOne })).fit)).toEqual(of(found.fit));
  });

  it("[BE206] no k nearby is likelier, and its standard error is the curvature there", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 0, max: 30 }), { minLength: 2, maxLength: 40 }), (counts) => {
        const result = fitCounts({ counts });
        if (!result.ok || !result.value.fit.ok) return;
        const { mean, fit, logLikelihoodPoisson } = result.value;
        const { k, logLikelihood, standardErrorOfK } = fit.value;
        const rows = counts.map((count) => ({ count, mean, bees: 1 }));
        const at = (each: number) => negativeBinomialLogLikelihood(rows, each);
        for (const factor of [0.5, 0.9, 0.999, 1.001, 1.1, 2])
          expect(at(k * factor)).toBeLessThanOrEqual(logLikelihood);
        expect(logLikelihood).toBeGreaterThan(logLikelihoodPoisson - 1e-9);
        const step = 1e-3 * k;
        const curvature = (2 * logLikelihood - at(k + step) - at(k - step)) / step ** 2;
        if (k > 50) return; // so flat there that the differences are all rounding
        expect(curvature * standardErrorOfK ** 2).toBeCloseTo(1, 2); // differences at a thousandth of k
      }),
      { seed: 1953, numRuns: 150 },
    );
  });

  it("[BE206] each k is refused by itself: even counts, and too few bees without mites", () => {
    const even = of(fitCounts({ counts: [0, 1, 1, 2] }));
    expect([even.fit, even.kByMoments].map(codeOf)).toEqual(Array(2).fill("no-more-uneven-than-chance"));
    // variance 4/3 with n − 1, 1 with n, mean 1: moments give a k, the likelihood has no maximum
    const between = of(fitCounts({ counts: [0, 0, 2, 2] }));
    expect(of(between.kByMoments)).toBeCloseTo(3, 12);
    expect(codeOf(between.fit)).toBe("no-more-uneven-than-chance");
    // Variance with n and mean are both 2/3, and rounding alone parts them.
    const rounded = of(fitCounts({ counts: [0, 0, 0, 2, 0, 1, 0, 1, 2] }));
    expect(codeOf(rounded.fit)).toBe("no-more-uneven-than-chance");
    // Variance with n − 1 and mean are both 4/3.
    expect(codeOf(of(fitCounts({ counts: [0, 2, 2] })).kByMoments)).toBe("no-more-uneven-than-chance");
    const full = of(fitCounts({ counts: [1, 1, 1, 12] }));
    expect(codeOf(full.kByZeros)).toBe("too-few-without-mites");
    expect(full.fit.ok).toBe(true);
    expect([[], [0, 0], [3]].map((counts) => codeOf(fitCounts({ counts })))).toEqual([
      "nothing-examined",
      "no-mites-counted",
      "too-few-to-estimate",
    ]);
    expect(() => fitCounts({ counts: [1.5] })).toThrow("counts must be");
    expect(() => fitCounts({ counts: [1, 2], bees: [1] })).toThrow("bees must be");
  });

  it("[BE207] there and back, below the share at random, and near it when mites hardly crowd", () => {
    const positive = fc.double({ min: 0.01, max: 20, noNaN: true });
    fc.assert(
      fc.property(positive, positive, (mean, k) => {
        const { prevalence, prevalenceAtRandom, intensity } = prevalenceOfAbundance({ mean, k });
        expect(prevalence).toBeLessThan(prevalenceAtRandom * (1 + 1e-12));
        expect(prevalence * intensity).toBeCloseTo(mean, 10);
        fc.pre(prevalence < 0.999999);
        expect(abundanceOfPrevalence({ prevalence, k }) / mean).toBeCloseTo(1, 8);
      }),
      { seed: 13, numRuns: 200 },
    );
    const crowded = prevalenceOfAbundance({ mean: 0.7, k: 1e7 });
    expect(crowded.prevalence).toBeCloseTo(crowded.prevalenceAtRandom, 6);
    expect(abundanceOfPrevalence({ prevalence: 1 - Math.exp(-0.7), k: null })).toBeCloseTo(0.7, 12);
    expect(() => abundanceOfPrevalence({ prevalence: 1, k: 1 })).toThrow("prevalence must be");
  });
});

describe("stocks compared", () => {
  it("[BE208] one group more even than chance does not hide how uneven the other is", () => {
    const counts = [17, 17, 17, 16, 15, 0, 0, 0, 0, 10, 0];
    const found = of(fitCountRegression({ counts, design: counts.map((_, i) => [1, Number(i >= 5)]) }));
    // By R: dnbinom and dpois with the group means, optimize over ln θ.
    expect(found.logLikelihood - found.logLikelihoodPoisson).toBeCloseTo(2.0034679836, 6);
    expect(found.theta).toBeCloseTo(0.8455880987, 5);
  });

  it("[BE208] columns that overlap settle too, where a full step would overshoot", () => {
    const counts = [0, 0, 3, 126, 0, 0, 0, 3, 0, 0, 0, 0, 0];
    const design = counts.map((_, i) => [1, i % 2, Number(i % 3 === 0)]);
    const found = of(fitCountRegression({ counts, design }));
    // Maximum by SciPy's simplex search over all four at once.
    expect(found.logLikelihood).toBeCloseTo(-18.539463612189, 8);
    expect(found.coefficients[1]).toBeCloseTo(2.0282675, 4);
    expect(Math.log(found.theta)).toBeCloseTo(-2.4857001, 4);
  });

  // invented counts of three stocks, twenty bees each
  const stocks = [
    [0, 0, 1, 0, 3, 0, 0, 2, 5, 0, 1, 0, 0, 4, 0, 0, 1, 0, 2, 0],
    [2, 0, 7, 1, 0, 4, 12, 0, 3, 5, 0, 9, 1, 0, 6, 2, 0, 15, 3, 1],
    [0, 1, 0, 0, 0, 2, 0, 0, 1, 0, 0, 0, 3, 0, 0, 0, 0, 1, 0, 0],
  ];
  const counts = stocks.flat();
  const design = stocks.flatMap((stock, group) => stock.map(() => [1, Number(group === 1), Number(group === 2)]));

  it("[BE208] with a column per group the fit is the group means, whatever the aggregation", () => {
    const found = of(fitCountRegression({ counts, design }));
    const logMean = (stock: readonly number[]) => Math.log(stock.reduce((sum, each) => sum + each, 0) / stock.length);
    const [first, second, third] = stocks.map(logMean) as [number, number, number];
    for (const [i, wanted] of [first, second - first, third - first].entries()) {
      expect(found.coefficients[i]).toBeCloseTo(wanted, 9);
    }
    expect(rateRatios(found)[1]?.value).toBeCloseTo(Math.exp(second - first), 9);
    expect(rateRatios(found)[1]?.low).toBeCloseTo(Math.exp(second - first - 1.959964 * 0.4776353768), 6);
  });

  it("[BE208] one group alone gives the k of the simple fit", () => {
    const simple = of(of(fitCounts({ counts })).fit);
    const found = of(fitCountRegression({ counts, design: counts.map(() => [1]) }));
    expect(found.theta).toBeCloseTo(simple.k, 8);
    expect(found.logLikelihood).toBeCloseTo(simple.logLikelihood, 9);
    expect(found.standardErrors[0]).toBeCloseTo(simple.standardErrorOfMean / of(fitCounts({ counts })).mean, 8);
  });

  it("[BE208] bees that are alike may share a row", () => {
    const keys = [...new Set(counts.map((count, i) => `${count} ${design[i]?.join(" ")}`))];
    const rows = keys.map((key) => key.split(" ").map(Number));
    const together = {
      counts: rows.map(([count]) => count as number),
      design: rows.map(([, ...columns]) => columns),
      bees: keys.map((key) => counts.filter((count, i) => `${count} ${design[i]?.join(" ")}` === key).length),
    };
    expect(rows.length).toBeLessThan(counts.length / 2);
    const [found, apart] = [of(fitCountRegression(together)), of(fitCountRegression({ counts, design }))];
    expect(found.n).toBe(apart.n);
    expect(found.theta).toBeCloseTo(apart.theta, 9);
    expect(found.logLikelihood).toBeCloseTo(apart.logLikelihood, 9);
    expect(found.logLikelihoodPoisson).toBeCloseTo(apart.logLikelihoodPoisson, 9);
    for (const key of ["coefficients", "standardErrors"] as const) {
      for (const [i, each] of apart[key].entries()) expect(found[key][i]).toBeCloseTo(each, 9);
    }
  });

  it("[BE208] effort doubled everywhere halves the level and leaves the ratios", () => {
    const found = of(fitCountRegression({ counts, design }));
    const doubled = of(fitCountRegression({ counts, design, offset: counts.map(() => Math.log(2)) }));
    expect(doubled.coefficients[0]).toBeCloseTo((found.coefficients[0] as number) - Math.log(2), 9);
    expect(doubled.coefficients[1]).toBeCloseTo(found.coefficients[1] as number, 9);
    expect(doubled.theta).toBeCloseTo(found.theta, 8);
  });

  it("[BE208] a group without mites, repeated columns, even counts and no mites are refused, never NaN", () => {
    const clear = counts.map((count, i) => (design[i]?.[2] === 1 ? 0 : count));
    expect(codeOf(fitCountRegression({ counts: clear, design }))).toBe("group-without-mites");
    const repeated = design.map(([one = 0, two = 0]) => [one, two, one - two]);
    expect(codeOf(fitCountRegression({ counts, design: repeated }))).toBe("columns-repeat");
    const even = [1, 2, 1, 2, 3, 1];
    expect(codeOf(fitCountRegression({ counts: even, design: even.map(() => [1]) }))).toBe(
      "no-more-uneven-than-chance",
    );
    expect(codeOf(fitCountRegression({ counts: [0, 0], design: [[1], [1]] }))).toBe("no-mites-counted");
    expect(codeOf(fitCountRegression({ counts: [], design: [] }))).toBe("nothing-examined");
    expect(() => fitCountRegression({ counts: [1], design: [] })).toThrow("design must be");
  });

  it("[BE208] any counts in two groups are answered in numbers or refused", () => {
    const few = fc.array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 8 });
    fc.assert(
      fc.property(few, few, (one, other) => {
        const result = fitCountRegression({
          counts: [...one, ...other],
          design: [...one.map(() => [1, 0]), ...other.map(() => [1, 1])],
        });
        if (!result.ok) {
          expect(["group-without-mites", "no-more-uneven-than-chance", "no-mites-counted"]).toContain(codeOf(result));
          return;
        }
        const { coefficients, standardErrors, theta, logLikelihood, logLikelihoodPoisson } = result.value;
        for (const each of [...coefficients, ...standardErrors, theta]) expect(Number.isFinite(each)).toBe(true);
        expect(logLikelihood).toBeGreaterThanOrEqual(logLikelihoodPoisson - 1e-7);
      }),
      { seed: 1987, numRuns: 150 },
    );
  });

  it("[BE209] three stocks against one: twice the gain in likelihood on two degrees", () => {
    const found = of(fitCountRegression({ counts, design }));
    const alike = of(fitCountRegression({ counts, design: counts.map(() => [1]) }));
    const test = compareCountFits(found, alike);
    expect(test.df).toBe(2);
    expect(test.statistic).toBeCloseTo(2 * (found.logLikelihood - alike.logLikelihood), 12);
    expect(test.pValue).toBeCloseTo(Math.exp(-test.statistic / 2), 12); // chi-square of two degrees is exponential
    expect(() => compareCountFits(alike, found)).toThrow("larger must be");
  });
});

describe("bees that a law gives", () => {
  it("[BE210] add up to the bees counted, with the share without mites that mean and k give", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 20, noNaN: true }),
        fc.option(fc.double({ min: 0.05, max: 50, noNaN: true })),
        fc.integer({ min: 1, max: 30 }),
        (mean, k, last) => {
          const found = expectedCounts({ mean, k, bees: 150, last });
          expect(found).toHaveLength(last + 1);
          expect(found.reduce((sum, each) => sum + each, 0)).toBeCloseTo(150, 9);
          expect(found[0]).toBeCloseTo(150 * (1 - prevalenceOfAbundance({ mean, k }).prevalence), 9);
          for (const each of found) expect(each).toBeGreaterThanOrEqual(0);
        },
      ),
      { seed: 210, numRuns: 200 },
    );
  });

  it("[BE210] red mites on leaves: 69.5 and 37.6 for none and one, by the recursion p(x + 1) = p(x)·(k + x)/(x + 1)·m/(m + k)", () => {
    const [mean, k] = [172 / 150, 1.0245923868];
    const first = 150 * (1 + mean / k) ** -k;
    const found = expectedCounts({ mean, k, bees: 150, last: 8 });
    expect(found[0]).toBeCloseTo(first, 9);
    expect(found[1]).toBeCloseTo((first * k * mean) / (mean + k), 9);
    expect([found[0], found[1]].map((each) => Number(each?.toFixed(1)))).toEqual([69.5, 37.6]);
  });
});
