/** Shares that differ between colonies: fits against their own slopes, closed formulas, mirrors, and what is refused. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaBinomial, binomial, likelihoodRatioInterval } from "../../numerics/index.ts";
import {
  betaBinomialFit,
  betaBinomialLikelihood,
  type ClusterPrevalence,
  type ColonyCount,
  clusterPrevalence,
  intraclassCorrelation,
  readColonies,
} from "./index.ts";

const counts = (...pairs: readonly (readonly [number, number])[]): readonly ColonyCount[] =>
  pairs.map(([positive, examined]) => ({ positive, examined }));

const spread = counts([1, 20], [9, 20], [4, 25], [0, 18], [12, 30], [2, 22]);

const anyColonies = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 0, max: 100 })), {
    minLength: 3,
    maxLength: 12,
  })
  .map((list) => list.map(([examined, share]) => ({ positive: Math.round((share / 100) * examined), examined })));

const mirrored = (colonies: readonly ColonyCount[]) =>
  colonies.map(({ positive, examined }) => ({ positive: examined - positive, examined }));

function estimated(colonies: readonly ColonyCount[], level = 0.95): Extract<ClusterPrevalence, { kind: "estimated" }> {
  const found = clusterPrevalence(colonies, { level });
  if (!found.ok || found.value.kind !== "estimated") throw new Error("no estimate");
  return found.value;
}

const code = (result: { readonly problems: readonly { readonly code: string }[] }) => result.problems[0]?.code;

describe("what is refused", () => {
  it("[BE150] fewer than two colonies with bees read, whatever is asked", () => {
    for (const ask of [betaBinomialFit, intraclassCorrelation, clusterPrevalence, readColonies]) {
      expect(code(ask(counts([3, 20], [0, 0])))).toBe("too-few-colonies");
      expect(code(ask(counts([3, 20], [21, 20])))).toBe("positives-exceed-examined");
      expect(() => ask(counts([1.5, 20], [3, 20]))).toThrow("colonies[0].positive must be");
    }
  });

  it("[BE150] none, all, no more than chance, all or none, one bee a colony, all alike", () => {
    expect(code(betaBinomialFit(counts([0, 20], [0, 30])))).toBe("all-colonies-clear");
    expect(code(betaBinomialFit(counts([20, 20], [30, 30])))).toBe("all-colonies-full");
    expect(code(betaBinomialFit(counts([0, 20], [20, 20], [0, 20])))).toBe("colonies-all-or-none");
    expect(code(intraclassCorrelation(counts([0, 20], [0, 30])))).toBe("all-colonies-clear");
    expect(code(intraclassCorrelation(counts([9, 9], [3, 3])))).toBe("all-colonies-full");
    expect(code(intraclassCorrelation(counts([0, 1], [1, 1])))).toBe("one-bee-a-colony");
    expect(code(clusterPrevalence(counts([2, 20], [3, 30], [1, 10])))).toBe("colonies-all-alike");
    expect(() => clusterPrevalence(spread, { level: 1 })).toThrow("level must be");
  });
});

describe("beta-binomial fit", () => {
  it("[BE152] the likelihood is that of the distribution, and its slopes are those of differences", () => {
    const likelihood = betaBinomialLikelihood(spread);
    for (const [mean, phi] of [
      [0.2, 0.1],
      [0.31, 0.02],
      [0.6, 1.7],
    ] as const) {
      const at = likelihood(mean, phi);
      const logs = spread.map(({ positive, examined }) =>
        betaBinomial({ n: examined, a: mean / phi, b: (1 - mean) / phi }).logPmf(positive),
      );
      expect(at.value).toBeCloseTo(
        logs.reduce((sum, each) => sum + each, 0),
        10,
      );
      expect(likelihood.byMean(mean, phi)).toBeCloseTo(at.byMean, 10);
      expect(likelihood.bySpread(mean, phi)).toBeCloseTo(at.bySpread, 10);
      const h = 1e-4;
      const value = (a: number, b: number) => likelihood(mean + a * h, phi + b * h).value;
      // Differences of step 1e-4 are right to about 1e-6 of the slopes and 1e-5 of the curvature here.
      expect((value(1, 0) - value(-1, 0)) / (2 * h) / at.byMean).toBeCloseTo(1, 4);
      expect((value(0, 1) - value(0, -1)) / (2 * h) / at.bySpread).toBeCloseTo(1, 3);
      expect((value(1, 0) - 2 * at.value + value(-1, 0)) / h ** 2 / at.byMeanTwice).toBeCloseTo(1, 3);
      expect((value(0, 1) - 2 * at.value + value(0, -1)) / h ** 2 / at.bySpreadTwice).toBeCloseTo(1, 2);
      const cross = (value(1, 1) - value(1, -1) - value(-1, 1) + value(-1, -1)) / (4 * h * h);
      expect(cross / at.byBoth).toBeCloseTo(1, 2);
    }
    expect(likelihood(0.2, 0).value).toBeCloseTo(likelihood(0.2, 1e-9).value, 5);
  });

  it("[BE151] no nearby mean and spread are likelier; limits hold the mean; the mirror mirrors", () => {
    let fitted = 0;
    fc.assert(
      fc.property(anyColonies, (colonies) => {
        const fit = betaBinomialFit(colonies);
        if (!fit.ok) {
          expect(code(fit)).toMatch(/^colonies-all-or-none$|^all-colonies|^one-bee-a-colony$/);
          return;
        }
        if (fit.value.kind === "no-spread") {
          expect(code(fit)).toBe("colonies-no-more-than-chance");
          return;
        }
        fitted += 1;
        const { mean, intraclass, logLikelihood, slopeLeft, meanByLogit } = fit.value;
        const likelihood = betaBinomialLikelihood(colonies);
        const phi = intraclass / (1 - intraclass);
        expect(slopeLeft).toBeLessThan(1e-6);
        for (const [a, b] of [
          [1.01, 1],
          [0.99, 1],
          [1, 1.01],
          [1, 0.99],
          [1, 10],
          [1, 0.1],
        ] as const) {
          const other = Math.min(0.999999, mean.value * a);
          expect(likelihood(other, phi * b).value).toBeLessThanOrEqual(logLikelihood + 1e-9);
        }
        for (const { low, high, value } of [mean, meanByLogit]) {
          expect(low).toBeLessThan(value);
          expect(high).toBeGreaterThan(value);
        }
        const mirror = betaBinomialFit(mirrored(colonies));
        if (!mirror.ok) throw new Error("the mirror was refused");
        expect(mirror.value.mean.value).toBeCloseTo(1 - mean.value, 6);
        expect(mirror.value.mean.low).toBeCloseTo(1 - mean.high, 6);
        expect(mirror.value.intraclass).toBeCloseTo(intraclass, 6);
      }),
      { seed: 1978, numRuns: 40 },
    );
    expect(fitted).toBeGreaterThan(20);
  });

  it("[BE153] a thousand colonies of 20 to 60 bees take well under a second", () => {
    const many = Array.from({ length: 1000 }, (_, i) => {
      const examined = 20 + ((i * 7) % 41);
      return { positive: Math.floor(examined * (((i * 37) % 100) / 250)), examined };
    });
    const start = performance.now();
    expect(betaBinomialFit(many).ok).toBe(true);
    expect(performance.now() - start).toBeLessThan(900);
  });
});

describe("no spread beyond chance", () => {
  const fitOf = (colonies: readonly ColonyCount[]) => {
    const fit = betaBinomialFit(colonies);
    if (!fit.ok || fit.value.kind !== "no-spread") throw new Error("not at the edge");
    return { ...fit.value, problems: fit.problems };
  };

  it("[BE158] 5, 5 and 4 of 20: the binomial of 14 of 60, named by a warning, and no spread is likelier", () => {
    const colonies = counts([5, 20], [5, 20], [4, 20]);
    const fit = fitOf(colonies);
    expect(fit.problems).toMatchObject([
      { code: "colonies-no-more-than-chance", severity: "warned", slots: { colonies: 3, examined: 60 } },
    ]);
    expect(fit).toMatchObject({ intraclass: 0, likelihoodRatio: 0, pValue: 1 });
    const { low, high } = likelihoodRatioInterval({ x: 14, n: 60, level: 0.95 });
    expect(fit.mean).toMatchObject({ value: 14 / 60, low, high, n: 60, method: "binomial-likelihood-ratio" });
    // The binomial chances themselves, colony by colony.
    const logs = colonies.map(({ positive }) => binomial({ n: 20, p: 14 / 60 }).logPmf(positive));
    expect(fit.logLikelihood).toBeCloseTo(
      logs.reduce((sum, each) => sum + each, 0),
      11,
    );
    expect(fit.seLogitMean).toBeCloseTo(1 / Math.sqrt(60 * (14 / 60) * (46 / 60)), 12);
    const likelihood = betaBinomialLikelihood(colonies);
    for (const spread of [1e-4, 0.01, 0.1, 1]) {
      for (const mean of [0.2, 14 / 60, 0.27]) expect(likelihood(mean, spread).value).toBeLessThan(fit.logLikelihood);
    }
  });

  it("[BE158] it joins what lies just beyond: a spread hardly above 0 gives nearly the same mean and chance", () => {
    const edge = fitOf(counts([50, 200], [58, 200], [43, 200], [56, 200]));
    const beyond = betaBinomialFit(counts([50, 200], [58, 200], [42, 200], [57, 200]));
    if (!beyond.ok || beyond.value.kind !== "spread") throw new Error("no spread");
    expect(beyond.problems).toEqual([]);
    expect(beyond.value.intraclass).toBeGreaterThan(0);
    expect(beyond.value.intraclass).toBeLessThan(0.005);
    expect(beyond.value.mean.value).toBeCloseTo(edge.mean.value, 3);
    expect(beyond.value.seLogitMean / edge.seLogitMean).toBeGreaterThan(1);
    expect(beyond.value.seLogitMean / edge.seLogitMean).toBeLessThan(1.2);
  });

  it("[BE158] one bee a colony says nothing of a spread and is refused", () => {
    expect(code(betaBinomialFit(counts([0, 1], [1, 1], [1, 1], [0, 1])))).toBe("one-bee-a-colony");
  });
});

describe("closed formulas", () => {
  it("[BE154] equal samples: Pearson's chi-square and the two correlations by hand", () => {
    const found = intraclassCorrelation(counts([2, 10], [8, 10]));
    if (!found.ok) throw new Error("refused");
    // p ½, between 2·10·0.3² = 1.8, within 2·10·0.16 = 3.2 on 18, n0 10.
    expect(found.value).toMatchObject({ share: 0.5, degrees: 1, typicalBees: 10 });
    expect(found.value.meanSquareBetween).toBeCloseTo(1.8, 12);
    expect(found.value.pearsonChiSquare).toBeCloseTo(7.2, 12);
    const within = 3.2 / 18;
    expect(found.value.byVariance).toBeCloseTo((1.8 - within) / (1.8 + 9 * within), 12);
    expect(found.value.byFleissCuzick).toBeCloseTo(1 - 3.2 / (18 * 0.25), 12);
    expect(found.value.designEffect).toBeCloseTo(found.value.designEffectWeighted, 12);
  });

  it("[BE154] colonies that differ less than chance have a correlation below 0, as it comes", () => {
    const found = intraclassCorrelation(counts([5, 20], [5, 20], [4, 20]));
    if (!found.ok) throw new Error("refused");
    expect(found.value.byVariance).toBeLessThan(0);
    expect(found.value.designEffect).toBeLessThan(1);
  });

  it("[BE155] the mean bee and the mean colony differ when the samples do; the effective bees stay below all", () => {
    const found = estimated(counts([1, 10], [50, 100]));
    expect(found.byShare.value).toBeCloseTo(51 / 110, 12);
    expect(found.meanColony.value).toBeCloseTo(0.3, 12);
    expect(found.kornGraubardBees).toBeLessThanOrEqual(110);
    // Two colonies have one degree of freedom: t is 12.7 and the limits on the share leave 0 to 1, as they come.
    expect(found.byShare.low).toBeLessThan(0);
    expect(found.byLogit.low).toBeGreaterThan(0);
  });

  it("[BE156] limits widen with the level and mirror with the counts", () => {
    const names = ["byShare", "byLogit", "byWilson", "byKornGraubard", "meanColony"] as const;
    const [narrow, wide, mirror] = [estimated(spread, 0.8), estimated(spread, 0.99), estimated(mirrored(spread), 0.8)];
    for (const name of names) {
      expect(wide[name].low).toBeLessThan(narrow[name].low);
      expect(wide[name].high).toBeGreaterThan(narrow[name].high);
      expect(mirror[name].low).toBeCloseTo(1 - narrow[name].high, 10);
      expect(mirror[name].value).toBeCloseTo(1 - narrow[name].value, 12);
    }
  });

  it("[BE157] none found in 4 colonies of 25: the limits of 0 of 4 and of 0 of 100", () => {
    const none = clusterPrevalence(counts([0, 25], [0, 25], [0, 25], [0, 25]));
    if (!none.ok || none.value.kind !== "none-positive") throw new Error("not exact");
    expect(none.value.colonies).toMatchObject({ value: 0, low: 0, n: 4 });
    expect(none.value.colonies.high).toBeCloseTo(1 - 0.025 ** (1 / 4), 12);
    expect(none.value.bees.high).toBeCloseTo(1 - 0.025 ** (1 / 100), 12);
    const all = clusterPrevalence(counts([25, 25], [25, 25]));
    if (!all.ok || all.value.kind !== "all-positive") throw new Error("not exact");
    expect(all.value.bees).toMatchObject({ value: 1, high: 1, n: 50 });
  });
});
