/** Days as spreadsheets number them. */
import { addDays } from "../units/index.ts";

/**
 * The day of a serial number, ISO, with the time beside it when there is one; null when it is none.
 * The 1900 system counts a 29 February 1900 that never was: days before 1 March 1900 are not guessed.
 *
 * @source ECMA-376 part 1, 18.17.4.1, from memory
 *
 * @example
 * dayOfSerial(45000, false)  // → "2023-03-15"
 */
export function dayOfSerial(serial: number, from1904: boolean): string | null {
  const days = Math.floor(serial);
  if (days < (from1904 ? 0 : 61) || days > 2_900_000) return null;
  const day = addDays(from1904 ? "1904-01-01" : "1899-12-30", days);
  const minutes = Math.round((serial - days) * 24 * 60);
  if (minutes === 0) return day;
  const two = (number: number) => String(number).padStart(2, "0");
  return `${day} ${two(Math.floor(minutes / 60) % 24)}:${two(minutes % 60)}`;
}

/** Whether a number format shows a day: one of those every spreadsheet has, or a code of the file's own with year or day in it. */
export function isDateFormat(id: number, code: string | undefined): boolean {
  if (code === undefined)
    return (id >= 14 && id <= 17) || id === 22 || (id >= 27 && id <= 36) || (id >= 50 && id <= 58);
  const bare = code.replace(/"[^"]*"|\\.|\[[^\]]*\]/g, "");
  return /[dy]/i.test(bare);
}
