/** Tables as the sheets of a spreadsheet, each cell of its own kind; texts that would run as formulas are text. */
import writeExcelFile from "write-excel-file/node";
import type { ExportTable } from "../../transfer/index.ts";

/** The bytes of an XLSX file with one sheet a table. A text is written as text, so that no formula runs. */
export async function spreadsheetOf(tables: readonly ExportTable[]): Promise<Uint8Array> {
  const sheets = tables.map(({ name, columns, rows }) => ({
    sheet: name,
    stickyRowsCount: 1,
    data: [
      columns.map((value) => ({ value, type: String, fontWeight: "bold" as const })),
      ...rows.map((row) => row.map((value) => (typeof value === "string" ? { value, type: String } : value))),
    ],
  }));
  return writeExcelFile(sheets).toBuffer();
}
