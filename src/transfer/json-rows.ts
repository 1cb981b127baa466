/** Reads a list of flat objects as a table: JSON as other programs write rows. */
import { type ImportAnswer, type ImportProblem, importProblem } from "./import-problem.ts";
import { type CellKind, mostColumns, mostRows, type Table, type TableRow, tableOf } from "./table.ts";

/** Whether a text begins as JSON does. */
export const looksLikeJson = (text: string): boolean => /^\uFEFF?\s*(\[\s*(\{|\])|\{\s*")/.test(text.slice(0, 2000));

/**
 * The rows of a list of objects, or of the only list in an object. Columns are all names in the order they are first
 * met; `line` counts the header as 1. Null and a missing name are nothing recorded. A value that is no text, number or
 * truth is refused by row and column.
 *
 * @example
 * readJsonRows('[{"a":1},{"b":"x"}]', ".").value.rows[1].cells  // → ["","x"]
 */
export function readJsonRows(text: string, decimal: "." | ","): ImportAnswer<Table> {
  const unfit = (code: ImportProblem["code"], slots: ImportProblem["slots"] = {}): ImportAnswer<never> => ({
    ok: false,
    problems: [importProblem(code, { line: 1, slots })],
  });
  let json: unknown;
  try {
    json = JSON.parse(text.replace(/^\uFEFF/, ""));
  } catch (trouble) {
    return unfit("json-unreadable", { reason: (trouble as Error).message.slice(0, 200).toWellFormed() });
  }
  const list = listIn(json);
  if (list === null) return unfit("json-without-rows");
  if (list.length > mostRows) return unfit("table-too-large", { rows: mostRows, columns: mostColumns });
  const places = new Map<string, number>();
  const problems: ImportProblem[] = [];
  for (const [index, row] of list.entries()) {
    if (typeof row !== "object" || row === null || Array.isArray(row)) {
      problems.push(importProblem("json-row-not-flat", { line: index + 2, given: row }));
      continue;
    }
    for (const name of Object.keys(row)) if (!places.has(name)) places.set(name, places.size);
    if (places.size > mostColumns) return unfit("table-too-large", { rows: mostRows, columns: mostColumns });
  }
  const header: TableRow = { line: 1, cells: [...places.keys()] };
  const rows = list.map((row, index) => rowOf(row, { line: index + 2, places, decimal }, problems));
  return tableOf([header, ...rows], { delimiter: null, endsInLine: false, problems });
}

/** The list itself, or the only one that an object holds. */
function listIn(json: unknown): readonly unknown[] | null {
  if (Array.isArray(json)) return json;
  const lists = typeof json === "object" && json !== null ? Object.values(json).filter(Array.isArray) : [];
  return lists.length === 1 ? (lists[0] as readonly unknown[]) : null;
}

interface At {
  readonly line: number;
  readonly places: ReadonlyMap<string, number>;
  readonly decimal: "." | ",";
}

function rowOf(row: unknown, { line, places, decimal }: At, problems: ImportProblem[]): TableRow {
  const cells: string[] = Array.from({ length: places.size }, () => "");
  const kinds: CellKind[] = Array.from({ length: places.size }, () => "text");
  for (const [name, value] of Object.entries(
    typeof row === "object" && row !== null && !Array.isArray(row) ? row : {},
  )) {
    const at = places.get(name) ?? 0;
    if (typeof value === "string") cells[at] = value.toWellFormed();
    else if (typeof value === "boolean") cells[at] = value ? "TRUE" : "FALSE";
    else if (typeof value === "number" && Number.isFinite(value)) {
      cells[at] = String(value).replace(".", decimal);
      kinds[at] = "number";
    } else if (value !== null)
      problems.push(
        importProblem("json-row-not-flat", { line, column: name.slice(0, 200).toWellFormed(), given: typeof value }),
      );
  }
  return { line, cells, kinds };
}
