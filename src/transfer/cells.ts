/** Reads one cell as a count, a number, a day or a word; what cannot be read is told, with a mend where there is one. */
import { isDay } from "../units/index.ts";
import { type ImportProblem, importProblem, type Mend } from "./import-problem.ts";
import type { CellKind } from "./table.ts";

/** A cell with its place. */
export interface Cell {
  readonly line: number;
  readonly column: string;
  /** Trimmed; a quote put before a formula sign by an export is taken off. */
  readonly text: string;
  /** An export had made the text inert: what looks like a formula is text. */
  readonly inert?: boolean;
  /** What the file said of the cell; left out where it has texts alone. */
  readonly kind?: CellKind;
}

export type Reading<T> = { readonly value: T } | { readonly problem: ImportProblem };

/** How the file writes numbers and dates. */
export interface Writing {
  readonly decimal: "." | ",";
  readonly dates: "iso" | "day-month-year" | "month-day-year";
  /** Latest day that can be; null when not asked. */
  readonly today: string | null;
}

/** Takes off the quote that an export puts before `= + - @`, and outer spaces. */
export const plainCell = (text: string): string => (isInert(text) ? text.trim().slice(1) : text.trim());

/** Whether an export made the cell inert. */
export const isInert = (text: string): boolean => /^'[=+\-@\t\r]/.test(text.trim());

/** Whether a spreadsheet would run the cell: it begins with a formula sign and is no number. */
export const looksLikeFormula = (text: string): boolean => /^[=+\-@\t\r]/.test(text) && !/^[+-]?[\d.,]+$/.test(text);

/** A number in the file's own decimals; thousands are not guessed. */
export function readNumber(cell: Cell, writing: Writing): Reading<number> {
  const spelt = writing.decimal === "," ? /^[+-]?\d+(,\d+)?$/ : /^[+-]?\d+(\.\d+)?$/;
  if (!spelt.test(cell.text)) {
    const other = cell.text.replace(writing.decimal === "," ? "." : ",", writing.decimal);
    return trouble("number-unreadable", cell, {}, spelt.test(other) ? { kind: "use", use: other } : forWord(cell.text));
  }
  return { value: Number(cell.text.replace(",", ".")) };
}

/** A word where a number is wanted may say that nothing was recorded; only a person knows. */
const forWord = (text: string): Mend | null =>
  /^[^\d=]{1,30}$/.test(text) ? { kind: "nothing-recorded", use: text } : null;

/** A whole number of things, 0 to 100 000. */
export function readCount(cell: Cell, writing: Writing): Reading<number> {
  const number = readNumber(cell, writing);
  if ("problem" in number) return number;
  if (!Number.isInteger(number.value)) return trouble("number-not-whole", cell);
  if (number.value < 0 || number.value > 100_000)
    return trouble("number-out-of-range", cell, { least: 0, greatest: 100_000 });
  return number;
}

/** A number between two limits, both included. */
export function readNumberBetween(
  cell: Cell,
  writing: Writing,
  limits: { least: number; greatest: number },
): Reading<number> {
  const number = readNumber(cell, writing);
  if ("problem" in number) return number;
  return number.value < limits.least || number.value > limits.greatest
    ? trouble("number-out-of-range", cell, limits)
    : number;
}

/** A text that is there and is no formula. */
export function readText(cell: Cell, longest: number): Reading<string> {
  if (cell.text === "") return trouble("text-missing", cell);
  if (!cell.inert && looksLikeFormula(cell.text)) return trouble("formula-cell", cell);
  return cell.text.length > longest ? trouble("text-too-long", cell, { longest }) : { value: cell.text };
}

const pad = (text: string): string => text.padStart(2, "0");

/**
 * Whether a spreadsheet may have made a code into something else: into a day (`1-Mar`, `2026-03-01`), a large number
 * (`1.00E+05`), a number with a fraction, or a truth.
 */
export const looksChanged = ({ text, kind }: Cell): boolean =>
  kind === "date" ||
  (kind === "number" && !/^\d{1,11}$/.test(text)) ||
  /^\d{1,2}[-/ ][A-Za-z]{3}([-/ ]\d{2,4})?$|^[A-Za-z]{3}[-/ ]\d{2}$|^\d([.,]\d+)?[Ee]\+?\d+$/.test(text) ||
  /^\d{4}-\d{2}-\d{2}( |$)|^\d{1,2}[/.]\d{1,2}[/.]\d{2,4}$|^\d+[.,]\d+$|^(TRUE|FALSE)$/.test(text);

/** A day. ISO is read; other spellings only when the mapping names their order; never guessed, never moved. */
export function readDay(cell: Cell, writing: Writing): Reading<string> {
  const read = spelling(cell, writing);
  if ("problem" in read) return read;
  return writing.today !== null && read.value > writing.today
    ? trouble("date-in-future", cell, { today: writing.today })
    : read;
}

function spelling(cell: Cell, { dates }: Writing): Reading<string> {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})$/.exec(cell.text);
  if (iso) {
    const [, year = "", month = "", day = ""] = iso;
    const spelt = `${year}-${pad(month)}-${pad(day)}`;
    if (!isDay(spelt)) return trouble("date-does-not-exist", cell);
    return spelt === cell.text
      ? { value: spelt }
      : trouble("date-not-iso", cell, { iso: spelt }, { kind: "use", use: spelt });
  }
  const other = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})$/.exec(cell.text);
  if (!other) return trouble("date-unreadable", cell);
  const [, first = "", second = "", year = ""] = other;
  const dayFirst = `${year}-${pad(second)}-${pad(first)}`;
  const monthFirst = `${year}-${pad(first)}-${pad(second)}`;
  if (dates !== "iso") {
    const spelt = dates === "day-month-year" ? dayFirst : monthFirst;
    return isDay(spelt) ? { value: spelt } : trouble("date-does-not-exist", cell);
  }
  const possible = [...new Set([dayFirst, monthFirst])].filter(isDay);
  const [only] = possible;
  if (only === undefined) return trouble("date-does-not-exist", cell);
  return possible.length === 1
    ? trouble("date-not-iso", cell, { iso: only }, { kind: "use", use: only })
    : trouble("date-ambiguous", cell, { dayFirst, monthFirst }, { kind: "date-order", use: "day-month-year" });
}

function trouble(
  code: ImportProblem["code"],
  { line, column, text }: Cell,
  slots: ImportProblem["slots"] = {},
  mend: Mend | null = null,
): { readonly problem: ImportProblem } {
  return { problem: importProblem(code, { line, column, given: text, slots, ...(mend ? { mend } : {}) }) };
}
