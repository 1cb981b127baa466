/** Writes tables that spreadsheets can open and cannot be tricked by. */

export type CellValue = string | number | boolean | null;

/** A tidy table: one header, one row a thing. */
export interface ExportTable {
  /** Kebab-case; name of the file without its ending. */
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly CellValue[])[];
}

/**
 * The text as a cell that no spreadsheet runs: a quote is put before `= + - @` and before tab and return.
 * Numbers are not touched: they are written from numbers, not from text.
 *
 * @example
 * inertText("=1+1")  // → "'=1+1"
 * inertText("WB-07")  // → "WB-07"
 */
export const inertText = (text: string): string => (/^[=+\-@\t\r]/.test(text) ? `'${text}` : text);

/**
 * The table as comma-separated values: UTF-8 text, decimal points, ISO dates, one header row, CRLF line ends;
 * nothing recorded is an empty cell.
 *
 * @source RFC 4180, from memory
 *
 * @example
 * toCsv({ name: "t", columns: ["a"], rows: [["x, y"], [-1.5], [null]] })  // → "a\r\n\"x, y\"\r\n-1.5\r\n\r\n"
 */
export function toCsv({ columns, rows }: ExportTable): string {
  const line = (cells: readonly CellValue[]) => `${cells.map(cellText).join(",")}\r\n`;
  return line(columns) + rows.map(line).join("");
}

function cellText(value: CellValue): string {
  if (value === null) return "";
  if (typeof value !== "string") return String(value);
  const inert = inertText(value);
  return /[",\r\n]/.test(inert) || inert !== inert.trim() ? `"${inert.replaceAll('"', '""')}"` : inert;
}
