/** The normal distribution with any mean and spread. */
import { ensure } from "../units/index.ts";
import type { ContinuousDistribution } from "./distribution.ts";
import { normalCdf, normalQuantile, normalSf, normalUpperQuantile } from "./normal.ts";

export interface NormalShape {
  readonly mean: number;
  /** Standard deviation. */
  readonly sd: number;
}

/**
 * The normal distribution with the given mean and standard deviation.
 *
 * @throws DomainError unless mean is finite, and sd finite and above 0
 * @source Cody 1969 for the tails; Wichura 1988 (AS 241) for the quantiles
 * @example
 * normal({ mean: 10, sd: 2 }).quantile(0.975)  // → 13.9199279691
 */
export function normal({ mean, sd }: NormalShape): ContinuousDistribution {
  ensure(Number.isFinite(mean), "mean", mean, "a finite number");
  ensure(sd > 0 && sd < Infinity, "sd", sd, "a finite number above 0");
  const z = (x: number) => {
    ensure(!Number.isNaN(x), "x", x, "a number");
    return (x - mean) / sd;
  };
  const logPdf = (x: number) => -0.5 * z(x) ** 2 - Math.log(sd) - 0.5 * Math.log(2 * Math.PI);
  return {
    kind: "continuous",
    support: { low: -Infinity, high: Infinity },
    mean,
    variance: sd * sd,
    logPdf,
    pdf: (x) => Math.exp(logPdf(x)),
    cdf: (x) => normalCdf(z(x)),
    sf: (x) => normalSf(z(x)),
    quantile: (p) => mean + sd * normalQuantile(p),
    upperQuantile: (p) => mean + sd * normalUpperQuantile(p),
  };
}
