/** The command line: finds the verb, reads its words, runs it, and turns an error of ours into words and exit status 1. */
import { unknownVerb, verbs } from "../../reasoning/index.ts";
import { apartCommand } from "./apart-command.ts";
import { readArguments } from "./arguments.ts";
import { backupCommand } from "./backup-command.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { doctorCommand } from "./doctor-command.ts";
import { experienceCommand } from "./experience-command.ts";
import { exportCommand } from "./export-command.ts";
import { overview } from "./help.ts";
import { importCommand } from "./import-command.ts";
import { type Io, processIo } from "./io.ts";
import { memberCommand } from "./member-command.ts";
import { nightlyCommand } from "./nightly-command.ts";
import { project } from "./project.ts";
import { reasoningCommand } from "./reasoning-command.ts";
import { RecordsUnusable } from "./records.ts";
import { restoreCommand } from "./restore-command.ts";
import { serveCommand } from "./serve-command.ts";
import { verifyCommand } from "./verify-command.ts";

/** Every command, reasoning first. */
export const commands: readonly Command[] = [
  ...verbs.map(reasoningCommand),
  experienceCommand,
  importCommand,
  exportCommand,
  verifyCommand,
  backupCommand,
  nightlyCommand,
  restoreCommand,
  serveCommand,
  memberCommand,
  apartCommand,
  doctorCommand,
];

export async function main(argv: readonly string[], io: Io = processIo()): Promise<ExitStatus> {
  const [name = "help", ...rest] = argv;
  if (["help", "--help", "-h"].includes(name)) return help(rest, io);
  if (name === "--version") {
    io.out(`${project().version}\n`);
    return 0;
  }
  const command = commands.find((each) => each.name === name);
  const json = rest.includes("--json");
  if (!command) return reportUnfit([unknownVerb(name, names())], "", json, io);
  const given = readArguments(rest, command.flags, command.operand !== null, command.onlyInJson);
  if (given.help) return help([name], io);
  if (given.problems.length > 0) return reportUnfit(given.problems, name, json, io);
  try {
    return await command.run(given, io);
  } catch (error) {
    if (error instanceof RecordsUnusable) return reportUnfit([error.problem], name, json, io);
    io.err(`${name} stopped because of an error of ours. Nothing more was written.\n`);
    io.err(`${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`);
    return 1;
  }
}

const names = (): readonly string[] => [...commands.map((each) => each.name), "help"];

function help([name]: readonly string[], io: Io): ExitStatus {
  if (name === undefined || name === "help" || name.startsWith("-")) {
    io.out(overview(commands, project().version));
    return 0;
  }
  const command = commands.find((each) => each.name === name);
  if (!command) return reportUnfit([unknownVerb(name, names())], "", false, io);
  io.out(command.help());
  return 0;
}
