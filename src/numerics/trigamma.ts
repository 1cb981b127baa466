/** The trigamma function: the variance of the logarithm of a gamma number. */
import { ensure } from "../units/index.ts";

/** From here on the series has double precision. */
const seriesFrom = 15;

/**
 * ψ′(x), the second derivative of ln Γ. The log odds of a Beta(a, b) share have variance ψ′(a) + ψ′(b).
 *
 * Steps up by ψ′(x) = ψ′(x + 1) + 1/x², then Bernoulli's series.
 *
 * @throws DomainError unless x ≥ 1e-150, below which the answer has no end, and finite
 * @source NIST Digital Library of Mathematical Functions 5.15.1, 5.15.5, 5.15.8 (from memory)
 * @example
 * trigamma(1)  // → 1.644934066848
 */
export function trigamma(x: number): number {
  ensure(x >= 1e-150 && Number.isFinite(x), "x", x, "1e-150 or more, and finite");
  let at = x;
  let stepped = 0;
  for (; at < seriesFrom; at += 1) stepped += 1 / (at * at);
  const inverse = 1 / at;
  const square = inverse * inverse;
  const tail =
    1 / 6 -
    square *
      (1 / 30 - square * (1 / 42 - square * (1 / 30 - square * (5 / 66 - square * (691 / 2730 - square * (7 / 6))))));
  return stepped + inverse + square / 2 + square * inverse * tail;
}
