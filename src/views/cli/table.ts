/** Prints answers for people: names on the left, values in columns, four digits of any number. */

import type { Estimate } from "../../units/index.ts";

/** A number to four digits, whole numbers whole; null and missing as a dash. */
export function cell(value: unknown): string {
  if (value === null || value === undefined) return "–";
  if (typeof value === "number") return Number.isInteger(value) ? String(value) : String(Number(value.toPrecision(4)));
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (Array.isArray(value)) return value.map(cell).join(", ");
  if (isEstimate(value))
    return `${cell(value.value)} (${cell(value.low)} to ${cell(value.high)}; ${cell(100 * value.level)} % ${value.interval}, ${value.method})`;
  if (typeof value === "object")
    return Object.entries(value)
      .map(([name, each]) => `${words(name)} ${cell(each)}`)
      .join(", ");
  return String(value);
}

const isEstimate = (value: unknown): value is Estimate =>
  typeof value === "object" &&
  value !== null &&
  ["value", "low", "high", "level", "method"].every((name) => name in value);

/** `daysInRange` → `days in range`. */
export const words = (name: string): string =>
  name.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`).replaceAll("-", " ");

/** Rows under a heading, columns as wide as their widest cell; numbers to the right. */
export function table(columns: readonly string[], rows: readonly (readonly unknown[])[]): string {
  const texts = [columns.map(words), ...rows.map((row) => row.map(cell))];
  const widths = columns.map((_, index) => Math.max(...texts.map((row) => (row[index] ?? "").length)));
  const right = columns.map((_, index) => rows.length > 0 && rows.every((row) => typeof row[index] === "number"));
  return texts
    .map((row) =>
      row
        .map((text, index) => (right[index] ? text.padStart(widths[index] ?? 0) : text.padEnd(widths[index] ?? 0)))
        .join("  ")
        .trimEnd(),
    )
    .map((line) => `${line}\n`)
    .join("");
}

/** Any answer: plain values first, then each list of objects as a table under its name, then what to bear in mind. */
export function answerForPeople({ notices, ...answer }: Readonly<Record<string, unknown>>): string {
  const entries = Object.entries(answer).filter(
    ([, value]) => value !== null && !(Array.isArray(value) && value.length === 0),
  );
  const plain = entries.filter(([, value]) => !isTable(value));
  const width = Math.max(0, ...plain.map(([name]) => words(name).length));
  const head = plain.map(([name, value]) => `${words(name).padEnd(width)}  ${cell(value)}\n`).join("");
  const tables = entries.flatMap(([name, value]) => (isTable(value) ? [`${words(name)}\n${rowsOf(value)}`] : []));
  return withNotices([head, ...tables].filter((part) => part !== "").join("\n"), { notices });
}

/** The text, then what to bear in mind, one line each. */
export function withNotices(text: string, body: object): string {
  const notices = "notices" in body && Array.isArray(body.notices) ? body.notices : [];
  if (notices.length === 0) return text;
  return `${text}\n${notices.map(({ message }) => `- ${message}\n`).join("")}`;
}

function rowsOf(list: readonly Readonly<Record<string, unknown>>[]): string {
  const columns = [...new Set(list.flatMap((row) => Object.keys(row)))];
  return table(
    columns,
    list.map((row) => columns.map((column) => row[column])),
  );
}

const isTable = (value: unknown): value is readonly Readonly<Record<string, unknown>>[] =>
  Array.isArray(value) &&
  value.length > 0 &&
  value.every((row) => typeof row === "object" && row !== null && !Array.isArray(row));
