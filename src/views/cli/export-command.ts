/** `skepsis export`: the whole journal as a text file that any program can read and `verify` can check. */
import { writeFile } from "node:fs/promises";
import { encodeJournal } from "../../journal/index.ts";
import { problem } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { isThere, noRecords, placeOf, withStore } from "./records.ts";

const flags = [
  programmeFlag,
  valueFlag("output", "File to write; it must not be there yet. Left out: standard output."),
];

export const exportCommand: Command = {
  name: "export",
  summary: "Write the journal as JSON Lines.",
  operand: null,
  flags,
  help: () =>
    handHelp(
      "export: write the journal as JSON Lines.",
      flags,
      "The first line tells how many entries follow, then one entry a line, word for word. With --json the\n" +
        "journal goes to --output, which is then needed, and standard output tells what was written.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  const output = wordsOf(given, "output");
  if (typeof programme !== "string") return reportUnfit([programme], "export", given.json, io);
  if (given.json && output === null) {
    const needed = problem("flag-empty", "blocked", "--output", {
      expected: "a file for the journal, since --json takes standard output",
    });
    return reportUnfit([needed], "export", true, io);
  }
  const place = placeOf(programme, io);
  if (!isThere(place)) return reportUnfit([noRecords(place)], "export", given.json, io);
  const entries = await withStore(place, (store) => store.all());
  const text = encodeJournal(entries);
  if (output === null) {
    io.out(text);
    return 0;
  }
  try {
    await writeFile(io.resolve(output), text, { flag: "wx" });
  } catch (error) {
    const reason = error instanceof Error && "code" in error ? String(error.code) : String(error);
    const unwritable = problem("output-unwritable", "blocked", "--output", {
      given: output,
      expected: `a new file in a folder that is there (${reason})`,
    });
    return reportUnfit([unwritable], "export", given.json, io);
  }
  io.out(
    given.json
      ? `${JSON.stringify({ output, entries: entries.length })}\n`
      : `${entries.length} entries written to ${output}.\n`,
  );
  return 0;
}
