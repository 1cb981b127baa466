/** ln(1 + d) − d and the saddle-point term built on it: the part of every density that decides its tails. */

/**
 * ln(1 + d) − d, accurate to the last digits also where d is small and the two nearly cancel. Never above 0.
 *
 * With r = d/(2 + d), ln(1 + d) = 2·artanh r, hence ln(1 + d) − d = r·(2r²·(1/3 + r²/5 + r⁴/7 + …) − d).
 *
 * @throws DomainError is not thrown; d ≤ −1 gives −Infinity as the limit does
 * @source Abramowitz & Stegun 4.1.27 for the series
 * @example
 * log1pMinus(1e-8)  // → -4.99999996667e-17
 */
export function log1pMinus(d: number): number {
  if (d < -0.6 || d > 1.5) return Math.log1p(d) - d;
  const r = d / (2 + d);
  const square = r * r;
  let power = square;
  let sum = 0;
  for (let odd = 3; ; odd += 2) {
    const next = sum + power / odd;
    if (next === sum) return r * (2 * sum - d);
    sum = next;
    power *= square;
  }
}

export interface SaddlePart {
  /** What was counted, or a shape parameter. ≥ 0. */
  readonly observed: number;
  /** What the model expects there. ≥ 0. */
  readonly expected: number;
  /** expected − observed, given on its own since it is often known more exactly than the two. */
  readonly excess: number;
}

/**
 * observed·ln(expected/observed) − excess: minus half the deviance of one cell. Never above 0.
 *
 * @source Loader 2000, Fast and accurate computation of binomial probabilities (his D₀, with the sign turned)
 * @example
 * saddleTerm({ observed: 0, expected: 3, excess: 3 })  // → -3
 */
export function saddleTerm({ observed, expected, excess }: SaddlePart): number {
  if (observed === 0) return -expected;
  const relative = excess / observed;
  if (relative > -0.6 && relative < 1.5) return observed * log1pMinus(relative);
  return observed * Math.log(expected / observed) - excess;
}
