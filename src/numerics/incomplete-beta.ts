/** Regularized incomplete beta function, each tail computed on its own so that tiny tails keep their digits. */
import { ensure } from "../units/index.ts";
import { saddleTerm } from "./deviance.ts";
import { differenceFromShare } from "./exact-arithmetic.ts";
import { logGammaOnePlus, logGammaStep, stirlingError } from "./log-gamma.ts";

/** A tail probability and its logarithm; the logarithm stays finite where the value underflows to 0. */
export interface Tail {
  readonly value: number;
  readonly log: number;
  /** The front factor divided by the tail, known where both underflow; it gives the slope of the logarithm. */
  readonly frontShare: number;
}

export interface BetaPoint {
  /** Share, 0 ≤ x ≤ 1. */
  readonly x: number;
  /** 1 − x, given on its own since it may be known more exactly than by subtraction. */
  readonly y: number;
  readonly a: number;
  readonly b: number;
}

/**
 * Iₓ(a, b), the chance that a beta(a, b) variable is at most x. Relative error about 1e-13, for shapes from 1e-9 to 1e6.
 *
 * The order of arguments is that of the symbol Iₓ(a, b).
 *
 * @throws DomainError unless 0 ≤ x ≤ 1 and both shapes are finite and above 0
 * @source DiDonato & Morris 1992, ACM TOMS 18:360–373 (continued fraction); Loader 2000 (front factor)
 * @example
 * regularizedBeta(0.5, 2, 3)  // → 0.6875
 */
export function regularizedBeta(x: number, a: number, b: number): number {
  return lowerBetaTail(point(x, a, b)).value;
}

/**
 * 1 − Iₓ(a, b), the chance that a beta(a, b) variable is above x; as exact as the lower tail.
 *
 * @throws DomainError unless 0 ≤ x ≤ 1 and both shapes are finite and above 0
 * @source DiDonato & Morris 1992, ACM TOMS 18:360–373
 * @example
 * regularizedBetaUpper(0.5, 2, 3)  // → 0.3125
 */
export function regularizedBetaUpper(x: number, a: number, b: number): number {
  return upperBetaTail(point(x, a, b)).value;
}

/**
 * ln Iₓ(a, b), also where Iₓ itself underflows; −Infinity at x = 0.
 *
 * @throws DomainError unless 0 ≤ x ≤ 1 and both shapes are finite and above 0
 * @example
 * logRegularizedBeta(1e-200, 2, 1)  // → -921.034037198
 */
export function logRegularizedBeta(x: number, a: number, b: number): number {
  return lowerBetaTail(point(x, a, b)).log;
}

/**
 * ln(1 − Iₓ(a, b)), also where the tail itself underflows; −Infinity at x = 1.
 *
 * @throws DomainError unless 0 ≤ x ≤ 1 and both shapes are finite and above 0
 * @example
 * logRegularizedBetaUpper(0.5, 1, 2000)  // → -1386.29436112
 */
export function logRegularizedBetaUpper(x: number, a: number, b: number): number {
  return upperBetaTail(point(x, a, b)).log;
}

function point(x: number, a: number, b: number): BetaPoint {
  ensure(x >= 0 && x <= 1, "x", x, "from 0 to 1");
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  ensure(b > 0 && b < Infinity, "b", b, "a finite number above 0");
  return { x, y: 1 - x, a, b };
}

/** a − (a + b)·x, from whichever of x and y is the smaller and hence the more exact. */
function lead({ x, y, a, b }: BetaPoint): number {
  return x <= y ? differenceFromShare(a, a, b, x) : -differenceFromShare(b, a, b, y);
}

/**
 * ln of xᵃ·yᵇ / B(a, b): the front factor of both tails, and the density times x·y.
 *
 * @source Loader 2000, Fast and accurate computation of binomial probabilities
 * @example
 * Math.exp(logBetaFront({ x: 0.5, y: 0.5, a: 1, b: 1 }))  // → 0.25
 */
export function logBetaFront(at: BetaPoint): number {
  const { x, y, a, b } = at;
  const ahead = lead(at);
  const total = a + b;
  return (
    saddleTerm({ observed: a, expected: total * x, excess: -ahead }) +
    saddleTerm({ observed: b, expected: total * y, excess: ahead }) +
    logBetaWidth(a, b)
  );
}

/**
 * The front factor at its own best share x = a/(a + b).
 *
 * @source Loader 2000, Fast and accurate computation of binomial probabilities
 * @example
 * Math.exp(logBetaWidth(1, 1))  // → 0.25
 */
export function logBetaWidth(a: number, b: number): number {
  const small = Math.min(a, b);
  const large = Math.max(a, b);
  const width = 0.5 * Math.log((small / (2 * Math.PI)) * (large / (a + b)));
  return width + (stirlingError(a + b) - stirlingError(large)) - stirlingError(small);
}

/** Upper tail at a point given by both x and 1 − x. */
export function upperBetaTail({ x, y, a, b }: BetaPoint): Tail {
  return lowerBetaTail({ x: y, y: x, a: b, b: a });
}

/** Lower tail at a point given by both x and 1 − x. */
export function lowerBetaTail(at: BetaPoint): Tail {
  const { x, y, a, b } = at;
  if (x === 0) return { value: 0, log: -Infinity, frontShare: a };
  if (y === 0) return { value: 1, log: 0, frontShare: 0 };
  if (x * (a + b + 2) <= a + 1) return byFraction(at);
  if (b < 1) return a * y < 1 && y < 0.5 ? bySmallShape(at) : byFraction(at);
  return complement(byFraction({ x: y, y: x, a: b, b: a }));
}

/** The other tail: 1 − this one. */
export function complement({ value, frontShare }: Tail): Tail {
  return { value: 1 - value, log: Math.log1p(-value), frontShare: frontShare * (value / (1 - value)) };
}

/** DiDonato and Morris's continued fraction by the modified method of Lentz; best below the mean. */
function byFraction(at: BetaPoint): Tail {
  const { x, a, b } = at;
  const ahead = lead(at);
  const partial = (m: number) =>
    m + (m * (b - m) * x) / (a + 2 * m - 1) + ((a + m) / (a + 2 * m + 1)) * (ahead + 1 + m * (2 - x));
  let fraction = (a / (a + 1)) * (ahead + 1);
  let c = fraction;
  let d = 0;
  for (let m = 1; m <= 200_000; m += 1) {
    const odd = 2 * m - 1 + a; // whole numbers first: a + m − 1 would lose the digits of a tiny a
    const numerator = ((m - 1 + a) / odd) * ((m - 1 + a + b) / odd) * m * (b - m) * x * x;
    const denominator = partial(m);
    d = 1 / (denominator + numerator * d);
    c = denominator + numerator / c;
    const factor = c * d;
    fraction *= factor;
    if (Math.abs(factor - 1) < 3e-16 || numerator === 0) {
      const front = logBetaFront(at);
      return { value: Math.exp(front) / fraction, log: front - Math.log(fraction), frontShare: fraction };
    }
  }
  throw new Error(`the continued fraction of the beta tail did not settle at x = ${x}, a = ${a}, b = ${b}`);
}

/**
 * Lower tail above the mean where b < 1 makes it small: 1 − I_y(b, a) taken in logs, so that nothing cancels.
 * I_y(b, a) = y^b/(b·B(a, b))·(1 + b·Σ (1 − a)…(n − a)/n! · yⁿ/(b + n)).
 */
function bySmallShape(at: BetaPoint): Tail {
  const { y, a, b } = at;
  let term = 1;
  let sum = 0;
  for (let n = 1; n < 500; n += 1) {
    term *= ((n - a) / n) * y;
    const next = sum + term / (b + n);
    if (next === sum) break;
    sum = next;
  }
  const log = b * Math.log(y) - logGammaOnePlus(b) + logGammaStep(a, b) + Math.log1p(b * sum);
  const value = -Math.expm1(log);
  return { value, log: Math.log(value), frontShare: Math.exp(logBetaFront(at)) / value };
}
