/** The casebook as tidy tables, and all of them as one JSON text. */
import type { ExportTable } from "../csv.ts";
import { colonies } from "./apiaries.ts";
import { bees, specimens } from "./bench.ts";
import { cases } from "./cases.ts";
import { findings } from "./findings.ts";
import { outcomes } from "./outcomes.ts";
import { tests } from "./tests.ts";
import type { TidyTable } from "./tidy.ts";

export type { Column, ColumnType, TidyTable } from "./tidy.ts";

/** Every table, what is asked first. Exact places and the words of callers are in none. */
export const tidyTables: readonly TidyTable[] = [cases, colonies, findings, tests, specimens, bees, outcomes];

/** Tables as one JSON text: rows as objects, the same names and values as the CSV files. */
export function toJson(tables: readonly ExportTable[]): string {
  const named = tables.map(({ name, columns, rows }) => [
    name,
    rows.map((row) => Object.fromEntries(columns.map((column, index) => [column, row[index] ?? null]))),
  ]);
  return `${JSON.stringify({ format: "skepsis-tables", schema: 1, tables: Object.fromEntries(named) }, null, 2)}\n`;
}
