/** `skepsis backup`: everything on record into one archive, read back and checked before it counts. */
import { closeSync, fsyncSync, openSync, renameSync, rmSync, statSync, writeSync } from "node:fs";
import path from "node:path";
import type { BackupManifest } from "../../storage/server.ts";
import { type Problem, problem, type Result } from "../../units/index.ts";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp, programmeFlag, programmeOf, valueFlag, wordsOf } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { withRecords } from "./records.ts";

const flags = [
  valueFlag("output", "File to write, or a folder to write one into that is named by programme and instant."),
  programmeFlag,
];

export const backupCommand: Command = {
  name: "backup",
  summary: "Write everything on record into one archive, and check it.",
  operand: null,
  flags,
  help: () =>
    handHelp(
      "backup: write everything on record into one archive, and check it.",
      flags,
      "Members, passkeys, devices, grants, photos and voice notes are in it. Sessions and invitations are\n" +
        "not, so that what was ended does not come back with an old archive. It holds the hashes of\n" +
        "passwords: keep it where only you can read it, on another machine, and try skepsis restore there\n" +
        "now and then. The service may run meanwhile: the archive holds what was there when it began. It is\n" +
        "read back and checked, chain by chain, before it gets its name; a backup that is cut off leaves no\n" +
        "file of that name.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  const programme = programmeOf(given);
  const output = wordsOf(given, "output");
  const unfit: readonly Problem[] = [
    ...(typeof programme === "string" ? [] : [programme]),
    ...(output === null ? [problem("flag-empty", "blocked", "--output", { expected: "a file or a folder" })] : []),
  ];
  if (typeof programme !== "string" || output === null) return reportUnfit(unfit, "backup", given.json, io);
  const created = io.now().toISOString();
  const file = fileFor(io.resolve(output), programme, created);
  const made = await backUp(programme, io, { file, created });
  if (!made.ok) return reportUnfit(made.problems, "backup", given.json, io);
  const { entries, apart } = made.value;
  const beside = besideEntries(made.value);
  io.out(
    given.json
      ? `${JSON.stringify({ output: file, ...made.value })}\n`
      : `${entries} entries${apart > 0 ? `, ${apart} kept apart` : ""}${beside === "" ? "" : `, ${beside}`} written to ${file}, read back and whole.\n`,
  );
  return 0;
}

const counted = (count: number, one: string): readonly string[] =>
  count === 0 ? [] : [`${count} ${count === 1 ? one : `${one}s`}`];

/** What a backup carries beside entries, in words; empty when nothing. */
export const besideEntries = ({ accounts, files }: BackupManifest): string =>
  [...counted(accounts?.members ?? 0, "member"), ...counted(files?.length ?? 0, "file")].join(" and ");

/** The file itself, or one in the folder that is named by programme and instant. */
export function fileFor(output: string, programme: string, created: string): string {
  const isFolder = statSync(output, { throwIfNoEntry: false })?.isDirectory() ?? false;
  return isFolder ? path.join(output, backupName(programme, created)) : output;
}

/** `skepsis-main-2026-04-02T080000Z.zip`: names in the order of their instants. */
export const backupName = (programme: string, created: string): string =>
  `skepsis-${programme}-${created.slice(0, 19).replaceAll(":", "")}Z.zip`;

/** Times that a backup is begun when something is erased while it is written. */
const mostTries = 5;

/**
 * Writes a backup of a programme's records under a name of its own, reads it back, and gives it its name only then.
 * A file of that name that is there already is not touched.
 */
export async function backUp(
  programme: string,
  io: Io,
  { file, created }: { readonly file: string; readonly created: string },
): Promise<Result<BackupManifest>> {
  const { ErasedMeanwhile, readBackup, writeBackup } = await import("../../storage/server.ts");
  const partial = `${file}.part-${process.pid}`;
  const unwritable = (reason: string): Result<never> => ({
    ok: false,
    problems: [
      problem("output-unwritable", "blocked", "--output", {
        given: file,
        expected: `a new file in a folder that is there (${reason})`,
      }),
    ],
  });
  if (statSync(file, { throwIfNoEntry: false })) return unwritable("EEXIST");
  /** Written from the beginning; null when something was erased meanwhile. */
  const write = async () => {
    rmSync(partial, { force: true });
    const handle = openSync(partial, "wx", 0o600);
    try {
      const written = await withRecords(programme, io, (store) =>
        writeBackup(store, created, (chunk) => void writeSync(handle, chunk)),
      );
      fsyncSync(handle);
      return written;
    } catch (trouble) {
      if (trouble instanceof ErasedMeanwhile) return null;
      throw trouble;
    } finally {
      closeSync(handle);
    }
  };
  try {
    let written = await write();
    for (let again = 1; written === null && again < mostTries; again += 1) written = await write();
    if (written === null)
      throw new ErasedMeanwhile(`something was erased while each of ${mostTries} backups was written`);
    if (!written.ok) return written;
    const read = readBackup(partial);
    if (!read.ok) return read;
    renameSync(partial, file);
    return read;
  } catch (error) {
    const { code } = error as { readonly code?: unknown };
    if (typeof code === "string") return unwritable(code);
    throw error;
  } finally {
    rmSync(partial, { force: true });
  }
}
