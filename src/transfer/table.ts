/** Reads a table of comma-separated values and tells every row that is not whole. */
import { type ImportAnswer, type ImportProblem, importProblem } from "./import-problem.ts";

export interface TableRow {
  /** Line in the file where the row begins, 1 for the header. */
  readonly line: number;
  /** One text a column, as many as the header has. */
  readonly cells: readonly string[];
  /** What the file said that each cell is; left out where the file has texts alone. */
  readonly kinds?: readonly CellKind[];
}

/** What a file says of a cell: a text, a number, a number shown as a day, the value of a formula. */
export type CellKind = "text" | "number" | "date" | "formula";

/** Larger tables are refused rather than half read. */
export const mostRows = 200_000;
export const mostColumns = 1_000;
const longestCell = 32_767; // as much as a spreadsheet's cell holds

export interface Table {
  readonly header: readonly string[];
  readonly rows: readonly TableRow[];
}

export const delimiters = [",", ";", "\t"] as const;
export type Delimiter = (typeof delimiters)[number];

/**
 * The table in a text, header first; cells may be quoted, quotes inside are doubled, lines end as on any machine.
 *
 * Refused whole with every place named: a row with more or fewer cells than the header, a quote that never closes
 * or stands inside a cell, a file that ends in the middle of a row, text that is not text. Rows without any
 * content are skipped and counted.
 *
 * @source RFC 4180, read from memory; agrees with a general parser on random tables (test)
 *
 * @example
 * readTable('a,b\n1,"x, y"\n').value.rows[0].cells  // → ["1","x, y"]
 */
export function readTable(text: string, delimiter: Delimiter = ","): ImportAnswer<Table> {
  if (text.includes("\0")) return { ok: false, problems: [importProblem("not-a-text-file", { line: 1 })] };
  const problems: ImportProblem[] = [];
  const read = split(text.replace(/^\uFEFF/, ""), delimiter, problems);
  if (read === null) return { ok: false, problems };
  const { records, endsOpen, endsInLine } = read;
  const table = tableOf(records, { delimiter, endsInLine, problems });
  return endsOpen && table.ok ? { ok: false, problems } : table;
}

/** How records were read. */
interface Origin {
  /** Null where columns are parted by the file itself. */
  readonly delimiter: Delimiter | null;
  /** The file ends without a line end after its last row. */
  readonly endsInLine: boolean;
  /** What was met on the way; anything blocked refuses the table. */
  readonly problems: ImportProblem[];
}

/** The table that records make up, header first; refused whole when any of them is not whole. */
export function tableOf(
  records: readonly TableRow[],
  { delimiter, endsInLine, problems }: Origin,
): ImportAnswer<Table> {
  const [first, ...rest] = records;
  if (!first || first.cells.every((cell) => cell.trim() === ""))
    return { ok: false, problems: [...problems, importProblem("table-empty", { line: 1 })] };

  const header = first.cells.map((cell) => cell.trim());
  problems.push(...headerProblems(header, delimiter));
  const filled = rest.filter(({ cells }) => cells.some((cell) => cell.trim() !== ""));
  if (filled.length === 0) problems.push(importProblem("table-without-rows", { line: first.line }));
  const last = filled.at(-1);
  for (const row of filled) {
    if (row.cells.length === header.length) continue;
    const slots = { cells: row.cells.length, columns: header.length };
    if (row === last && endsInLine && row.cells.length < header.length)
      problems.push(importProblem("file-cut-short", { line: row.line, slots }));
    else
      problems.push(
        importProblem(row.cells.length < header.length ? "row-too-short" : "row-too-long", { line: row.line, slots }),
      );
  }
  for (const row of filled) {
    const garbled = row.cells.findIndex((cell) => cell.includes("\uFFFD"));
    if (garbled >= 0)
      problems.push(
        importProblem("text-garbled", { line: row.line, column: header[garbled] ?? null, given: row.cells[garbled] }),
      );
  }
  if (problems.some(({ severity }) => severity === "blocked")) return { ok: false, problems };
  const skipped = rest.length - filled.length;
  const notes = [
    ...(skipped > 0
      ? [importProblem("blank-rows-skipped", { severity: "noted", line: 1, slots: { rows: skipped } })]
      : []),
    ...(endsInLine && last
      ? [importProblem("no-line-end-at-end", { severity: "noted", line: last.line, given: last.cells.at(-1) })]
      : []),
  ];
  return { ok: true, value: { header, rows: filled }, problems: [...problems, ...notes] };
}

function headerProblems(header: readonly string[], delimiter: Delimiter | null): readonly ImportProblem[] {
  const problems: ImportProblem[] = [];
  const [only] = header;
  const other = delimiters.find((each) => each !== delimiter && only?.includes(each));
  if (delimiter !== null && header.length === 1 && other !== undefined)
    problems.push(
      importProblem("other-delimiter", {
        line: 1,
        given: only,
        slots: { delimiter, other },
        mend: { kind: "delimiter", use: other },
      }),
    );
  const met = new Set<string>();
  header.forEach((name, index) => {
    if (name === "") problems.push(importProblem("column-without-name", { line: 1, slots: { place: index + 1 } }));
    else if (met.has(name)) problems.push(importProblem("column-twice", { line: 1, column: name, given: name }));
    met.add(name);
  });
  return problems;
}

interface Splitting {
  readonly records: readonly TableRow[];
  /** The file ends inside quotes. */
  readonly endsOpen: boolean;
  /** The file ends without a line end after its last row. */
  readonly endsInLine: boolean;
}

/** Records of cells; problems with quotes are added to `problems` as they are met. Null, and told, when it is too large. */
function split(text: string, delimiter: Delimiter, problems: ImportProblem[]): Splitting | null {
  const records: TableRow[] = [];
  let cells: string[] = [];
  let cell = "";
  let line = 1;
  let began = 1;
  let state: "bare" | "quoted" | "closed" = "bare";
  const endCell = () => {
    cells.push(cell);
    cell = "";
    state = "bare";
  };
  const endRow = () => {
    endCell();
    records.push({ line: began, cells });
    cells = [];
    began = line + 1;
  };
  const quoteTrouble = (code: "quote-inside-cell" | "text-after-quote") =>
    problems.push(importProblem(code, { line: began, given: cell, slots: { place: cells.length + 1 } }));

  for (let at = 0; at < text.length; at++) {
    if (cell.length > longestCell) {
      problems.push(
        importProblem("text-too-long", { line: began, given: cell.slice(0, 40), slots: { longest: longestCell } }),
      );
      return null;
    }
    if (records.length > mostRows || cells.length > mostColumns) {
      problems.push(importProblem("table-too-large", { line: began, slots: { rows: mostRows, columns: mostColumns } }));
      return null;
    }
    const sign = text[at] as string;
    if (state === "quoted") {
      if (sign === '"' && text[at + 1] === '"') {
        cell += '"';
        at++;
      } else if (sign === '"') state = "closed";
      else {
        if (sign === "\n" || (sign === "\r" && text[at + 1] !== "\n")) line++;
        cell += sign;
      }
    } else if (sign === delimiter) endCell();
    else if (sign === "\n" || sign === "\r") {
      if (sign === "\r" && text[at + 1] === "\n") at++;
      endRow();
      line++;
      began = line;
    } else if (sign === '"' && state === "bare" && cell === "") state = "quoted";
    else {
      if (sign === '"' && state === "bare") quoteTrouble("quote-inside-cell");
      else if (state === "closed") {
        quoteTrouble("text-after-quote");
        state = "bare";
      }
      cell += sign;
    }
  }
  const endsOpen = (state as string) === "quoted";
  if (endsOpen) problems.push(importProblem("file-cut-in-quotes", { line: began, given: cell.slice(0, 40) }));
  const endsInLine = cell !== "" || cells.length > 0 || state !== "bare";
  if (endsInLine) endRow();
  return { records, endsOpen, endsInLine };
}
