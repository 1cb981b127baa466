/** A tidy table with its dictionary: each column says beside its name what stands in it, so that the two cannot part. */
import type { Casebook } from "../../casebook/index.ts";
import type { CellValue, ExportTable } from "../csv.ts";

/** What stands in a column, as Frictionless Table Schema names it. */
export type ColumnType = "string" | "integer" | "number" | "boolean" | "date";

export interface Column<Row> {
  /** snake_case, English. */
  readonly name: string;
  readonly type: ColumnType;
  /** What it is, with its unit; and what an empty cell means where that is not "not recorded". */
  readonly says: string;
  /** The words that can stand there, where they are few. */
  readonly words?: readonly string[];
  readonly of: (row: Row) => CellValue;
}

/** A table of the casebook: one row a thing. */
export interface TidyTable {
  readonly name: string;
  /** What a row is. */
  readonly says: string;
  /** Columns that together name a row; two rows share them only where two people's words stand side by side. */
  readonly key: readonly string[];
  readonly columns: readonly Omit<Column<never>, "of">[];
  readonly of: (casebook: Casebook) => ExportTable;
}

/** The table of these rows. */
export function tidy<Row>(table: {
  readonly name: string;
  readonly says: string;
  readonly key: readonly string[];
  readonly columns: readonly Column<Row>[];
  readonly rows: (casebook: Casebook) => readonly Row[];
}): TidyTable {
  const { name, says, key, columns, rows } = table;
  return {
    ...{ name, says, key, columns },
    of: (casebook) => ({
      name,
      columns: columns.map((column) => column.name),
      rows: rows(casebook).map((row) => columns.map((column) => column.of(row))),
    }),
  };
}
