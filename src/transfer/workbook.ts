/** Reads one sheet of a spreadsheet file (OOXML) as a table: what stands in the cells, never what a formula would make of it. */
import { strFromU8, unzipSync } from "fflate";
import { dayOfSerial, isDateFormat } from "./day-serial.ts";
import { type ImportAnswer, type ImportProblem, importProblem } from "./import-problem.ts";
import { type CellKind, mostColumns, mostRows, type Table, type TableRow, tableOf } from "./table.ts";
import { attributesOf, elementsOf, textIn } from "./xml.ts";

export interface WorkbookChoice {
  /** Name of the sheet; the first one when left out. */
  readonly sheet?: string | undefined;
  /** How the mapping writes decimals: numbers of the file are given in that spelling. */
  readonly decimal: "." | ",";
}

/** Most bytes that the parts of a file may unpack to: a small file that unpacks without end is refused. */
const mostUnpacked = 150 * 1024 * 1024;

/**
 * The table on a sheet: its first row that is not empty is the header, and `line` is the row as the spreadsheet shows it.
 * Dates are given as ISO, numbers without the noise of binary fractions, formulas by the value they were last shown
 * with, and each such cell is told. Refused: what is no workbook, one that unpacks too far, cells that show an error.
 *
 * @source ECMA-376 part 1, 18.3.1.4 (cells), 18.8.30 (number formats), 18.17.4.1 (dates), from memory
 */
export function readWorkbook(bytes: Uint8Array, { sheet, decimal }: WorkbookChoice): ImportAnswer<Table> {
  const unfit = (code: ImportProblem["code"], slots: ImportProblem["slots"] = {}): ImportAnswer<never> => ({
    ok: false,
    problems: [importProblem(code, { line: 1, slots })],
  });
  const opened = parts(bytes);
  if (opened === null) return unfit("not-a-workbook");
  if (opened === "too-large") return unfit("workbook-too-large", { most: mostUnpacked / 1024 / 1024 });
  const sheets = sheetsIn(opened);
  const chosen = sheet === undefined ? sheets[0] : sheets.find(({ name }) => name === sheet);
  if (!chosen)
    return sheets.length === 0
      ? unfit("not-a-workbook")
      : unfit("sheet-missing", { sheet: sheet ?? "", sheets: sheets.map(({ name }) => name).join(", ") });
  const cells = opened(chosen.path);
  if (cells === null) return unfit("not-a-workbook");
  const problems: ImportProblem[] = [];
  const book = {
    strings: stringsIn(opened("xl/sharedStrings.xml") ?? ""),
    dates: dateStylesIn(opened("xl/styles.xml") ?? ""),
    from1904: /<(\w+:)?workbookPr[^>]*\bdate1904="(1|true)"/.test(opened("xl/workbook.xml") ?? ""),
    decimal,
  };
  const rows = rowsIn(cells, book, problems);
  if (rows === null) return unfit("table-too-large", { rows: mostRows, columns: mostColumns });
  const [header] = rows;
  // A sheet ends where its cells end: shorter rows are filled up, and longer ones are told.
  const width = header ? header.cells.findLastIndex((cell) => cell.trim() !== "") + 1 : 0;
  const filled = rows.map((row) => filledUp(row, width));
  const table = tableOf(filled, { delimiter: null, endsInLine: false, problems });
  if (!table.ok || sheets.length < 2 || sheet !== undefined) return table;
  const others = sheets.slice(1).map(({ name }) => name);
  const note = importProblem("sheet-chosen", {
    severity: "noted",
    line: 1,
    slots: { sheet: chosen.name, others: others.join(", ") },
  });
  return { ...table, problems: [note, ...table.problems] };
}

function filledUp({ line, cells, kinds = [] }: TableRow, width: number): TableRow {
  const last = Math.max(width, cells.findLastIndex((cell) => cell.trim() !== "") + 1);
  return {
    line,
    cells: Array.from({ length: last }, (_, at) => cells[at] ?? ""),
    kinds: Array.from({ length: last }, (_, at) => kinds[at] ?? "text"),
  };
}

/** The text of a part by its path. */
type Parts = (path: string) => string | null;

function parts(bytes: Uint8Array): Parts | "too-large" | null {
  let unpacked = 0;
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        const isRead =
          /^xl\/(workbook|sharedStrings|styles|worksheets\/[^/]+)\.xml$/.test(name) ||
          /^xl\/_rels\/workbook\.xml\.rels$/.test(name);
        if (isRead) unpacked += originalSize;
        return isRead && unpacked <= mostUnpacked;
      },
    });
    if (unpacked > mostUnpacked) return "too-large";
    return (path) => (files[path] ? strFromU8(files[path]) : null);
  } catch {
    return null;
  }
}

interface Sheet {
  readonly name: string;
  readonly path: string;
}

function sheetsIn(opened: Parts): readonly Sheet[] {
  const paths = new Map(
    elementsOf(opened("xl/_rels/workbook.xml.rels") ?? "", "Relationship").map(({ head }) => {
      const { Id = "", Target = "" } = attributesOf(head);
      return [Id, Target.startsWith("/") ? Target.slice(1) : `xl/${Target}`];
    }),
  );
  return elementsOf(opened("xl/workbook.xml") ?? "", "sheet").flatMap(({ head }) => {
    const { name = "", "r:id": id = "" } = attributesOf(head);
    const path = paths.get(id);
    return path === undefined ? [] : [{ name, path }];
  });
}

/** The shared texts. A reading aid beside a text (`rPh`) holds a text of its own, which is not shown in the cell. */
const stringsIn = (xml: string): readonly string[] =>
  elementsOf(xml, "si").map(({ inside }) => {
    const aside = new Set(elementsOf(inside, "rPh").map((each) => each.inside));
    const shown = [...aside].reduce((left, each) => left.replace(each, ""), inside);
    return textIn(shown);
  });

/** By style number, whether it shows a number as a date. */
function dateStylesIn(xml: string): readonly boolean[] {
  const own = new Map(
    elementsOf(xml, "numFmt").map(({ head }) => {
      const { numFmtId = "", formatCode = "" } = attributesOf(head);
      return [Number(numFmtId), formatCode];
    }),
  );
  const [styles] = elementsOf(xml, "cellXfs");
  return elementsOf(styles?.inside ?? "", "xf").map(({ head }) => {
    const id = Number(attributesOf(head).numFmtId ?? 0);
    return isDateFormat(id, own.get(id));
  });
}

interface Book {
  readonly strings: readonly string[];
  readonly dates: readonly boolean[];
  readonly from1904: boolean;
  readonly decimal: "." | ",";
}

/** Null when there are too many. */
function rowsIn(xml: string, book: Book, problems: ImportProblem[]): readonly TableRow[] | null {
  const rows: TableRow[] = [];
  let line = 0;
  for (const { head, inside } of elementsOf(xml, "row")) {
    line = Number(attributesOf(head).r ?? line + 1);
    const cells: string[] = [];
    const kinds: CellKind[] = [];
    let at = -1;
    for (const cell of elementsOf(inside, "c")) {
      const { r = "", t = "n", s = "0" } = attributesOf(cell.head);
      at = r === "" ? at + 1 : columnOf(r);
      if (at < 0 || at >= mostColumns) return null;
      const read = cellOf(cell.inside, { type: t, isDate: book.dates[Number(s)] ?? false }, book);
      const place = { line, column: cells.length === 0 && rows.length === 0 ? null : (rows[0]?.cells[at] ?? null) };
      if (read.error !== null) problems.push(importProblem("cell-error", { ...place, given: read.error }));
      if (read.kind === "formula")
        problems.push(importProblem("formula-value-taken", { severity: "warned", ...place, given: read.text }));
      while (cells.length < at) {
        cells.push("");
        kinds.push("text");
      }
      cells[at] = read.text;
      kinds[at] = read.kind;
    }
    if (rows.length > 0 || cells.some((cell) => cell.trim() !== "")) rows.push({ line, cells, kinds });
    if (rows.length > mostRows) return null;
  }
  return rows;
}

/** 0 for A, 26 for AA. */
function columnOf(reference: string): number {
  const letters = /^[A-Z]{1,3}/.exec(reference)?.[0] ?? "";
  return [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
}

interface Read {
  readonly text: string;
  readonly kind: CellKind;
  readonly error: string | null;
}

function cellOf(xml: string, { type, isDate }: { readonly type: string; readonly isDate: boolean }, book: Book): Read {
  const [value] = elementsOf(xml, "v");
  const shown = value ? textIn(`<t>${value.inside}</t>`) : "";
  const isFormula = elementsOf(xml, "f").length > 0;
  const as = (text: string, kind: CellKind): Read => ({ text, kind: isFormula ? "formula" : kind, error: null });
  if (type === "e") return { text: "", kind: "text", error: shown };
  if (type === "s") return as(book.strings[Number(shown)] ?? "", "text");
  if (type === "inlineStr") return as(textIn(xml), "text");
  if (type === "str" || type === "d") return as(shown, "text");
  if (type === "b") return as(shown === "1" ? "TRUE" : "FALSE", "text");
  if (shown === "") return as("", "text");
  const number = Number(shown);
  if (!Number.isFinite(number)) return as(shown, "text");
  if (isDate) return as(dayOfSerial(number, book.from1904) ?? shown, "date");
  // What is shown is 15 digits at most; more of them are noise of the binary fraction.
  return as(String(Number(number.toPrecision(15))).replace(".", book.decimal), "number");
}
