/** Mites per bee compared between stocks or yards: negative binomial regression with a logarithmic link. */
import { chiSquare, cholesky, normalUpperQuantile, root } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import {
  type CountsOfMean,
  negativeBinomialLogLikelihood,
  poissonLogLikelihood,
  slopeInK,
} from "./negative-binomial.ts";
import { benchProblem } from "./problems.ts";

export interface CountDesign {
  /** Mites in a bee, whole numbers ≥ 0: one a row. */
  readonly counts: readonly number[];
  /** As many rows, as many numbers in each; the first is usually 1 for the level of the first group. */
  readonly design: readonly (readonly number[])[];
  /** Bees that each row stands for, whole numbers ≥ 1; 1 when not given. */
  readonly bees?: readonly number[];
  /** Logarithm of the effort behind each count; 0 when not given. */
  readonly offset?: readonly number[];
}

export interface CountFit {
  /** Logarithms of rate ratios, one per column of the design; the first usually the log mean of the first group. */
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  /** Aggregation θ: variance m + m²/θ. */
  readonly theta: number;
  readonly logLikelihood: number;
  /** Of the same design without aggregation. */
  readonly logLikelihoodPoisson: number;
  /** Bees. */
  readonly n: number;
}

/**
 * Coefficients and aggregation by maximum likelihood, jointly.
 *
 * Coefficients by Newton's steps for every θ tried, θ where the slope of the likelihood is 0. Refused where
 * there is no maximum: a group without a single mite (its log mean runs away), columns that repeat each other, counts
 * no more uneven than chance. Standard errors from the expected information; they take θ as known, as is usual.
 *
 * @returns CountFit; or `nothing-examined`, `columns-repeat`, `group-without-mites`, `no-more-uneven-than-chance`,
 *   `fit-did-not-settle`
 * @throws DomainError for counts that are not whole or rows of unequal length
 * @source Lawless 1987, Canadian Journal of Statistics 15:209; NB2 form of R's MASS glm.nb
 *
 * @example
 * fitCountRegression({ counts: [0, 0, 3, 1, 0, 9, 2, 14], design: [[1, 0], [1, 0], [1, 0], [1, 0], [1, 1], [1, 1], [1, 1], [1, 1]] }).value.coefficients[1]  // → 1.8325814637
 */
export function fitCountRegression(data: CountDesign): Result<CountFit> {
  const { counts, design } = data;
  const offset = data.offset ?? counts.map(() => 0);
  const bees = data.bees ?? counts.map(() => 1);
  const columns = design[0]?.length ?? 0;
  ensure(design.length === counts.length, "design", design.length, `${counts.length} rows, one per count`);
  ensure(offset.length === counts.length, "offset", offset.length, `${counts.length} numbers, one per count`);
  ensure(bees.length === counts.length, "bees", bees.length, `${counts.length} numbers, one per count`);
  for (const each of counts) ensure(Number.isInteger(each) && each >= 0, "counts", each, "whole numbers ≥ 0");
  for (const each of bees) ensure(Number.isInteger(each) && each >= 1, "bees", each, "whole numbers ≥ 1");
  for (const row of design) {
    ensure(row.length === columns && row.every(Number.isFinite), "design", row, `${columns} finite numbers a row`);
  }
  const n = bees.reduce((sum, each) => sum + each, 0);
  if (counts.length === 0 || columns === 0) return blocked(benchProblem("nothing-examined", "blocked", "counts", {}));
  if (counts.every((each) => each === 0)) {
    return blocked(benchProblem("no-mites-counted", "blocked", "counts", { bees: n }));
  }
  const model = { counts, design, offset, bees };
  const poisson = likeliest(model, Number.POSITIVE_INFINITY, null);
  if (!poisson.ok) return poisson;
  const random = poisson.value.rows;
  let from = poisson.value.coefficients;
  let trouble: Problem | null = null;
  const slope = (logTheta: number): number => {
    const fit = likeliest(model, Math.exp(logTheta), from);
    if (!fit.ok) {
      trouble = fit.problems[0] ?? null;
      return 0;
    }
    from = fit.value.coefficients;
    return slopeInK(fit.value.rows, Math.exp(logTheta));
  };
  // The slope is above 0 for small θ. With one group more even than chance and another far from it, the likelihood can
  // have its top here and rise again towards no aggregation: so no look at the spread of all counts decides.
  let high = 0;
  while (slope(high) > 0 && high < largestLogTheta) high += 1;
  let low = high - 1;
  while (slope(low) < 0 && low > -largestLogTheta) low -= 1;
  if (high >= largestLogTheta) return even(random);
  const theta = Math.exp(root({ f: slope, low, high, tolerance: 1e-12 }));
  const fit = likeliest(model, theta, from);
  if (trouble) return blocked(trouble);
  if (!fit.ok) return fit;
  const logLikelihood = negativeBinomialLogLikelihood(fit.value.rows, theta);
  const logLikelihoodPoisson = poissonLogLikelihood(random);
  if (logLikelihood - logLikelihoodPoisson < leastGain) return even(random);
  const { coefficients, standardErrors } = fit.value;
  return answered({ coefficients, standardErrors, theta, logLikelihood, logLikelihoodPoisson, n });
}

/** Beyond e^20 the law is Poisson to nine digits: no aggregation can be told from none. */
const largestLogTheta = 20;
/** A likelihood no higher than without aggregation, but for rounding. */
const leastGain = 1e-9;

/**
 * Rate ratios with limits: how many times as many mites per unit step of each column, the others held.
 *
 * @returns one Estimate per coefficient, ratios above 0; the first is usually the mean of the first group
 * @throws DomainError for a level outside (0, 1)
 * @source Wald limits on the logarithm
 *
 * @example
 * rateRatios({ coefficients: [0], standardErrors: [1], theta: 1, logLikelihood: -1, logLikelihoodPoisson: -2, n: 9 })[0].high  // → 7.0990713842
 */
export function rateRatios(fit: CountFit, level = 0.95): readonly Estimate[] {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const z = normalUpperQuantile((1 - level) / 2);
  return fit.coefficients.map((coefficient, i) => {
    const width = z * (fit.standardErrors[i] as number);
    const [value, low, high] = [0, -width, width].map((each) => Math.exp(coefficient + each)) as [
      number,
      number,
      number,
    ];
    return { value, low, high, level, interval: "confidence", method: "nb2-wald-log", rule: "BE208", n: fit.n };
  });
}

/**
 * Likelihood-ratio test of a design against a part of it, both fitted to the same counts.
 *
 * @returns twice the gain in log-likelihood, degrees of freedom, chance of as much if the part were enough
 * @throws DomainError unless the larger fit has more coefficients, the same bees and no smaller likelihood
 * @source Wilks 1938
 *
 * @example
 * compareCountFits({ coefficients: [0, 1], standardErrors: [1, 1], theta: 1, logLikelihood: -10, logLikelihoodPoisson: -20, n: 9 }, { coefficients: [0], standardErrors: [1], theta: 1, logLikelihood: -12, logLikelihoodPoisson: -20, n: 9 }).pValue  // → 0.045500263896
 */
export function compareCountFits(
  larger: CountFit,
  part: CountFit,
): { readonly statistic: number; readonly df: number; readonly pValue: number } {
  const df = larger.coefficients.length - part.coefficients.length;
  ensure(df > 0 && larger.n === part.n, "larger", df, "a fit to the same bees with more coefficients");
  const gain = larger.logLikelihood - part.logLikelihood;
  ensure(gain > -1e-6 && gain < Infinity, "larger", gain, "no less likely than its part");
  const statistic = 2 * gain;
  return { statistic, df, pValue: chiSquare({ df }).sf(Math.max(0, statistic)) };
}

type Model = Required<CountDesign>;

interface Weighted {
  readonly coefficients: readonly number[];
  readonly standardErrors: readonly number[];
  readonly rows: readonly CountsOfMean[];
}

const withoutMites = blocked(benchProblem("group-without-mites", "blocked", "design", {}));

/** Newton's rounds; where a maximum exists a dozen are enough. */
const mostRounds = 100;
/** A log mean this far below the largest belongs to a group without mites that runs away. */
const runaway = 30;

/** The likeliest coefficients for one θ: the likelihood is concave in them, so Newton's steps, held back, find its top. */
function likeliest(model: Model, theta: number, start: readonly number[] | null): Result<Weighted> {
  const { counts, design, bees } = model;
  let at = start ?? roughCoefficients(model, theta);
  if (at === null) return blocked(benchProblem("columns-repeat", "blocked", "design", {}));
  for (let round = 0; round < mostRounds; round++) {
    const logMeans = logMeansAt(model, at);
    const top = Math.max(...logMeans);
    if (logMeans.some((each, i) => counts[i] === 0 && each < top - runaway)) return withoutMites;
    const rows = logMeans.map((each, i) => ({
      count: counts[i] as number,
      mean: Math.exp(each),
      bees: bees[i] as number,
    }));
    const slopes = rows.map((row) => (row.bees * (row.count - row.mean)) / (1 + row.mean / theta));
    const bends = rows.map((row) => (row.bees * row.mean * (1 + row.count / theta)) / (1 + row.mean / theta) ** 2);
    const observed = cholesky(crossProduct(design, bends));
    if (!observed.isPositiveDefinite) return withoutMites;
    const step = observed.solve(columnSums(design, slopes));
    if (Math.max(...step.map(Math.abs)) < 1e-11 * (1 + Math.max(...at.map(Math.abs)))) {
      const expected = cholesky(crossProduct(design, expectedWeights(rows, theta)));
      if (!expected.isPositiveDefinite) return withoutMites;
      return answered({ coefficients: at, standardErrors: expected.inverseDiagonal().map(Math.sqrt), rows });
    }
    at = climbed(model, theta, { from: at, step });
  }
  return blocked(benchProblem("fit-did-not-settle", "blocked", "counts", { rounds: mostRounds }));
}

/** Where to begin: least squares on the logarithms of the counts + ½; null where columns repeat each other. */
function roughCoefficients({ counts, design, offset, bees }: Model, theta: number): readonly number[] | null {
  const rows = counts.map((count, i) => ({ mean: count + 0.5, bees: bees[i] as number }));
  const weights = expectedWeights(rows, theta);
  const factor = cholesky(crossProduct(design, weights));
  if (!factor.isPositiveDefinite) return null;
  const working = counts.map(
    (count, i) => (weights[i] as number) * (Math.log(count + 0.5) - (offset[i] as number) - 0.5 / (count + 0.5)),
  );
  return factor.solve(columnSums(design, working));
}

const expectedWeights = (rows: readonly Pick<CountsOfMean, "mean" | "bees">[], theta: number): readonly number[] =>
  rows.map(({ mean, bees }) => (bees * mean) / (1 + mean / theta));

const logMeansAt = ({ design, offset }: Model, at: readonly number[]): readonly number[] =>
  design.map((row, i) => row.reduce((sum, x, j) => sum + x * (at[j] as number), offset[i] as number));

/** A loss of this share of the log-likelihood is rounding. */
const roundingShare = 1e-12;

/** A step, halved until it loses no likelihood. */
function climbed(
  model: Model,
  theta: number,
  { from, step }: { readonly from: readonly number[]; readonly step: readonly number[] },
): readonly number[] {
  const logLikelihood = (at: readonly number[]): number =>
    logMeansAt(model, at).reduce((sum, logMean, i) => {
      const [count, mean] = [model.counts[i] as number, Math.exp(logMean)];
      const unmet = theta === Infinity ? mean : (count + theta) * Math.log1p(mean / theta);
      return sum + (model.bees[i] as number) * (count * logMean - unmet);
    }, 0);
  const start = logLikelihood(from);
  const moved = (share: number) => from.map((each, j) => each + share * (step[j] as number));
  let share = 1;
  while (share > 1e-15 && !(logLikelihood(moved(share)) >= start - roundingShare * Math.abs(start))) share /= 2;
  return moved(share);
}

const columnSums = (design: Model["design"], values: readonly number[]): readonly number[] =>
  (design[0] as readonly number[]).map((_, j) =>
    design.reduce((sum, row, i) => sum + (row[j] as number) * (values[i] as number), 0),
  );

const crossProduct = (design: Model["design"], weights: readonly number[]): readonly (readonly number[])[] =>
  (design[0] as readonly number[]).map((_, j) =>
    (design[0] as readonly number[]).map((_other, k) =>
      design.reduce((sum, row, i) => sum + (weights[i] as number) * (row[j] as number) * (row[k] as number), 0),
    ),
  );

function even(rows: readonly CountsOfMean[]): Result<never> {
  const bees = rows.reduce((sum, row) => sum + row.bees, 0);
  const over = (term: (row: CountsOfMean) => number) => rows.reduce((sum, row) => sum + row.bees * term(row), 0) / bees;
  const mean = over(({ mean: each }) => each);
  const variance = over(({ count, mean: each }) => (count - each) ** 2);
  return blocked(benchProblem("no-more-uneven-than-chance", "blocked", "counts", { mean, variance }));
}
