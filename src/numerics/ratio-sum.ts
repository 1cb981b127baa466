/** Sums of terms known by the ratio of each to the one before, such as the chances of neighbouring counts. */

/**
 * 1 + r₀ + r₀·r₁ + … with `count` ratios; stops early once the terms fall and no longer matter.
 *
 * The early stop supposes that ratios which have fallen below 1 stay below 1.
 *
 * @example
 * sumRatios(3, () => 2)  // → 15
 */
export function sumRatios(count: number, ratio: (i: number) => number): number {
  let term = 1;
  let sum = 1;
  let carried = 0;
  for (let i = 0; i < count; i += 1) {
    const step = ratio(i);
    term *= step;
    const part = term - carried;
    const next = sum + part;
    carried = next - sum - part;
    sum = next;
    // The rest is at most a geometric series with the present ratio.
    if (step < 1 && term * step < sum * (1 - step) * 1e-18) break;
  }
  return sum;
}

/**
 * 1 − tail, or the other tail summed afresh where the subtraction would lose more than a digit.
 *
 * @example
 * complement(0.25, () => 0.75)  // → 0.75
 */
export function complement(tail: number, other: () => number): number {
  return tail > 0.9 ? other() : 1 - tail;
}
