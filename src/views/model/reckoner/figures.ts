/**
 * Any answer as figures to read: single values first, each list of objects as a table under its name.
 *
 * @module views/model
 */
import type { Estimate } from "../../../units/index.ts";

export interface Figures {
  readonly plain: readonly (readonly [name: string, value: string])[];
  readonly tables: readonly {
    readonly name: string;
    readonly columns: readonly string[];
    readonly rows: readonly (readonly unknown[])[];
  }[];
}

/**
 * The figures of an answer. Values that are not there are left out. `digits`: of any number that is not whole.
 * @example
 * answerFigures({ bees: 59, rule: "SD1" }, 4).plain  // → [["bees","59"],["rule","SD1"]]
 */
export function answerFigures(answer: Readonly<Record<string, unknown>>, digits: number): Figures {
  const entries = Object.entries(answer).filter(
    ([, value]) => value !== null && value !== undefined && !(Array.isArray(value) && value.length === 0),
  );
  return {
    plain: entries
      .filter(([, value]) => !isRows(value))
      .map(([name, value]): readonly [string, string] => [plainName(name), cellText(value, digits)]),
    tables: entries.flatMap(([name, value]) => (isRows(value) ? [{ name: plainName(name), ...tableOf(value) }] : [])),
  };
}

/**
 * `daysInRange` as words.
 * @example
 * plainName("daysInRange")  // → "days in range"
 */
export const plainName = (name: string): string =>
  name.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replaceAll("-", " ");

/**
 * A value as text: whole numbers whole, others to so many digits; what is missing as a dash.
 * @example
 * cellText(0.123456, 4)  // → "0.1235"
 * cellText(0.999999, 4)  // → "just under 1"
 * cellText({ low: 1, high: null }, 4)  // → "low 1, high –"
 */
export function cellText(value: unknown, digits: number): string {
  const cell = (each: unknown): string => cellText(each, digits);
  if (value === null || value === undefined) return "–";
  if (typeof value === "number") return numberText(value, digits);
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value)) return value.map(cell).join(", ");
  if (isEstimate(value))
    return `${cell(value.value)} (${cell(value.low)} to ${cell(value.high)}; ${cell(100 * value.level)} % ${value.interval}, ${value.method}, rule ${value.rule})`;
  if (typeof value === "object")
    return Object.entries(value)
      .map(([name, each]) => `${plainName(name)} ${cell(each)}`)
      .join(", ");
  return String(value);
}

const isEstimate = (value: unknown): value is Estimate =>
  typeof value === "object" &&
  value !== null &&
  ["value", "low", "high", "level", "interval", "method"].every((name) => name in value);

/** Rounding makes no certainty of a share just below 1. */
function numberText(value: number, digits: number): string {
  if (Number.isInteger(value)) return String(value);
  const rounded = Number(value.toPrecision(digits));
  return rounded === 1 && value < 1 ? "just under 1" : String(rounded);
}

type Rows = readonly Readonly<Record<string, unknown>>[];

const isRows = (value: unknown): value is Rows =>
  Array.isArray(value) &&
  value.length > 0 &&
  value.every((row) => typeof row === "object" && row !== null && !Array.isArray(row));

function tableOf(list: Rows): { readonly columns: readonly string[]; readonly rows: readonly (readonly unknown[])[] } {
  const columns = [...new Set(list.flatMap((row) => Object.keys(row)))];
  return { columns: columns.map(plainName), rows: list.map((row) => columns.map((column) => row[column])) };
}
