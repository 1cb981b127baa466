/** The beta distribution: what is believed about a proportion. */
import { ensure } from "../units/index.ts";
import { betaQuantile, betaUpperQuantile } from "./beta-quantile.ts";
import type { ContinuousDistribution } from "./distribution.ts";
import { logBetaFront, regularizedBeta, regularizedBetaUpper } from "./incomplete-beta.ts";
import { logBeta } from "./log-gamma.ts";

export interface BetaShape {
  readonly a: number;
  readonly b: number;
}

/**
 * The beta distribution with shapes a and b.
 *
 * @throws DomainError unless both shapes are finite and above 0
 * @source DiDonato & Morris 1992, ACM TOMS 18:360–373
 * @example
 * beta({ a: 2, b: 3 }).cdf(0.5)  // → 0.6875
 * beta({ a: 2, b: 3 }).mean  // → 0.4
 */
export function beta({ a, b }: BetaShape): ContinuousDistribution {
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  ensure(b > 0 && b < Infinity, "b", b, "a finite number above 0");
  const logPdf = (x: number): number => {
    ensure(!Number.isNaN(x), "x", x, "a number");
    if (x < 0 || x > 1) return -Infinity;
    if (x === 0) return edge(a, -logBeta(a, b));
    if (x === 1) return edge(b, -logBeta(a, b));
    return logBetaFront({ x, y: 1 - x, a, b }) - Math.log(x) - Math.log1p(-x);
  };
  return {
    kind: "continuous",
    support: { low: 0, high: 1 },
    mean: a / (a + b),
    variance: ((a / (a + b)) * (b / (a + b))) / (a + b + 1),
    logPdf,
    pdf: (x) => Math.exp(logPdf(x)),
    cdf: (x) => (x <= 0 ? 0 : x >= 1 ? 1 : regularizedBeta(x, a, b)),
    sf: (x) => (x <= 0 ? 1 : x >= 1 ? 0 : regularizedBetaUpper(x, a, b)),
    quantile: (p) => betaQuantile({ p, a, b }),
    upperQuantile: (p) => betaUpperQuantile({ p, a, b }),
  };
}

/** ln density at an end of the support, from the shape that rules there. */
function edge(shape: number, atOne: number): number {
  if (shape === 1) return atOne;
  return shape < 1 ? Infinity : -Infinity;
}
