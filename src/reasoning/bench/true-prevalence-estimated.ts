/** Share truly infested when sensitivity and specificity themselves come from small trials. */
import { type Interval, normalUpperQuantile } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { benchProblem } from "./problems.ts";
import { type Corrected, cut, misfits } from "./true-prevalence.ts";

/** A share and the number it comes from. */
export interface ShareOf {
  /** Proportion 0–1. */
  readonly share: number;
  /** How many were looked at, a whole number ≥ 1. */
  readonly of: number;
}

/**
 * A share from its counts.
 *
 * @throws DomainError unless both are whole, `of` 1 or more and `found` from 0 to `of`
 * @example
 * shareOf(45, 50)  // → {"share":0.9,"of":50}
 */
export function shareOf(found: number, of: number): ShareOf {
  ensure(Number.isInteger(of) && of >= 1, "of", of, "a whole number ≥ 1");
  ensure(Number.isInteger(found) && found >= 0 && found <= of, "found", found, "a whole number from 0 to `of`");
  return { share: found / of, of };
}

export interface EstimatedErrors {
  /** Share positive in the sample. */
  readonly apparent: ShareOf;
  /** Share found among ones known to be infested. */
  readonly sensitivity: ShareOf;
  /** Share clear among ones known not to be. */
  readonly specificity: ShareOf;
  /** 0.95 when not given. */
  readonly level?: number;
}

export interface EstimatedPrevalence extends Corrected {
  readonly standardError: number;
  /** The limits as the formula gives them. */
  readonly rawLimits: Interval;
  /** The same cut to 0–1. */
  readonly limits: Interval;
  /** Middle of the raw limits. */
  readonly centre: number;
  readonly level: number;
}

/**
 * Rogan and Gladen's estimate with the errors of all three samples, by the delta method.
 *
 * Good for large samples away from 0 and 1; at the edges use `langReiczigelPrevalence`.
 *
 * @returns EstimatedPrevalence, with the warnings of `truePrevalence`; or `test-no-better-than-chance`
 * @throws DomainError for shares outside [0, 1], numbers that are not whole and ≥ 1, a level outside (0, 1)
 * @source Rogan & Gladen 1978; Greiner & Gardner 2000, Preventive Veterinary Medicine 45:3–22
 *
 * @example
 * deltaPrevalence({ apparent: { share: 0.2, of: 200 }, sensitivity: { share: 0.9, of: 50 }, specificity: { share: 0.97, of: 100 } }).value.standardError  // → 0.0373716068849
 */
export function deltaPrevalence(request: EstimatedErrors): Result<EstimatedPrevalence> {
  const { level, apparent, sensitivity, specificity } = checked(request);
  const youden = sensitivity.share + specificity.share - 1;
  if (youden <= 0) return noBetter(request);
  const raw = (apparent.share + specificity.share - 1) / youden;
  const standardError = Math.sqrt(deltaVariance(request, raw));
  return withLimits(request, { raw, centre: raw, standardError, level });
}

/**
 * Lang and Reiczigel's interval: adds z²/2 of each kind to the sample and one of each kind to the trials of the test,
 * and moves the centre by the bias that remains. Made for Se and Sp of 0.5 and more and levels of 90–99 %.
 *
 * Equation 4 of the paper is printed with (1 + P)² in the variance; it must be (1 − P)².
 *
 * @returns EstimatedPrevalence; `raw` is the plain estimate, `centre` the moved one; warnings as `truePrevalence`; or
 *   `test-no-better-than-chance`
 * @throws DomainError for shares outside [0, 1], numbers that are not whole and ≥ 1, a level outside (0, 1)
 * @source Lang & Reiczigel 2014, Preventive Veterinary Medicine 113:13–22
 *
 * @example
 * langReiczigelPrevalence({ apparent: { share: 0.06, of: 11862 }, sensitivity: { share: 0.8, of: 10 }, specificity: { share: 1, of: 12 } }).value.limits.high  // → 0.146668393424
 */
export function langReiczigelPrevalence(request: EstimatedErrors): Result<EstimatedPrevalence> {
  const { level, apparent, sensitivity, specificity } = checked(request);
  const youden = sensitivity.share + specificity.share - 1;
  const square = normalUpperQuantile((1 - level) / 2) ** 2;
  const added = (trial: ShareOf, extra: number): ShareOf => ({
    share: (trial.of * trial.share + extra / 2) / (trial.of + extra),
    of: trial.of + extra,
  });
  const moved = {
    apparent: added(apparent, square),
    sensitivity: added(sensitivity, 2),
    specificity: added(specificity, 2),
  };
  const movedYouden = moved.sensitivity.share + moved.specificity.share - 1;
  if (youden <= 0 || movedYouden <= 0) return noBetter(request);
  const prevalence = (moved.apparent.share + moved.specificity.share - 1) / movedYouden;
  const shift = 2 * square * (prevalence * scatter(moved.sensitivity) - (1 - prevalence) * scatter(moved.specificity));
  return withLimits(request, {
    raw: (apparent.share + specificity.share - 1) / youden,
    centre: prevalence + shift,
    standardError: Math.sqrt(deltaVariance(moved, prevalence)),
    level,
  });
}

/** Variance of a share. */
const scatter = ({ share, of }: ShareOf): number => (share * (1 - share)) / of;

function deltaVariance(
  { apparent, sensitivity, specificity }: Omit<EstimatedErrors, "level">,
  prevalence: number,
): number {
  const youden = sensitivity.share + specificity.share - 1;
  const fromTest = prevalence ** 2 * scatter(sensitivity) + (1 - prevalence) ** 2 * scatter(specificity);
  return (scatter(apparent) + fromTest) / youden ** 2;
}

function withLimits(
  { apparent, sensitivity, specificity }: EstimatedErrors,
  found: Pick<EstimatedPrevalence, "raw" | "centre" | "standardError" | "level">,
): Result<EstimatedPrevalence> {
  const { raw, centre, standardError, level } = found;
  const reach = normalUpperQuantile((1 - level) / 2) * standardError;
  const rawLimits = { low: centre - reach, high: centre + reach };
  const limits = { low: cut(rawLimits.low), high: cut(rawLimits.high) };
  const counts = {
    positive: Math.round(apparent.share * apparent.of),
    examined: apparent.of,
    sensitivity: sensitivity.share,
    specificity: specificity.share,
  };
  const answer = { raw, value: cut(raw), standardError, rawLimits, limits, centre, level };
  return answered(answer, misfits(counts, [limits]));
}

const noBetter = ({ sensitivity, specificity }: EstimatedErrors): Result<never> => {
  const slots = { sensitivity: sensitivity.share, specificity: specificity.share };
  return blocked(benchProblem("test-no-better-than-chance", "blocked", "sensitivity", slots));
};

function checked(request: EstimatedErrors): Required<EstimatedErrors> {
  const { apparent, sensitivity, specificity, level = 0.95 } = request;
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  for (const [name, { share, of }] of Object.entries({ apparent, sensitivity, specificity })) {
    ensure(share >= 0 && share <= 1, name, share, "in [0, 1]");
    ensure(Number.isInteger(of) && of >= 1, `${name}.of`, of, "a whole number ≥ 1");
  }
  return { apparent, sensitivity, specificity, level };
}
