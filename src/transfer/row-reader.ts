/** Reads one row of a table by the names of its columns. */
import { type Cell, isInert, plainCell, type Reading, readText, type Writing } from "./cells.ts";
import type { ImportProblem } from "./import-problem.ts";
import type { Mapping } from "./mapping.ts";
import type { Table, TableRow } from "./table.ts";

/** Reads one row's cells by column name. */
export interface RowReader {
  readonly row: TableRow;
  readonly mapping: Mapping;
  readonly writing: Writing;
  /** Null when the cell is empty or a word for nothing recorded. */
  readonly cell: (column: string) => Cell | null;
  readonly keep: <T>(reading: Reading<T>) => T | undefined;
  readonly tell: (problem: ImportProblem) => void;
}

/** The reader of one row; problems met on the way are kept. */
export function rowReader(of: {
  readonly table: Table;
  readonly row: TableRow;
  readonly mapping: Mapping;
  readonly writing: Writing;
  readonly problems: ImportProblem[];
}): RowReader {
  const { table, row, mapping, writing, problems } = of;
  return {
    row,
    mapping,
    writing,
    cell: (column) => {
      const at = table.header.indexOf(column);
      const given = row.cells[at] ?? "";
      const kind = row.kinds?.[at];
      const text = plainCell(given);
      if (text === "" || mapping.missing.includes(text)) return null;
      return { line: row.line, column, text, ...(isInert(given) ? { inert: true } : {}), ...(kind ? { kind } : {}) };
    },
    keep: (reading) => {
      if ("value" in reading) return reading.value;
      // One cell may be read for several entries: its trouble is told once.
      const { code, line, column } = reading.problem;
      const ofRow = problems.slice(problems.findLastIndex((each) => each.line !== line) + 1);
      if (!ofRow.some((each) => each.code === code && each.column === column)) problems.push(reading.problem);
      return undefined;
    },
    tell: (problem) => problems.push(problem),
  };
}

/** A cell that must be there; an empty one is read as empty text, which its reading tells. */
export const requiredCell = (reader: RowReader, column: string): Cell =>
  reader.cell(column) ?? { line: reader.row.line, column, text: "" };

/** The name of the row's apiary: that of its column, or of the one place that all rows are of; undefined where told. */
export function placeIn(reader: RowReader, { column, places }: Mapping["apiary"]): string | undefined {
  if (column === undefined) return Object.keys(places)[0];
  return reader.keep(readText(requiredCell(reader, column), 200));
}
