/** The standard normal curve: density, both tails and quantiles from either tail. */
import { ensure } from "../units/index.ts";
import { erf, expMinusSquare, scaledErfc } from "./error-function.ts";

const rootTwo = Math.SQRT2;

/**
 * Density of the standard normal at z.
 *
 * @throws DomainError if z is not a number
 * @example
 * normalPdf(0)  // → 0.3989422804014327
 */
export function normalPdf(z: number): number {
  ensure(!Number.isNaN(z), "z", z, "a number");
  return Math.abs(z) > 39 ? 0 : expMinusSquare(z, 0.5) / Math.sqrt(2 * Math.PI);
}

/**
 * P(Z ≤ z), relative error about 1e-15 down to the smallest double (z about −38).
 *
 * @throws DomainError if z is not a number
 * @source Cody 1969, Mathematics of Computation 23:631–637
 * @example
 * normalCdf(-1.959963984540054)  // → 0.025
 */
export function normalCdf(z: number): number {
  ensure(!Number.isNaN(z), "z", z, "a number");
  if (z > 0) return 1 - normalCdf(-z);
  if (z < -39) return 0;
  const x = -z / rootTwo;
  return x <= 0.46875 ? 0.5 - 0.5 * erf(x) : 0.5 * scaledErfc(x) * expMinusSquare(z, 0.5);
}

/**
 * P(Z > z), as exact as the lower tail.
 *
 * @throws DomainError if z is not a number
 * @example
 * normalSf(37)  // → 5.725571222524577e-300
 */
export function normalSf(z: number): number {
  return normalCdf(-z);
}

/**
 * ln P(Z ≤ z), also where the tail itself underflows.
 *
 * @throws DomainError if z is not a number
 * @example
 * logNormalCdf(-100)  // → -5005.524208694205
 */
export function logNormalCdf(z: number): number {
  ensure(!Number.isNaN(z), "z", z, "a number");
  if (z === -Infinity) return -Infinity;
  if (z > -1) return Math.log1p(-normalSf(z));
  return -0.5 * z * z + Math.log(0.5 * scaledErfc(-z / rootTwo));
}

// Wichura 1988, Algorithm AS 241 (PPND16), Applied Statistics 37:477–484. Highest power first.
const centreTop = [
  2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946, 1971.5909503065513,
  133.14166789178438, 3.3871328727963665,
];
const centreBottom = [
  5226.495278852854, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751, 687.1870074920579,
  42.31333070160091, 1,
];
const middleTop = [
  0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
  5.769497221460691, 4.630337846156546, 1.4234371107496835,
];
const middleBottom = [
  1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
  1.6763848301838038, 2.053191626637759, 1,
];
const farTop = [
  2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124, 0.29656057182850487,
  1.7848265399172913, 5.463784911164114, 6.657904643501103,
];
const farBottom = [
  2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133, 0.014875361290850615,
  0.1369298809227358, 0.599832206555888, 1,
];

function ratio(top: readonly number[], bottom: readonly number[], x: number): number {
  let above = 0;
  let below = 0;
  for (let k = 0; k < 8; k++) {
    above = above * x + (top[k] as number);
    below = below * x + (bottom[k] as number);
  }
  return above / below;
}

/** The ratios of polynomials behind `normalQuantile`, for whoever writes it for another machine. Highest power first. */
export const normalQuantileRatios = {
  centre: [centreTop, centreBottom],
  middle: [middleTop, middleBottom],
  far: [farTop, farBottom],
} as const;

/**
 * The z with P(Z ≤ z) = p; −Infinity at 0 and Infinity at 1. Relative error about 1e-15.
 *
 * @throws DomainError unless 0 ≤ p ≤ 1
 * @source Wichura 1988, Algorithm AS 241, Applied Statistics 37:477–484
 * @example
 * normalQuantile(0.975)  // → 1.95996398454
 */
export function normalQuantile(p: number): number {
  ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
  if (p === 0) return -Infinity;
  if (p === 1) return Infinity;
  const offset = p - 0.5;
  if (Math.abs(offset) <= 0.425) return offset * ratio(centreTop, centreBottom, 0.180625 - offset * offset);
  const r = Math.sqrt(-Math.log(offset < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(middleTop, middleBottom, r - 1.6) : ratio(farTop, farBottom, r - 5);
  return offset < 0 ? -z : z;
}

/**
 * The z with P(Z > z) = p, good down to the smallest double.
 *
 * @throws DomainError unless 0 ≤ p ≤ 1
 * @source Wichura 1988, Algorithm AS 241, Applied Statistics 37:477–484
 * @example
 * normalUpperQuantile(0.025)  // → 1.95996398454
 */
export function normalUpperQuantile(p: number): number {
  return 0 - normalQuantile(p);
}
