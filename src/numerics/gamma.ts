/** The gamma distribution, and chi-square as its special case. */
import { ensure } from "../units/index.ts";
import type { ContinuousDistribution } from "./distribution.ts";
import { gammaQuantile, gammaUpperQuantile } from "./gamma-quantile.ts";
import { logGammaFront, regularizedGammaP, regularizedGammaQ } from "./incomplete-gamma.ts";

export interface GammaShape {
  readonly shape: number;
  /** One over the scale. */
  readonly rate: number;
}

/**
 * The gamma distribution with the given shape and rate; its mean is shape/rate.
 *
 * @throws DomainError unless both are finite and above 0
 * @source Abramowitz & Stegun 6.5, 26.4
 * @example
 * gamma({ shape: 1, rate: 2 }).sf(1)  // → 0.135335283237
 */
export function gamma({ shape, rate }: GammaShape): ContinuousDistribution {
  ensure(shape > 0 && shape < Infinity, "shape", shape, "a finite number above 0");
  ensure(rate > 0 && rate < Infinity, "rate", rate, "a finite number above 0");
  const logPdf = (x: number): number => {
    ensure(!Number.isNaN(x), "x", x, "a number");
    if (x < 0 || x === Infinity) return -Infinity;
    if (x > 0) return logGammaFront(shape, x * rate) - Math.log(x);
    if (shape === 1) return Math.log(rate);
    return shape < 1 ? Infinity : -Infinity;
  };
  return {
    kind: "continuous",
    support: { low: 0, high: Infinity },
    mean: shape / rate,
    variance: shape / rate / rate,
    logPdf,
    pdf: (x) => Math.exp(logPdf(x)),
    cdf: (x) => (x <= 0 ? 0 : regularizedGammaP(shape, x * rate)),
    sf: (x) => (x <= 0 ? 1 : regularizedGammaQ(shape, x * rate)),
    quantile: (p) => gammaQuantile({ p, a: shape }) / rate,
    upperQuantile: (p) => gammaUpperQuantile({ p, a: shape }) / rate,
  };
}

/**
 * The chi-square distribution with the given degrees of freedom, which need not be whole.
 *
 * @throws DomainError unless df is finite and above 0
 * @source Abramowitz & Stegun 26.4.19
 * @example
 * chiSquare({ df: 1 }).upperQuantile(0.05)  // → 3.841458820694
 */
export function chiSquare({ df }: { readonly df: number }): ContinuousDistribution {
  ensure(df > 0 && df < Infinity, "df", df, "a finite number above 0");
  return gamma({ shape: df / 2, rate: 0.5 });
}
