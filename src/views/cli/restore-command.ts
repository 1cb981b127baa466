/** `skepsis restore`: a backup into a place without records, whole or not at all. */
import { readFileSync } from "node:fs";
import { problem } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, switchFlag } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withStore } from "./records.ts";

const flags = [switchFlag("check", "Only read the backup and check that it is whole; write nothing.")];

export const restoreCommand: Command = {
  name: "restore",
  summary: "Put a backup into a place without records.",
  operand: "FILE",
  flags,
  help: () =>
    handHelp(
      "restore FILE: put a backup into a place without records.",
      flags,
      "The records go to the programme that the backup is of, in the data folder (SKEPSIS_DATA). Where\n" +
        "there are records of that programme already nothing is done: move them away first. Afterwards\n" +
        "heads and casebook are held against what the backup says. Devices send what came after it again.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const [file, ...more] = given.positionals;
  if (file === undefined || more.length > 0) {
    const unfit = problem("argument-unexpected", "blocked", null, { given: more[0] ?? "", expected: "one file" });
    return reportUnfit([unfit], "restore", given.json, io);
  }
  const { readBackup, restoreBackup } = await import("../../storage/server.ts");
  const bytes = bytesOf(io.resolve(file));
  if (bytes === null) {
    const unreadable = problem("input-unreadable", "blocked", "FILE", {
      given: file,
      expected: "a file that can be read",
    });
    return reportUnfit([unreadable], "restore", given.json, io);
  }
  const read = readBackup(bytes);
  if (!read.ok) return reportUnfit(read.problems, "restore", given.json, io);
  const { manifest } = read.value;
  if (!given.flags.some(({ flag }) => flag.name === "check")) {
    const restored = await withStore(manifest.programme, io, (store) => restoreBackup(read.value, store));
    if (!restored.ok) return reportUnfit(restored.problems, "restore", given.json, io);
  }
  const { programme, entries, created } = manifest;
  io.out(
    given.json
      ? `${JSON.stringify(manifest)}\n`
      : `${entries} entries of the programme ${programme}, backed up ${created}, are whole${given.flags.length > 0 ? "" : " and restored"}.\n`,
  );
  return 0;
}

function bytesOf(file: string): Uint8Array | null {
  try {
    return readFileSync(file);
  } catch {
    return null;
  }
}
