/** Student's t distribution. */
import { ensure } from "../units/index.ts";
import { betaQuantilePoint } from "./beta-quantile.ts";
import { saddleTerm } from "./deviance.ts";
import type { ContinuousDistribution } from "./distribution.ts";
import { lowerBetaTail } from "./incomplete-beta.ts";
import { stirlingError } from "./log-gamma.ts";

/**
 * Student's t with the given degrees of freedom, which need not be whole.
 *
 * @throws DomainError unless df is finite and above 0. The mean of df ≤ 1 and the variance of df ≤ 2 do not exist; they read Infinity.
 * @source Abramowitz & Stegun 26.7.1
 * @example
 * studentT({ df: 10 }).upperQuantile(0.025)  // → 2.22813885199
 */
export function studentT({ df }: { readonly df: number }): ContinuousDistribution {
  ensure(df > 0 && df < Infinity, "df", df, "a finite number above 0");
  /** P(T > t) for t ≥ 0, half a beta tail. */
  const beyond = (t: number): number => {
    ensure(!Number.isNaN(t), "x", t, "a number");
    if (t === Infinity) return 0;
    const share = (t / df) * t;
    const inverse = df / t / t;
    const x = share < 1 ? 1 / (1 + share) : inverse / (1 + inverse);
    const y = share < 1 ? share / (1 + share) : 1 / (1 + inverse);
    const point = { x, y, a: df / 2, b: 0.5 };
    return 0.5 * lowerBetaTail(point).value;
  };
  const sf = (t: number): number => (t >= 0 ? beyond(t) : 1 - beyond(-t));
  /** The t ≥ 0 with P(T > t) = p, for p ≤ ½. */
  const upperHalf = (p: number): number => {
    if (p === 0) return Infinity;
    const { x, y } = betaQuantilePoint({ p: 2 * p, a: df / 2, b: 0.5, tail: "lower" });
    return Math.sqrt((df * y) / x);
  };
  const upperQuantile = (p: number): number => {
    ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
    return p <= 0.5 ? upperHalf(p) : -upperHalf(1 - p);
  };
  const logPdf = (t: number): number => {
    ensure(!Number.isNaN(t), "x", t, "a number");
    return logTDensity(t, df);
  };
  return {
    kind: "continuous",
    support: { low: -Infinity, high: Infinity },
    mean: df > 1 ? 0 : Infinity,
    variance: df > 2 ? df / (df - 2) : Infinity,
    logPdf,
    pdf: (t) => Math.exp(logPdf(t)),
    cdf: (t) => sf(-t),
    sf,
    quantile: (p) => 0 - upperQuantile(p),
    upperQuantile,
  };
}

/** Loader's form: the ratio of gamma functions by Stirling errors, so that it holds for df far below 1 and far above 1e6. */
function logTDensity(t: number, df: number): number {
  const half = df / 2;
  const ratio =
    saddleTerm({ observed: half, expected: half + 0.5, excess: 0.5 }) + stirlingError(half + 0.5) - stirlingError(half);
  const square = (t / df) * t;
  const growth = square < 1e300 ? Math.log1p(square) : 2 * Math.log(Math.abs(t)) - Math.log(df);
  return ratio - 0.5 * Math.log(2 * Math.PI) - (half + 0.5) * growth;
}
