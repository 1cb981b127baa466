/** Gauss–Hermite rules: integrals over the whole line with the weight e^(−x²). */
import { ensure } from "../units/index.ts";
import { gaussRule } from "./gauss-rule.ts";
import type { QuadratureRule } from "./quadrature.ts";

/**
 * The Gauss–Hermite rule with the given number of points: ∫ f(x)·e^(−x²) dx, exact for polynomials to degree 2·points − 1.
 *
 * The weights sum to √π; those of far points are tiny and lose digits.
 *
 * @throws DomainError unless points is a whole number from 1 to 200
 * @source Abramowitz & Stegun 25.4.46; recurrence of the orthonormal Hermite polynomials
 * @example
 * gaussHermiteRule(2).nodes[1]  // → 0.70710678118655
 */
export function gaussHermiteRule(points: number): QuadratureRule {
  ensure(Number.isInteger(points) && points >= 1 && points <= 200, "points", points, "a whole number from 1 to 200");
  const { nodes, weights } = gaussRule({
    middle: new Array<number>(points).fill(0),
    off: Array.from({ length: points - 1 }, (_, k) => Math.sqrt((k + 1) / 2)),
  });
  return { nodes, weights: weights.map((each) => Math.sqrt(Math.PI) * each) };
}
