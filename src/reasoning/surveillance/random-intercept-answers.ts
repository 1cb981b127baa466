/** What a fit with random intercepts says in shares, odds and tests. */
import { chiSquare } from "../../numerics/index.ts";
import { type Estimate, ensure } from "../../units/index.ts";
import type { RandomInterceptFit } from "./logistic-random-intercept.ts";

/**
 * An odds ratio from a coefficient on the logit scale, its limits end by end.
 *
 * @source definition
 *
 * @example
 * oddsRatio({ value: 0, low: -1, high: 1, level: 0.95, interval: "confidence", method: "wald", rule: "SV166", n: 9 }).high  // → 2.71828183
 */
export const oddsRatio = (coefficient: Estimate): Estimate => onScale(coefficient, Math.exp, "wald-log-odds");

/**
 * A share from an intercept on the logit scale: that of a typical group, whose own intercept is in the middle of all.
 *
 * Not the share over all groups, which lies nearer to one half when groups differ.
 *
 * @source definition
 *
 * @example
 * typicalShare({ value: 0, low: -1, high: 1, level: 0.95, interval: "confidence", method: "wald", rule: "SV166", n: 9 }).high  // → 0.731058579
 */
export const typicalShare = (intercept: Estimate): Estimate =>
  onScale(intercept, (logit) => 1 / (1 + Math.exp(-logit)), "wald-logit");

const onScale = (each: Estimate, scale: (value: number) => number, method: string): Estimate => ({
  ...each,
  value: scale(each.value),
  low: scale(each.low),
  high: scale(each.high),
  method,
  rule: "SV170",
});

export interface RandomInterceptTests {
  /** Of the covariates that only the larger fit has. */
  readonly covariates: { readonly statistic: number; readonly degrees: number; readonly pValue: number };
  /** That groups do not differ; half of chi-square's, as σ cannot be below 0. */
  readonly groups: { readonly statistic: number; readonly pValue: number };
}

/**
 * Likelihood-ratio tests of a fit against a part of it, and of its groups.
 *
 * @throws DomainError unless the larger fit has more coefficients and is no less likely
 * @source Wilks 1938; ½χ² for a parameter on its edge: Self & Liang 1987 (from memory)
 *
 * @example
 * randomInterceptTests({ coefficients: [1, 2], logLikelihood: -10, logLikelihoodPlain: -12 }, { coefficients: [1], logLikelihood: -12 }).covariates.pValue  // → 0.045500264
 */
export function randomInterceptTests(
  larger: Pick<RandomInterceptFit, "logLikelihood" | "logLikelihoodPlain"> & {
    readonly coefficients: readonly unknown[];
  },
  part: Pick<RandomInterceptFit, "logLikelihood"> & { readonly coefficients: readonly unknown[] },
): RandomInterceptTests {
  const degrees = larger.coefficients.length - part.coefficients.length;
  ensure(degrees > 0, "larger", degrees, "a fit with more coefficients");
  const gain = larger.logLikelihood - part.logLikelihood;
  ensure(gain > -1e-6, "larger", gain, "no less likely than its part");
  const statistic = Math.max(0, 2 * gain);
  const between = Math.max(0, 2 * (larger.logLikelihood - larger.logLikelihoodPlain));
  return {
    covariates: { statistic, degrees, pValue: chiSquare({ df: degrees }).sf(statistic) },
    // Half of the law lies at 0 itself: with no gain every sample has as much.
    groups: { statistic: between, pValue: between === 0 ? 1 : 0.5 * chiSquare({ df: 1 }).sf(between) },
  };
}
