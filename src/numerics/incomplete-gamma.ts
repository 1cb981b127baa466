/** Regularized incomplete gamma function, each tail computed on its own so that tiny tails keep their digits. */
import { ensure } from "../units/index.ts";
import { saddleTerm } from "./deviance.ts";
import { complement, type Tail } from "./incomplete-beta.ts";
import { logGammaOnePlus, stirlingError } from "./log-gamma.ts";

/**
 * P(a, x), the chance that a gamma variable of shape a and rate 1 is at most x.
 *
 * @throws DomainError unless a is finite and above 0, and x ≥ 0
 * @source Abramowitz & Stegun 6.5.29 (series), 6.5.31 (continued fraction); Loader 2000 (front factor)
 * @example
 * regularizedGammaP(1, 2)  // → 0.864664716763
 */
export function regularizedGammaP(a: number, x: number): number {
  return lowerGammaTail(a, x).value;
}

/**
 * Q(a, x) = 1 − P(a, x), the chance that a gamma variable of shape a and rate 1 is above x; as exact as P.
 *
 * @throws DomainError unless a is finite and above 0, and x ≥ 0
 * @source Abramowitz & Stegun 6.5.31
 * @example
 * regularizedGammaQ(1, 2)  // → 0.135335283237
 */
export function regularizedGammaQ(a: number, x: number): number {
  return upperGammaTail(a, x).value;
}

/**
 * ln P(a, x), also where P underflows; −Infinity at x = 0.
 *
 * @throws DomainError unless a is finite and above 0, and x ≥ 0
 * @example
 * logRegularizedGammaP(2, 1e-200)  // → -921.7271843781782
 */
export function logRegularizedGammaP(a: number, x: number): number {
  return lowerGammaTail(a, x).log;
}

/**
 * ln Q(a, x), also where Q underflows; −Infinity at x = Infinity.
 *
 * @throws DomainError unless a is finite and above 0, and x ≥ 0
 * @example
 * logRegularizedGammaQ(1, 2000)  // → -2000
 */
export function logRegularizedGammaQ(a: number, x: number): number {
  return upperGammaTail(a, x).log;
}

/**
 * ln of xᵃ·e⁻ˣ / Γ(a): the front factor of both tails, and the density times x.
 *
 * @source Loader 2000, Fast and accurate computation of binomial probabilities
 * @example
 * logGammaFront(1, 1)  // → -1
 */
export function logGammaFront(a: number, x: number): number {
  return saddleTerm({ observed: a, expected: x, excess: x - a }) + 0.5 * Math.log(a / (2 * Math.PI)) - stirlingError(a);
}

/** P(a, x) with its logarithm. */
export function lowerGammaTail(a: number, x: number): Tail {
  check(a, x);
  if (x === 0) return { value: 0, log: -Infinity, frontShare: a };
  if (x === Infinity) return { value: 1, log: 0, frontShare: 0 };
  if (x <= a + 1) return bySeries(a, x);
  return complement(byFraction(a, x));
}

/** Q(a, x) with its logarithm. */
export function upperGammaTail(a: number, x: number): Tail {
  check(a, x);
  if (x === 0) return { value: 1, log: 0, frontShare: 0 };
  if (x === Infinity) return { value: 0, log: -Infinity, frontShare: Infinity };
  if (x > a + 1 || (a < 1 && x >= 1)) return byFraction(a, x);
  return a < 1 ? bySmallShape(a, x) : complement(bySeries(a, x));
}

function check(a: number, x: number): void {
  ensure(a > 0 && a < Infinity, "a", a, "a finite number above 0");
  ensure(x >= 0, "x", x, "0 or more");
}

/** P(a, x) = front/a · (1 + x/(a + 1) + x²/((a + 1)(a + 2)) + …): all terms positive. */
function bySeries(a: number, x: number): Tail {
  let term = 1;
  let sum = 1;
  let carried = 0;
  for (let n = 1; ; n += 1) {
    term *= x / (a + n);
    const part = term - carried;
    const next = sum + part;
    carried = next - sum - part;
    if (term < sum * 1e-17) break;
    sum = next;
  }
  const front = logGammaFront(a, x);
  return { value: (Math.exp(front) / a) * sum, log: front - Math.log(a) + Math.log(sum), frontShare: a / sum };
}

/** Legendre's continued fraction for Q(a, x) by the modified method of Lentz. */
function byFraction(a: number, x: number): Tail {
  let denominator = x - a + 1;
  let fraction = denominator;
  let c = fraction;
  let d = 0;
  for (let n = 1; n <= 200_000; n += 1) {
    const numerator = n * (a - n);
    denominator = x - a + (2 * n + 1);
    d = 1 / (denominator + numerator * d);
    c = denominator + numerator / c;
    const factor = c * d;
    fraction *= factor;
    if (Math.abs(factor - 1) < 3e-16 || numerator === 0) {
      const front = logGammaFront(a, x);
      return { value: Math.exp(front) / fraction, log: front - Math.log(fraction), frontShare: fraction };
    }
  }
  throw new Error(`the continued fraction of the gamma tail did not settle at a = ${a}, x = ${x}`);
}

/** Q(a, x) for a < 1 and x < 1, where it may be small: 1 − P taken in logs, so that nothing cancels. */
function bySmallShape(a: number, x: number): Tail {
  let term = 1;
  let sum = 0;
  for (let n = 1; ; n += 1) {
    term *= -x / n;
    const next = sum + term / (a + n);
    if (next === sum) break;
    sum = next;
  }
  const value = -Math.expm1(a * Math.log(x) - logGammaOnePlus(a) + Math.log1p(a * sum));
  return { value, log: Math.log(value), frontShare: Math.exp(logGammaFront(a, x)) / value };
}
