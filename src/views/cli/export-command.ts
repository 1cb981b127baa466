/** `skepsis export`: the whole journal as a text file that `verify` can check, or the casebook as tidy tables. */
import { writeFile } from "node:fs/promises";
import { encodeJournal } from "../../journal/index.ts";
import type { ServerStore } from "../../storage/server.ts";
import {
  dataPackage,
  type ExportTable,
  filesNamedBy,
  savedCopy,
  tidyTables,
  toCsv,
  toJson,
  zipped,
} from "../../transfer/index.ts";
import { type Problem, problem } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { project } from "./project.ts";
import { withRecords } from "./records.ts";
import { spreadsheetOf } from "./spreadsheet.ts";

const formats = ["journal", "copy", "csv", "json", "package", "xlsx"] as const;

const flags = [
  valueFlag(
    "format",
    "journal: every entry word for word, JSON Lines. copy: the journal with the photos and voice notes that it names, zipped, as the page opens it under Records. csv: one tidy table. json: all tidy tables. package: all as a data package with its dictionary, zipped. xlsx: all as sheets of a spreadsheet.",
    { type: "string", enum: formats, default: "journal" },
  ),
  valueFlag("table", "The table that csv writes.", { type: "string", enum: tidyTables.map(({ name }) => name) }),
  valueFlag(
    "output",
    "File to write; it must not be there yet. Left out: standard output. Needed for copy, package and xlsx.",
  ),
  programmeFlag,
];

export const exportCommand: Command = {
  name: "export",
  summary: "Write the journal as JSON Lines, or tables as CSV, JSON, data package or XLSX.",
  operand: null,
  flags,
  help: () =>
    handHelp(
      "export: write the journal as JSON Lines, or tables as CSV, JSON, data package or XLSX.",
      flags,
      "The first line of a journal tells how many entries follow, then one entry a line. Tables hold no\n" +
        "exact places, and no cell a spreadsheet would run. With --json the text goes to --output, which is\n" +
        "then needed, and standard output tells what was written. The photos of a copy hold no tags of\n" +
        "place, but they may show where they were taken, and voice notes may name people.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  const output = wordsOf(given, "output");
  const write = writerOf(given, io);
  const unfit = [programme, write].filter((each) => typeof each === "object" && "code" in each);
  if (output === null && (given.json || isBinary(given))) {
    const expected = given.json ? "a file, since --json takes standard output" : "a file, since this is no text";
    unfit.push(problem("flag-empty", "blocked", "--output", { expected }));
  }
  if (typeof programme !== "string" || typeof write !== "function" || unfit.length > 0)
    return reportUnfit(unfit as readonly Problem[], "export", given.json, io);
  const written = await withRecords(programme, io, write);
  if (!written.ok) return reportUnfit(written.problems, "export", given.json, io);
  const { content, count } = written.value;
  if (output === null) {
    io.out(String(content));
    return 0;
  }
  try {
    await writeFile(io.resolve(output), content, { flag: "wx" });
  } catch (error) {
    const reason = error instanceof Error && "code" in error ? String(error.code) : String(error);
    const expected = `a new file in a folder that is there (${reason})`;
    return reportUnfit(
      [problem("output-unwritable", "blocked", "--output", { given: output, expected })],
      "export",
      given.json,
      io,
    );
  }
  io.out(
    given.json
      ? `${JSON.stringify({ output, ...count })}\n`
      : `${Object.entries(count)
          .map(([name, number]) => `${number} ${name}`)
          .join(", ")} written to ${output}.\n`,
  );
  return 0;
}

interface Written {
  readonly content: string | Uint8Array;
  readonly count: Readonly<Record<string, number>>;
}

const isBinary = (given: Given): boolean => ["copy", "package", "xlsx"].includes(wordsOf(given, "format") ?? "");

/** What turns a store into a file, or what is wrong with the flags. */
function writerOf(given: Given, io: Io): ((store: ServerStore) => Promise<Written>) | Problem {
  const format = wordsOf(given, "format") ?? "journal";
  switch (format) {
    case "journal":
      return async (store) => {
        const entries = await store.all();
        return { content: encodeJournal(entries), count: { entries: entries.length } };
      };
    case "copy":
      return async (store) => {
        const entries = await store.all();
        const files = [];
        for (const sha256 of filesNamedBy(entries)) {
          const file = await store.files.read(sha256);
          if (file) files.push({ sha256, bytes: new Uint8Array(file.bytes) });
        }
        const content = savedCopy(encodeJournal(entries), files);
        return { content, count: { entries: entries.length, files: files.length } };
      };
    case "json":
      return async (store) => {
        const made = await tablesOf(store);
        return { content: toJson(made), count: counted(made) };
      };
    case "xlsx":
      return async (store) => {
        const made = await tablesOf(store);
        return { content: await spreadsheetOf(made), count: counted(made) };
      };
    case "package":
      return async (store) => {
        const casebook = await store.states();
        const files = dataPackage(casebook, tidyTables, {
          created: io.now().toISOString(),
          version: project().version,
        });
        return { content: zipped(files), count: counted(tidyTables.map((table) => table.of(casebook))) };
      };
    case "csv":
      return oneTable(wordsOf(given, "table"));
    default:
      return problem("field-unfit", "blocked", "--format", { given: format, expected: `one of ${formats.join(", ")}` });
  }
}

/** What writes one table as CSV, or that there is none of that name. */
function oneTable(name: string | null): ((store: ServerStore) => Promise<Written>) | Problem {
  const table = tidyTables.find((each) => each.name === name);
  if (table === undefined) {
    const expected = `one of ${tidyTables.map((each) => each.name).join(", ")}`;
    return problem("field-unfit", "blocked", "--table", { given: name, expected });
  }
  return async (store) => {
    const made = table.of(await store.states());
    return { content: toCsv(made), count: { rows: made.rows.length } };
  };
}

async function tablesOf(store: ServerStore): Promise<readonly ExportTable[]> {
  const casebook = await store.states();
  return tidyTables.map((table) => table.of(casebook));
}

const counted = (tables: readonly ExportTable[]): Written["count"] =>
  Object.fromEntries(tables.map(({ name, rows }) => [name, rows.length]));
