/** Gauss–Hermite rules: integrals over the whole line with the weight e^(−x²). */
import { ensure } from "../units/index.ts";
import type { QuadratureRule } from "./quadrature.ts";

/**
 * The Gauss–Hermite rule with the given number of points: ∫ f(x)·e^(−x²) dx, exact for polynomials to degree 2·points − 1.
 *
 * The weights sum to √π; those of far points are tiny.
 *
 * @throws DomainError unless points is a whole number from 1 to 200
 * @source Abramowitz & Stegun 25.4.46; roots of the normalised Hermite functions by Newton steps between those of the rule before
 * @example
 * gaussHermiteRule(2).nodes[1]  // → 0.70710678118655
 */
export function gaussHermiteRule(points: number): QuadratureRule {
  ensure(Number.isInteger(points) && points >= 1 && points <= 200, "points", points, "a whole number from 1 to 200");
  let nodes: readonly number[] = [0];
  for (let degree = 2; degree <= points; degree += 1) nodes = rootsBetween(nodes, degree);
  // Christoffel's numbers: 1/Σ h_k(x)², with the weight's square root kept inside the functions.
  const weights = nodes.map((x) => {
    const { squares } = hermiteFunction(points, x);
    return Math.exp(-x * x) / squares;
  });
  return { nodes, weights };
}

/** The roots of one degree interlace with those of the degree before. */
function rootsBetween(before: readonly number[], degree: number): readonly number[] {
  const outermost = Math.sqrt(2 * degree + 1);
  const ends = [-outermost, ...before, outermost];
  const roots = Array.from({ length: degree }, (_, i) => {
    let [low, high] = [ends[i] as number, ends[i + 1] as number];
    if (degree % 2 === 1 && i === (degree - 1) / 2) return 0;
    const lowSign = Math.sign(hermiteFunction(degree, low).value);
    let x = (low + high) / 2;
    for (let round = 0; round < 100; round += 1) {
      const { value, slope } = hermiteFunction(degree, x);
      if (value === 0) return x;
      if (Math.sign(value) === lowSign) low = x;
      else high = x;
      const step = x - value / slope;
      const next = step > low && step < high ? step : (low + high) / 2;
      if (Math.abs(next - x) <= 4 * Number.EPSILON * Math.abs(x)) return next;
      x = next;
    }
    return x;
  });
  return roots.map((x, i) => (x - (roots[degree - 1 - i] as number)) / 2);
}

/** h_n(x)·e^(−x²/2) of the orthonormal polynomials, its slope without the weight's, and Σ_{k<n} of the squares. */
function hermiteFunction(
  degree: number,
  x: number,
): { readonly value: number; readonly slope: number; readonly squares: number } {
  let [before, value] = [0, Math.PI ** -0.25 * Math.exp((-x * x) / 2)];
  let squares = 0;
  for (let k = 0; k < degree; k += 1) {
    squares += value * value;
    [before, value] = [value, x * Math.sqrt(2 / (k + 1)) * value - Math.sqrt(k / (k + 1)) * before];
  }
  return { value, slope: Math.sqrt(2 * degree) * before, squares };
}
