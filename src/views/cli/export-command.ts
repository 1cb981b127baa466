/** `skepsis export`: the whole journal as a text file that `verify` can check, or the casebook as tidy tables. */
import { writeFile } from "node:fs/promises";
import { encodeJournal } from "../../journal/index.ts";
import type { ServerStore } from "../../storage/server.ts";
import { findingsTable, testsTable, toCsv, toJson } from "../../transfer/index.ts";
import { type Problem, problem } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withRecords } from "./records.ts";

const tables = { findings: findingsTable, tests: testsTable } as const;
const formats = ["journal", "csv", "json"] as const;

const flags = [
  valueFlag("format", "journal: every entry word for word, JSON Lines. csv: one tidy table. json: all tidy tables.", {
    type: "string",
    enum: formats,
    default: "journal",
  }),
  valueFlag("table", "The table that csv writes.", { type: "string", enum: Object.keys(tables) }),
  valueFlag("output", "File to write; it must not be there yet. Left out: standard output."),
  programmeFlag,
];

export const exportCommand: Command = {
  name: "export",
  summary: "Write the journal as JSON Lines, or tidy tables as CSV or JSON.",
  operand: null,
  flags,
  help: () =>
    handHelp(
      "export: write the journal as JSON Lines, or tidy tables as CSV or JSON.",
      flags,
      "The first line of a journal tells how many entries follow, then one entry a line. Tables hold no\n" +
        "exact places, and no cell a spreadsheet would run. With --json the text goes to --output, which is\n" +
        "then needed, and standard output tells what was written.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  const output = wordsOf(given, "output");
  const write = writerOf(given);
  const unfit = [programme, write].filter((each) => typeof each === "object" && "code" in each);
  if (given.json && output === null)
    unfit.push(
      problem("flag-empty", "blocked", "--output", { expected: "a file, since --json takes standard output" }),
    );
  if (typeof programme !== "string" || typeof write !== "function" || unfit.length > 0)
    return reportUnfit(unfit as readonly Problem[], "export", given.json, io);
  const written = await withRecords(programme, io, write);
  if (!written.ok) return reportUnfit(written.problems, "export", given.json, io);
  const { text, count } = written.value;
  if (output === null) {
    io.out(text);
    return 0;
  }
  try {
    await writeFile(io.resolve(output), text, { flag: "wx" });
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
  readonly text: string;
  readonly count: Readonly<Record<string, number>>;
}

/** What turns a store into text, or what is wrong with the flags. */
function writerOf(given: Given): ((store: ServerStore) => Promise<Written>) | Problem {
  const format = wordsOf(given, "format") ?? "journal";
  const name = wordsOf(given, "table");
  switch (format) {
    case "journal":
      return async (store) => {
        const entries = await store.all();
        return { text: encodeJournal(entries), count: { entries: entries.length } };
      };
    case "json":
      return async (store) => {
        const casebook = await store.states();
        const made = Object.values(tables).map((make) => make(casebook));
        return { text: toJson(made), count: Object.fromEntries(made.map((each) => [each.name, each.rows.length])) };
      };
    case "csv": {
      if (name === null || !isTable(name))
        return problem("field-unfit", "blocked", "--table", {
          given: name,
          expected: `one of ${Object.keys(tables).join(", ")}`,
        });
      return async (store) => {
        const made = tables[name](await store.states());
        return { text: toCsv(made), count: { rows: made.rows.length } };
      };
    }
    default:
      return problem("field-unfit", "blocked", "--format", { given: format, expected: `one of ${formats.join(", ")}` });
  }
}

const isTable = (name: string): name is keyof typeof tables => Object.hasOwn(tables, name);
