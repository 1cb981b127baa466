/** Sums and products of doubles together with what rounding took away, so that near-equal numbers can be subtracted. */

/** A rounded result and the exact remainder: the true value is `value + rest`. */
export interface Exact {
  readonly value: number;
  readonly rest: number;
}

/**
 * Sum of two doubles with its rounding error.
 *
 * @source Knuth, The Art of Computer Programming 2, section 4.2.2 (from memory)
 * @example
 * twoSum(1, 1e-20).rest  // → 1e-20
 */
export function twoSum(a: number, b: number): Exact {
  const value = a + b;
  const shadow = value - a;
  return { value, rest: a - (value - shadow) + (b - shadow) };
}

/**
 * Product of two doubles with its rounding error, exact while no part overflows (|a|, |b| < 1e290).
 *
 * @source Dekker 1971, Numerische Mathematik 18:224–242 (from memory)
 * @example
 * twoProduct(0.1, 10).rest  // → 5.551115123125783e-17
 */
export function twoProduct(a: number, b: number): Exact {
  const value = a * b;
  const highA = upperHalf(a);
  const highB = upperHalf(b);
  const lowA = a - highA;
  const lowB = b - highB;
  return { value, rest: lowA * lowB - (value - highA * highB - lowA * highB - highA * lowB) };
}

/** The upper 26 bits of a double. */
function upperHalf(a: number): number {
  const shifted = 134217729 * a;
  return shifted - (shifted - a);
}

/**
 * a − (b + c)·x without loss where the two are close.
 *
 * @example
 * differenceFromShare(0.3, 0.7, 0.3, 0.3)  // → 1.6653345369377347e-17
 */
export function differenceFromShare(a: number, b: number, c: number, x: number): number {
  const total = twoSum(b, c);
  const share = twoProduct(total.value, x);
  return a - share.value - share.rest - total.rest * x;
}
