/** A file somebody gives: told by what is in it, not by its name, whether it is a workbook, JSON or a table as text. */
import { strFromU8 } from "fflate";
import { isArchive } from "./copy-file.ts";
import { type ImportAnswer, importProblem } from "./import-problem.ts";
import { looksLikeJson, readJsonRows } from "./json-rows.ts";
import type { Mapping } from "./mapping.ts";
import { readTable, type Table } from "./table.ts";
import { readWorkbook } from "./workbook.ts";

/** Largest file that is looked at. */
export const mostMegabytes = 64;

/** How a file is to be read; the rest of a mapping does not matter for that. */
export type Reading = Pick<Mapping, "delimiter" | "decimal"> & { readonly sheet?: string | undefined };

/** The table in a file; UTF-8 where it is text. */
export function readGiven(given: Uint8Array | string, reading: Reading): ImportAnswer<Table> {
  const megabytes = Math.ceil(given.length / 1024 / 1024);
  if (megabytes > mostMegabytes)
    return {
      ok: false,
      problems: [importProblem("file-too-large", { line: 1, slots: { megabytes, most: mostMegabytes } })],
    };
  if (typeof given !== "string" && isArchive(given)) return readWorkbook(given, reading);
  const text = typeof given === "string" ? given : strFromU8(given);
  return looksLikeJson(text) ? readJsonRows(text, reading.decimal) : readTable(text, reading.delimiter);
}
