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
  /** Mites, one whole number per bee. */
  readonly counts: readonly number[];
  /** One row per bee, as many numbers in each; the first is usually 1 for the level of the first group. */
  readonly design: readonly (readonly number[])[];
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
 * Coefficients by weighted least squares for every θ tried, θ where the slope of the likelihood is 0. Refused where
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
  const columns = design[0]?.length ?? 0;
  ensure(design.length === counts.length, "design", design.length, `${counts.length} rows, one per count`);
  ensure(offset.length === counts.length, "offset", offset.length, `${counts.length} numbers, one per count`);
  for (const each of counts) ensure(Number.isInteger(each) && each >= 0, "counts", each, "whole numbers ≥ 0");
  for (const row of design) {
    ensure(row.length === columns && row.every(Number.isFinite), "design", row, `${columns} finite numbers a row`);
  }
  if (counts.length === 0 || columns === 0) return blocked(benchProblem("nothing-examined", "blocked", "counts", {}));
  if (counts.every((each) => each === 0)) {
    return blocked(benchProblem("no-mites-counted", "blocked", "counts", { bees: counts.length }));
  }
  const model = { counts, design, offset };
  const poisson = leastSquares(model, Number.POSITIVE_INFINITY, null);
  if (!poisson.ok) return poisson;
  const random = poisson.value.rows;
  const excess = random.reduce((sum, { count, mean }) => sum + (count - mean) ** 2 - count, 0);
  if (excess <= 0) return even(random);

  let from = poisson.value.coefficients;
  let trouble: Problem | null = null;
  const slope = (logTheta: number): number => {
    const fit = leastSquares(model, Math.exp(logTheta), from);
    if (!fit.ok) {
      trouble = fit.problems[0] ?? null;
      return 0;
    }
    from = fit.value.coefficients;
    return slopeInK(fit.value.rows, Math.exp(logTheta));
  };
  // The slope is above 0 for small θ; with more spread than chance it is below 0 for a θ large enough.
  let high = 0;
  while (slope(high) > 0 && high < largestLogTheta) high += 1;
  let low = high - 1;
  while (slope(low) < 0 && low > -largestLogTheta) low -= 1;
  if (high >= largestLogTheta) return even(random);
  const theta = Math.exp(root({ f: slope, low, high, tolerance: 1e-12 }));
  const fit = leastSquares(model, theta, from);
  if (trouble) return blocked(trouble);
  if (!fit.ok) return fit;
  return answered({
    coefficients: fit.value.coefficients,
    standardErrors: fit.value.standardErrors,
    theta,
    logLikelihood: negativeBinomialLogLikelihood(fit.value.rows, theta),
    logLikelihoodPoisson: poissonLogLikelihood(random),
    n: counts.length,
  });
}

/** Beyond e^20 the law is Poisson to nine digits: no aggregation can be told from none. */
const largestLogTheta = 20;

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

/** Rounds of least squares; where a maximum exists a dozen are enough. */
const mostRounds = 100;
/** A log mean this far below the largest belongs to a group without mites that runs away. */
const runaway = 30;

/** Coefficients for one θ by repeated weighted least squares (Fisher scoring); without a start from the counts + ½. */
function leastSquares(model: Model, theta: number, start: readonly number[] | null): Result<Weighted> {
  const { counts, design, offset } = model;
  let coefficients = start;
  const linear = (row: readonly number[], i: number): number =>
    coefficients === null
      ? Math.log((counts[i] as number) + 0.5)
      : (offset[i] as number) + row.reduce((sum, x, j) => sum + x * ((coefficients as number[])[j] as number), 0);
  for (let round = 0; round < mostRounds; round++) {
    const logMeans = design.map(linear);
    const top = Math.max(...logMeans);
    if (logMeans.some((each, i) => counts[i] === 0 && each < top - runaway)) return withoutMites;
    const means = logMeans.map(Math.exp);
    const weights = means.map((mean) => mean / (1 + mean / theta));
    const working = logMeans.map(
      (each, i) => each - (offset[i] as number) + ((counts[i] as number) - (means[i] as number)) / (means[i] as number),
    );
    const factor = cholesky(crossProduct(design, weights));
    if (!factor.isPositiveDefinite) {
      return round === 0 ? blocked(benchProblem("columns-repeat", "blocked", "design", {})) : withoutMites;
    }
    const next = factor.solve(
      (design[0] as readonly number[]).map((_, j) =>
        design.reduce((sum, row, i) => sum + (row[j] as number) * (weights[i] as number) * (working[i] as number), 0),
      ),
    );
    const moved = coefficients === null ? 1 : Math.max(...next.map((x, j) => Math.abs(x - (coefficients?.[j] ?? 0))));
    coefficients = next;
    if (moved < 1e-11) {
      return answered({
        coefficients: next,
        standardErrors: factor.inverseDiagonal().map(Math.sqrt),
        rows: design.map((row, i) => ({ count: counts[i] as number, mean: Math.exp(linear(row, i)), bees: 1 })),
      });
    }
  }
  return blocked(benchProblem("fit-did-not-settle", "blocked", "counts", { rounds: mostRounds }));
}

const crossProduct = (design: Model["design"], weights: readonly number[]): readonly (readonly number[])[] =>
  (design[0] as readonly number[]).map((_, j) =>
    (design[0] as readonly number[]).map((_other, k) =>
      design.reduce((sum, row, i) => sum + (weights[i] as number) * (row[j] as number) * (row[k] as number), 0),
    ),
  );

function even(rows: readonly CountsOfMean[]): Result<never> {
  const over = (term: (row: CountsOfMean) => number) => rows.reduce((sum, row) => sum + term(row), 0) / rows.length;
  const mean = over(({ mean: each }) => each);
  const variance = over(({ count, mean: each }) => (count - each) ** 2);
  return blocked(benchProblem("no-more-uneven-than-chance", "blocked", "counts", { mean, variance }));
}
