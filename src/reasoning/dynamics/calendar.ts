/** Calendar days as days of the model's year, which has no leap day. */
import { type Day, dayNumber, isLeapYear, yearOf } from "../../units/index.ts";

/**
 * Day of a year of 365 days, 1–365. 29 February shares the place of the 28th, so that every later date keeps its own.
 *
 * @throws DomainError for a day that does not exist
 * @example
 * dayOfYear("2028-02-29")  // → 59
 * dayOfYear("2028-11-01")  // → 305
 */
export function dayOfYear(day: Day): number {
  const ordinal = dayNumber(day) - dayNumber(`${day.slice(0, 4)}-01-01`) + 1;
  return isLeapYear(yearOf(day)) && ordinal > 59 ? ordinal - 1 : ordinal;
}
