/** The error function and its complement. */
import { ensure } from "../units/index.ts";
import { twoProduct } from "./exact-arithmetic.ts";

// Cody 1969, Rational Chebyshev approximations for the error function, Mathematics of Computation 23:631–637.
const centreTop = [0.18577770618460315, 3.1611237438705655, 113.86415415105016, 377.485237685302, 3209.3775891384694];
const centreBottom = [1, 23.601290952344122, 244.02463793444417, 1282.6165260773723, 2844.236833439171];
const middleTop = [
  2.1531153547440383e-8, 0.5641884969886701, 8.883149794388377, 66.11919063714163, 298.6351381974001, 881.952221241769,
  1712.0476126340707, 2051.0783778260716, 1230.3393547979972,
];
const middleBottom = [
  1, 15.744926110709835, 117.6939508913125, 537.1811018620099, 1621.3895745666903, 3290.7992357334597,
  4362.619090143247, 3439.3676741437216, 1230.3393548037495,
];
const farTop = [
  0.016315387137302097, 0.30532663496123236, 0.36034489994980445, 0.12578172611122926, 0.016083785148742275,
  0.0006587491615298378,
];
const farBottom = [
  1, 2.568520192289822, 1.8729528499234604, 0.5279051029514285, 0.06051834131244132, 0.0023352049762686918,
];

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0;
  for (const coefficient of coefficients) sum = sum * x + coefficient;
  return sum;
}

/**
 * erf(x), relative error about 1e-16.
 *
 * @throws DomainError outside its range
 * @source Cody 1969, Mathematics of Computation 23:631–637
 * @example
 * erf(0.5)  // → 0.5204998778130465
 */
export function erf(x: number): number {
  ensure(!Number.isNaN(x), "x", x, "a number");
  const size = Math.abs(x);
  if (size <= 0.46875) {
    const square = x * x;
    return (x * polynomial(centreTop, square)) / polynomial(centreBottom, square);
  }
  return Math.sign(x) * (1 - erfc(size));
}

/**
 * erfc(x) = 1 − erf(x), relative error about 1e-16 down to where it underflows (x about 26.5).
 *
 * @throws DomainError outside its range
 * @source Cody 1969, Mathematics of Computation 23:631–637
 * @example
 * erfc(2)  // → 0.00467773498105
 */
export function erfc(x: number): number {
  ensure(!Number.isNaN(x), "x", x, "a number");
  if (Math.abs(x) <= 0.46875) return 1 - erf(x);
  if (x < 0) return 2 - erfc(-x);
  return x > 27.5 ? 0 : scaledErfc(x) * expMinusSquare(x, 1);
}

/** e^(−half·x²) with the rounding of the square put right; half is 1 or ½. */
export function expMinusSquare(x: number, half: 1 | 0.5): number {
  const square = twoProduct(x, x);
  return Math.exp(-half * square.value) * (1 - half * square.rest);
}

/**
 * e^(x²)·erfc(x) for x ≥ 0: what is left of the tail when its steep factor is taken out.
 *
 * @throws DomainError outside its range
 * @source Cody 1969, Mathematics of Computation 23:631–637
 * @example
 * scaledErfc(10)  // → 0.0561409927438
 */
export function scaledErfc(x: number): number {
  ensure(x >= 0, "x", x, "0 or more");
  if (x === Infinity) return 0;
  if (x <= 0.46875) return Math.exp(x * x) * (1 - erf(x));
  if (x <= 4) return polynomial(middleTop, x) / polynomial(middleBottom, x);
  const square = 1 / (x * x);
  const inner = (square * polynomial(farTop, square)) / polynomial(farBottom, square);
  return (1 / Math.sqrt(Math.PI) - inner) / x;
}
