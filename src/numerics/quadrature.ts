/** Integrals: Gauss–Legendre rules of any size, and an adaptive integral that tells its error. */
import { ensure } from "../units/index.ts";

export interface QuadratureRule {
  /** Places in (−1, 1), rising; as many as points. */
  readonly nodes: readonly number[];
  /** Their weights; they sum to 2. */
  readonly weights: readonly number[];
}

/**
 * The Gauss–Legendre rule with the given number of points: exact for polynomials to degree 2·points − 1.
 *
 * @throws DomainError unless points is a whole number from 1 to 1000
 * @source Abramowitz & Stegun 25.4.29; nodes by Newton steps on the Legendre recurrence
 * @example
 * gaussLegendreRule(2).nodes[1]  // → 0.5773502691896
 */
export function gaussLegendreRule(points: number): QuadratureRule {
  ensure(Number.isInteger(points) && points >= 1 && points <= 1000, "points", points, "a whole number from 1 to 1000");
  const nodes = new Array<number>(points).fill(0);
  const weights = new Array<number>(points).fill(0);
  for (let i = 0; i < Math.ceil(points / 2); i += 1) {
    let x = points % 2 === 1 && i === (points - 1) / 2 ? 0 : Math.cos((Math.PI * (i + 0.75)) / (points + 0.5));
    for (let round = 0; round < 10 && x !== 0; round += 1) {
      const { value, slope } = legendre(points, x);
      x -= value / slope;
    }
    const { slope } = legendre(points, x);
    nodes[i] = -x;
    nodes[points - 1 - i] = x;
    const weight = 2 / ((1 - x * x) * slope * slope);
    weights[i] = weight;
    weights[points - 1 - i] = weight;
  }
  return { nodes, weights };
}

function legendre(degree: number, x: number): { readonly value: number; readonly slope: number } {
  let before = 1;
  let value = x;
  for (let k = 2; k <= degree; k += 1) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return { value, slope: (degree * (before - x * value)) / (1 - x * x) };
}

export interface Integrand {
  readonly f: (x: number) => number;
  readonly low: number;
  readonly high: number;
}

/**
 * ∫ f from low to high by one Gauss–Legendre rule.
 *
 * @example
 * gaussLegendre({ f: (x) => x * x, low: 0, high: 3 }, gaussLegendreRule(5))  // → 9
 */
export function gaussLegendre({ f, low, high }: Integrand, { nodes, weights }: QuadratureRule): number {
  const half = (high - low) / 2;
  const middle = low + half;
  let sum = 0;
  for (const [i, node] of nodes.entries()) sum += (weights[i] as number) * f(middle + half * node);
  return half * sum;
}

export interface Integral {
  readonly value: number;
  /** Estimated absolute error: the difference between two rules, so usually far too large. */
  readonly error: number;
}

/**
 * ∫ f from low to high, halving where the function is lively, until the estimated error is within
 * `relative` (default 1e-12) of the integral of |f|.
 *
 * @throws DomainError unless low ≤ high are finite
 * @source Gauss–Legendre with 10 and 21 points on each piece; own halving
 * @example
 * integral({ f: (x) => Math.exp(-x), low: 0, high: 50 }).value  // → 1
 */
export function integral({ f, low, high, relative = 1e-12 }: Integrand & { readonly relative?: number }): Integral {
  ensure(Number.isFinite(low) && Number.isFinite(high) && low <= high, "low", low, "finite and not above high");
  const coarse = gaussLegendreRule(10);
  const fine = gaussLegendreRule(21);
  const piece = (from: number, to: number) => {
    const value = gaussLegendre({ f, low: from, high: to }, fine);
    return { from, to, value, error: Math.abs(value - gaussLegendre({ f, low: from, high: to }, coarse)) };
  };
  let pieces = [piece(low, high)];
  for (let round = 0; round < 60; round += 1) {
    const whole = pieces.reduce((sum, { value }) => sum + Math.abs(value), 0);
    const error = pieces.reduce((sum, each) => sum + each.error, 0);
    const share = (relative * whole) / pieces.length;
    const lively = (each: (typeof pieces)[number]) => each.error > share && each.to - each.from > (high - low) * 1e-15;
    if (error <= relative * whole || !pieces.some(lively)) {
      return { value: pieces.reduce((sum, { value }) => sum + value, 0), error };
    }
    pieces = pieces.flatMap((each) => {
      const middle = each.from + (each.to - each.from) / 2;
      return lively(each) ? [piece(each.from, middle), piece(middle, each.to)] : [each];
    });
  }
  throw new Error(`the integral from ${low} to ${high} did not settle`);
}
