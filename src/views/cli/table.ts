/** Prints answers for people: names on the left, values in columns, four digits of any number. */
import { answerFigures, cellText, plainName } from "../model/index.ts";

const digits = 4;

/** A number to four digits, whole numbers whole; null and missing as a dash. */
export const cell = (value: unknown): string => cellText(value, digits);

/** Rows under a heading, columns as wide as their widest cell; numbers to the right. */
export function table(columns: readonly string[], rows: readonly (readonly unknown[])[]): string {
  const texts = [columns.map(plainName), ...rows.map((row) => row.map(cell))];
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
  const { plain, tables } = answerFigures(answer, digits);
  const width = Math.max(0, ...plain.map(([name]) => name.length));
  const head = plain.map(([name, value]) => `${name.padEnd(width)}  ${value}\n`).join("");
  const parts = [head, ...tables.map(({ name, columns, rows }) => `${name}\n${table(columns, rows)}`)];
  return withNotices(parts.filter((part) => part !== "").join("\n"), { notices });
}

/** The text, then what to bear in mind, one line each. */
export function withNotices(text: string, body: object): string {
  const notices = "notices" in body && Array.isArray(body.notices) ? body.notices : [];
  if (notices.length === 0) return text;
  return `${text}\n${notices.map(({ message }) => `- ${message}\n`).join("")}`;
}
