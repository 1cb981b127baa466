/** Rounding for the eye that never carries a figure across its limit. */
import { ensure } from "../../units/index.ts";

export interface ShownQuestion {
  readonly value: number;
  readonly limit: number;
  /** Digits after the point to begin with, 0 or more. */
  readonly digits: number;
}

/**
 * The figure as text with as few digits as tell on which side of the limit it lies: the wanted digits, or more
 * when rounding would make it equal the limit or cross it. Both are in the unit they are shown in.
 *
 * @throws DomainError for numbers that are not finite
 *
 * @example
 * shownBeside({ value: 59.96, limit: 60, digits: 0 })  // → "59.96"
 * shownBeside({ value: 14.444444, limit: 15.555556, digits: 1 })  // → "14.4"
 */
export function shownBeside({ value, limit, digits }: ShownQuestion): string {
  ensure(Number.isFinite(value), "value", value, "a finite number");
  ensure(Number.isFinite(limit), "limit", limit, "a finite number");
  ensure(Number.isInteger(digits) && digits >= 0 && digits <= 15, "digits", digits, "a whole number from 0 to 15");
  for (let more = digits; more <= 15; more++) {
    const shown = value.toFixed(more);
    // The limit is shown with the same digits, so the two texts must differ as the numbers do.
    const shownLimit = limit.toFixed(more);
    if (Math.sign(Number(shown) - Number(shownLimit)) === Math.sign(value - limit) && holdsSide(shown, value, limit))
      return shown;
  }
  return String(value);
}

const holdsSide = (shown: string, value: number, limit: number): boolean =>
  Math.sign(Number(shown) - limit) === Math.sign(value - limit) || value === limit;
