/**
 * Proposes the codes people write on labels: apiaries, colonies, cases, specimens.
 *
 * @module views/model
 */
import { ensure } from "../../units/index.ts";
import { safeLetters, withCheckLetter } from "./check-letter.ts";

const safe = (text: string): string[] =>
  [...text.normalize("NFD").toUpperCase()].filter((letter) => safeLetters.includes(letter));

/**
 * Two letters for a name: the first of its first two words, or the first two of one word, from the letters that are
 * read without doubt. `XX` when the name holds none.
 * @example
 * lettersOf("Withen Bank")  // → "WB"
 * lettersOf("Tarrow")  // → "TA"
 */
export function lettersOf(name: string): string {
  const words = name.trim().split(/\s+/);
  const initials = words.map((word) => safe(word)[0]).filter((letter) => letter !== undefined);
  const letters = initials.length > 1 ? initials : safe(name);
  return [...letters, "X", "X"].slice(0, 2).join("");
}

/**
 * A code for an apiary that no other has: letters, with a number from the second on.
 * @example
 * apiaryCode("Withen Bank", [])  // → "WB"
 * apiaryCode("Water Barn", ["WB"])  // → "WB2"
 */
export function apiaryCode(name: string, taken: readonly string[]): string {
  const letters = lettersOf(name);
  let code = letters;
  for (let number = 2; taken.includes(code); number += 1) code = `${letters}${number}`;
  return code;
}

/**
 * Codes for the next colonies of an apiary.
 * @example
 * colonyCodes("WB", ["WB-01"], 2)  // → ["WB-02","WB-03"]
 */
export function colonyCodes(apiary: string, taken: readonly string[], count: number): string[] {
  ensure(Number.isInteger(count) && count >= 0, "count", count, "a whole number from 0");
  const codes: string[] = [];
  for (let number = 1; codes.length < count; number += 1) {
    const code = `${apiary}-${String(number).padStart(2, "0")}`;
    if (!taken.includes(code)) codes.push(code);
  }
  return codes;
}

/**
 * A code for a case: letters of the district, year, number within the year.
 * @example
 * caseCode("Tarrow Valley", 2026, ["TV-26-013"])  // → "TV-26-014"
 */
export function caseCode(place: string, year: number, taken: readonly string[]): string {
  const start = `${lettersOf(place)}-${String(year % 100).padStart(2, "0")}-`;
  return `${start}${String(nextNumber(start, taken)).padStart(3, "0")}`;
}

/**
 * Codes for the next specimens of a district and year, check letter included. Two devices without a connection may
 * propose the same number; the entries stay apart by their ids and the list shows the doubled code.
 * @example
 * specimenCodes("Tarrow Valley", 2026, ["TV26-0146-D"], 1)  // → ["TV26-0147-M"]
 */
export function specimenCodes(place: string, year: number, taken: readonly string[], count: number): string[] {
  ensure(Number.isInteger(count) && count >= 0, "count", count, "a whole number from 0");
  const start = `${lettersOf(place)}${String(year % 100).padStart(2, "0")}-`;
  const first = nextNumber(start, taken);
  return Array.from({ length: count }, (_, index) =>
    withCheckLetter(`${start}${String(first + index).padStart(4, "0")}`),
  );
}

function nextNumber(start: string, taken: readonly string[]): number {
  const numbers = taken
    .filter((code) => code.startsWith(start))
    .map((code) => Number.parseInt(code.slice(start.length), 10))
    .filter(Number.isInteger);
  return Math.max(0, ...numbers) + 1;
}
