/** Relative risks of small areas drawn towards their common distribution: the Poisson–gamma model. */
import { logFactorial, root } from "../../numerics/index.ts";
import { answered, blocked, type Problem, type Result } from "../../units/index.ts";
import { areaTrouble } from "./marshall.ts";
import { surveillanceProblem } from "./problems.ts";

export interface ExpectedCount {
  /** Cases seen; whole, ≥ 0. */
  readonly cases: number;
  /** Cases expected if every area had the common rate, > 0. */
  readonly expected: number;
}

export interface GammaSmoothing {
  /** Shape ν and rate α of the gamma distribution of relative risks. */
  readonly shape: number;
  readonly rate: number;
  /** (cases + ν)/(expected + α) for each area. */
  readonly smoothed: readonly number[];
}

export interface ClaytonKaldor {
  readonly byLikelihood: GammaSmoothing & {
    readonly logLikelihood: number;
    /** Slope of the log-likelihood left, by ln ν. */
    readonly slopeLeft: number;
  };
  /** Or the problem, where the moments do not settle. */
  readonly byMoments: Result<GammaSmoothing>;
}

/**
 * Empirical Bayes relative risks under the Poisson–gamma model, fitted by marginal likelihood and by moments.
 *
 * Model: an area's relative risk is gamma distributed and its cases are Poisson given it; areas are independent, so
 * neighbours lend nothing to each other beyond the common distribution.
 *
 * @returns both fits, or `too-few-areas`, `area-without-population`, `nothing-counted`, `areas-no-more-than-chance`
 * @throws DomainError for cases that are not whole or ≥ 0
 * @source Clayton & Kaldor 1987, Biometrics 43:671–681
 *
 * @example
 * claytonKaldor([{ cases: 9, expected: 3 }, { cases: 1, expected: 4 }, { cases: 12, expected: 5 }, { cases: 2, expected: 6 }]).value.byLikelihood.smoothed[0] < 3  // → true
 */
export function claytonKaldor(areas: readonly ExpectedCount[]): Result<ClaytonKaldor> {
  const trouble = areaTrouble(areas.map(({ cases, expected }) => ({ cases, population: expected })));
  if (trouble) return blocked(trouble);
  const shape = likeliestShape(areas);
  if (shape === null) {
    return blocked(surveillanceProblem("areas-no-more-than-chance", "blocked", "areas", { areas: areas.length }));
  }
  const mean = likeliestMean(areas, shape);
  const rate = shape / mean;
  const byLikelihood = {
    ...smoothing(areas, shape, rate),
    logLikelihood: logLikelihood(areas, shape, mean),
    slopeLeft: Math.abs(shape * slopeByShape(areas, shape)),
  };
  return answered({ byLikelihood, byMoments: momentFit(areas) });
}

const smoothing = (areas: readonly ExpectedCount[], shape: number, rate: number): GammaSmoothing => ({
  shape,
  rate,
  smoothed: areas.map(({ cases, expected }) => (cases + shape) / (expected + rate)),
});

/** Negative binomial, means mean·expected and size `shape`; ln Γ(y + ν) − ln Γ(ν) as a sum of y logarithms. */
function logLikelihood(areas: readonly ExpectedCount[], shape: number, mean: number): number {
  return areas.reduce((sum, { cases, expected }) => {
    let total = -logFactorial(cases) + cases * Math.log(mean * expected);
    for (let j = 0; j < cases; j += 1) total += Math.log(shape + j);
    return sum + total - cases * Math.log(shape + mean * expected) - shape * Math.log1p((mean * expected) / shape);
  }, 0);
}

/** The mean relative risk that is likeliest at a shape: its slope falls all the way. */
function likeliestMean(areas: readonly ExpectedCount[], shape: number): number {
  const rates = areas.map(({ cases, expected }) => cases / expected);
  const [low, high] = [Math.min(...rates), Math.max(...rates)];
  if (low === high) return low;
  const slope = (mean: number) =>
    areas.reduce(
      (sum, { cases, expected }) => sum + (shape * (cases - mean * expected)) / (shape + mean * expected),
      0,
    );
  return root({ f: slope, low, high });
}

/** Slope of the log-likelihood by the shape, with the mean that goes with it. */
function slopeByShape(areas: readonly ExpectedCount[], shape: number): number {
  const mean = likeliestMean(areas, shape);
  return areas.reduce((sum, { cases, expected }) => {
    let total = 0;
    for (let j = 0; j < cases; j += 1) total += 1 / (shape + j);
    const expectedHere = mean * expected;
    return sum + total - Math.log1p(expectedHere / shape) + (expectedHere - cases) / (shape + expectedHere);
  }, 0);
}

/** The likeliest shape; null when it grows without end, the areas differing no more than chance. */
function likeliestShape(areas: readonly ExpectedCount[]): number | null {
  const slope = (log: number) => slopeByShape(areas, Math.exp(log));
  const [least, most, step] = [-8, 14, 0.5];
  let best: { readonly shape: number; readonly value: number } | null = null;
  let before = slope(least);
  for (let right = least + step; right <= most; right += step) {
    const after = slope(right);
    if (before > 0 && after <= 0) {
      const shape = Math.exp(root({ f: slope, low: right - step, high: right }));
      const value = logLikelihood(areas, shape, likeliestMean(areas, shape));
      if (!best || value > best.value) best = { shape, value };
    }
    before = after;
  }
  return best?.shape ?? null;
}

const mostRounds = 10_000;

/** Clayton and Kaldor's moment equations, solved by going round: mean ν/α and variance ν/α² of the relative risks. */
function momentFit(areas: readonly ExpectedCount[]): Result<GammaSmoothing> {
  let rate = 0;
  let shape = 0;
  let risks: readonly number[] = areas.map(({ cases, expected }) => cases / expected);
  for (let round = 0; round < mostRounds; round += 1) {
    const mean = risks.reduce((sum, each) => sum + each, 0) / areas.length;
    const squares = risks.reduce(
      (sum, each, i) => sum + (1 + rate / (areas[i] as ExpectedCount).expected) * (each - mean) ** 2,
      0,
    );
    const variance = squares / (areas.length - 1);
    if (!(variance > 0)) break;
    const [nextRate, nextShape] = [mean / variance, (mean * mean) / variance];
    const settled = Math.abs(nextRate - rate) + Math.abs(nextShape - shape) <= 1e-13 * (nextRate + nextShape);
    [rate, shape] = [nextRate, nextShape];
    risks = smoothing(areas, shape, rate).smoothed;
    if (settled) return answered(smoothing(areas, shape, rate));
  }
  return blocked(unsettled());
}

const unsettled = (): Problem => surveillanceProblem("fit-did-not-settle", "blocked", "areas", { rounds: mostRounds });
