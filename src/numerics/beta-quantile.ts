/** Quantiles of the beta distribution from either tail. */
import { ensure } from "../units/index.ts";
import { type BetaPoint, lowerBetaTail, upperBetaTail } from "./incomplete-beta.ts";
import { logBeta } from "./log-gamma.ts";
import { normalQuantile } from "./normal.ts";
import { solveTail } from "./tail-solver.ts";

export interface BetaQuantileRequest {
  /** Probability in the named tail, 0 ≤ p ≤ 1. */
  readonly p: number;
  readonly a: number;
  readonly b: number;
}

/**
 * The x with P(X ≤ x) = p for a beta(a, b) variable; good down to p = 1e-300. Underflows to 0 where x does.
 *
 * @throws DomainError unless 0 ≤ p ≤ 1 and both shapes are finite and above 0
 * @source own: Newton steps on ln tail against ln x, inside a bracket
 * @example
 * betaQuantile({ p: 0.6875, a: 2, b: 3 })  // → 0.5
 */
export function betaQuantile(request: BetaQuantileRequest): number {
  return betaQuantilePoint({ ...request, tail: "lower" }).x;
}

/**
 * The x with P(X > x) = p for a beta(a, b) variable; good down to p = 1e-300, and 1 where no double lies nearer.
 *
 * @throws DomainError unless 0 ≤ p ≤ 1 and both shapes are finite and above 0
 * @source own: Newton steps on ln tail against ln x, inside a bracket
 * @example
 * betaUpperQuantile({ p: 0.3125, a: 2, b: 3 })  // → 0.5
 */
export function betaUpperQuantile(request: BetaQuantileRequest): number {
  return betaQuantilePoint({ ...request, tail: "upper" }).x;
}

export interface BetaTailRequest extends BetaQuantileRequest {
  readonly tail: "lower" | "upper";
}

/** A quantile with its distance from 1, so that both ends keep their digits. */
export function betaQuantilePoint({ p, a, b, tail }: BetaTailRequest): Pick<BetaPoint, "x" | "y"> {
  ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  ensure(b > 0 && b < Infinity, "b", b, "a finite number above 0");
  if (p === 0) return tail === "lower" ? { x: 0, y: 1 } : { x: 1, y: 0 };
  if (p === 1) return tail === "lower" ? { x: 1, y: 0 } : { x: 0, y: 1 };
  if (p > 0.5) return betaQuantilePoint({ p: 1 - p, a, b, tail: tail === "lower" ? "upper" : "lower" });
  const half = { x: 0.5, y: 0.5, a, b };
  const wanted = Math.log(p);
  const inLowerHalf = tail === "lower" ? lowerBetaTail(half).log >= wanted : upperBetaTail(half).log <= wanted;
  if (inLowerHalf) {
    const x = quantileBelowHalf({ p, a, b, tail });
    return { x, y: 1 - x };
  }
  const y = quantileBelowHalf({ p, a: b, b: a, tail: tail === "lower" ? "upper" : "lower" });
  return { x: 1 - y, y };
}

/** The quantile where it is known to be at most ½, so that x is the variable that keeps its digits. */
function quantileBelowHalf({ p, a, b, tail }: BetaTailRequest): number {
  const wanted = Math.log(p);
  const rising = tail === "lower";
  const tailOf = rising ? lowerBetaTail : upperBetaTail;
  return solveTail({
    start: firstGuess({ p, a, b, tail }),
    low: 0,
    high: 0.5 * (1 + 1e-12),
    rising,
    at: (x) => {
      const point = { x, y: 1 - x, a, b };
      const { log, frontShare } = tailOf(point);
      const slope = frontShare / point.y;
      return { gap: log - wanted, slope: rising ? slope : -slope };
    },
  });
}

/** Normal approximation where the shapes allow it, else the power law that holds near 0. */
function firstGuess({ p, a, b, tail }: BetaTailRequest): number {
  const mean = a / (a + b);
  const spread = Math.sqrt((mean * (b / (a + b))) / (a + b + 1));
  const normal = mean + (tail === "lower" ? 1 : -1) * normalQuantile(p) * spread;
  if (normal > mean / 4 && normal < 0.5) return normal;
  if (tail === "lower") return Math.min(0.5, Math.exp((Math.log(p) + Math.log(a) + logBeta(a, b)) / a));
  return 0.5;
}
