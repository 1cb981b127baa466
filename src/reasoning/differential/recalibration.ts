/** How stated probabilities would have to be bent to fit: intercept and slope of the logit, by maximum likelihood. */
import { cholesky, root } from "../../numerics/index.ts";
import { answered, blocked, problem, type Result } from "../../units/index.ts";
import type { Case } from "./calibration.ts";

export interface Recalibration {
  /** Above 0: stated too low on the whole. */
  readonly intercept: number;
  /** Below 1: stated too boldly; above 1: too timidly. */
  readonly slope: number;
}

/** Rounding of one term of the log-likelihood: a step that loses less than this has lost nothing. */
const roundingSlack = 1e-14;
/** Newton's steps; where a maximum exists a dozen are enough. */
const mostSteps = 100;

/**
 * Intercept and slope of logit P(true) = a + b·logit(p), all p strictly between 0 and 1.
 *
 * There is a maximum only where the outcomes overlap: parted by p, wholly or but for a tie, the slope runs away.
 *
 * @returns Recalibration; or `outcomes-parted` (also when all came out alike), `stated-all-alike`, `recalibration-did-not-settle`
 * @source Cox 1958; conditions for a maximum: Albert & Anderson 1984
 */
export function recalibration(cases: readonly Case[]): Result<Recalibration> {
  const x = cases.map(({ p }) => logit(p));
  const among = (outcome: number) => x.filter((_, i) => cases[i]?.y === outcome);
  const [yes, no] = [rangeOf(among(1)), rangeOf(among(0))];
  if (!(yes.low < no.high && no.low < yes.high)) {
    const alike = new Set(x).size === 1;
    return blocked(problem(alike ? "stated-all-alike" : "outcomes-parted", "unknown", "stated"));
  }
  const logLikelihood = (a: number, b: number): number =>
    x.reduce((sum, each, i) => sum - Math.log1p(Math.exp((cases[i]?.y === 1 ? -1 : 1) * (a + b * each))), 0);
  let [intercept, slope] = [0, 0];
  for (let step = 0; step < mostSteps; step++) {
    let [a, b, aa, ab, bb] = [0, 0, 0, 0, 0];
    for (const [i, each] of x.entries()) {
      const fitted = logistic(intercept + slope * each);
      const gap = (cases[i]?.y as number) - fitted;
      const weight = fitted * (1 - fitted);
      a += gap;
      b += gap * each;
      aa += weight;
      ab += weight * each;
      bb += weight * each * each;
    }
    const information = cholesky([
      [aa, ab],
      [ab, bb],
    ]);
    if (!information.isPositiveDefinite) break;
    const [da = 0, db = 0] = information.solve([a, b]);
    if (Math.abs(da) + Math.abs(db) < 1e-12 * (1 + Math.abs(intercept) + Math.abs(slope))) {
      return answered({ intercept, slope });
    }
    // The likelihood has one top, but far from it Newton's step can overshoot: it is halved until it climbs.
    const enough = logLikelihood(intercept, slope) - roundingSlack * cases.length;
    let part = 1;
    while (part > 1e-9 && logLikelihood(intercept + part * da, slope + part * db) < enough) part /= 2;
    [intercept, slope] = [intercept + part * da, slope + part * db];
  }
  return blocked(problem("recalibration-did-not-settle", "unknown", "stated"));
}

/**
 * Shift of the logit that makes the mean stated probability equal the share that came true; the slope stays 1.
 *
 * Needs cases of both outcomes.
 *
 * @source Cox 1958
 */
export function recalibrationInTheLarge(cases: readonly Case[]): Result<number> {
  const x = cases.map(({ p }) => logit(p));
  const trues = cases.filter(({ y }) => y === 1).length;
  const gap = (shift: number) => x.reduce((sum, each) => sum + logistic(each + shift), 0) - trues;
  // At these ends every fitted probability lies beyond the share, below it and above it.
  const share = logit(trues / cases.length);
  const { low, high } = rangeOf(x);
  return answered(root({ f: gap, low: share - high - 1, high: share - low + 1 }));
}

const logit = (p: number): number => Math.log(p) - Math.log1p(-p);
const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
const rangeOf = (values: readonly number[]): { readonly low: number; readonly high: number } =>
  values.reduce(({ low, high }, each) => ({ low: Math.min(low, each), high: Math.max(high, each) }), {
    low: Number.POSITIVE_INFINITY,
    high: Number.NEGATIVE_INFINITY,
  });
