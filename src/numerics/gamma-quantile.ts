/** Quantiles of the gamma distribution with rate 1 from either tail. */
import { ensure } from "../units/index.ts";
import { lowerGammaTail, upperGammaTail } from "./incomplete-gamma.ts";
import { logGammaOnePlus } from "./log-gamma.ts";
import { normalQuantile } from "./normal.ts";
import { solveTail } from "./tail-solver.ts";

export interface GammaQuantileRequest {
  /** Probability in the named tail, 0 ≤ p ≤ 1. */
  readonly p: number;
  /** Shape. */
  readonly a: number;
}

/**
 * The x with P(X ≤ x) = p for a gamma variable of shape a and rate 1. Underflows to 0 where x does.
 *
 * @throws DomainError unless 0 ≤ p ≤ 1 and a is finite and above 0
 * @source own: Newton steps on ln tail against ln x, inside a bracket; Wilson & Hilferty 1931 for the start
 * @example
 * gammaQuantile({ p: 0.5, a: 1 })  // → 0.69314718056
 */
export function gammaQuantile({ p, a }: GammaQuantileRequest): number {
  return quantile({ p, a, tail: "lower" });
}

/**
 * The x with P(X > x) = p for a gamma variable of shape a and rate 1; Infinity at p = 0.
 *
 * @throws DomainError unless 0 ≤ p ≤ 1 and a is finite and above 0
 * @source own: Newton steps on ln tail against ln x, inside a bracket; Wilson & Hilferty 1931 for the start
 * @example
 * gammaUpperQuantile({ p: 1e-300, a: 1 })  // → 690.7755278982137
 */
export function gammaUpperQuantile({ p, a }: GammaQuantileRequest): number {
  return quantile({ p, a, tail: "upper" });
}

interface GammaTailRequest extends GammaQuantileRequest {
  readonly tail: "lower" | "upper";
}

function quantile({ p, a, tail }: GammaTailRequest): number {
  ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  if (p === 0) return tail === "lower" ? 0 : Infinity;
  if (p === 1) return tail === "lower" ? Infinity : 0;
  if (p > 0.5) return quantile({ p: 1 - p, a, tail: tail === "lower" ? "upper" : "lower" });
  const wanted = Math.log(p);
  const rising = tail === "lower";
  const tailOf = rising ? lowerGammaTail : upperGammaTail;
  return solveTail({
    start: firstGuess({ p, a, tail }),
    low: 0,
    high: Infinity,
    rising,
    at: (x) => {
      const { log, frontShare } = tailOf(a, x);
      return { gap: log - wanted, slope: rising ? frontShare : -frontShare };
    },
  });
}

/** Wilson and Hilferty's cube, else the power law that holds near 0. */
function firstGuess({ p, a, tail }: GammaTailRequest): number {
  const z = (tail === "lower" ? 1 : -1) * normalQuantile(p);
  const root = 1 - 1 / (9 * a) + z / (3 * Math.sqrt(a));
  if (root > 0.3) return a * root ** 3;
  if (tail === "lower") return Math.exp((Math.log(p) + logGammaOnePlus(a)) / a);
  return Math.max(a, -Math.log(p));
}
