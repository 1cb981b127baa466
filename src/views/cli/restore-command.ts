/** `skepsis restore`: a backup into a place without records, whole or not at all. */
import type { BackupManifest } from "../../storage/server.ts";
import { blocked, problem, type Result } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { besideEntries } from "./backup-command.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, switchFlag } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { onRecords } from "./records.ts";

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
        "heads and casebook are held against what the backup says. Members sign in again. Devices send\n" +
        "again what came after it.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const [file, ...more] = given.positionals;
  if (file === undefined || more.length > 0) {
    const unfit = problem("argument-unexpected", "blocked", null, { given: more[0] ?? "", expected: "one file" });
    return reportUnfit([unfit], "restore", given.json, io);
  }
  const place = io.resolve(file);
  const unreadable = blocked(
    problem("input-unreadable", "blocked", "FILE", { given: file, expected: "a file that can be read" }),
  );
  const { readBackup, restoreBackup } = await import("../../storage/server.ts");
  let read: Result<BackupManifest>;
  try {
    read = readBackup(place);
  } catch {
    read = unreadable;
  }
  if (read.ok && !given.flags.some(({ flag }) => flag.name === "check"))
    read = await onRecords(read.value.programme, io, (records) =>
      restoreBackup(place, records, io.now().toISOString()),
    );
  if (!read.ok) return reportUnfit(read.problems, "restore", given.json, io);
  const manifest = read.value;
  const { programme, entries, created } = manifest;
  const beside = besideEntries(manifest);
  io.out(
    given.json
      ? `${JSON.stringify(manifest)}\n`
      : `${entries} entries of the programme ${programme}${beside === "" ? "" : `, with ${beside}`}, backed up ${created}, are whole${given.flags.length > 0 ? "" : " and restored"}.\n`,
  );
  return 0;
}
