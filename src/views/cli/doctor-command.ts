/** `skepsis doctor`: whether the service can be relied on here, point by point, and what to do where it cannot. */
import { readdirSync, statfsSync, statSync } from "node:fs";
import path from "node:path";
import type { Given } from "./arguments.ts";
import { type Command, type ExitStatus, reportUnfit } from "./command.ts";
import { handHelp } from "./hand-flags.ts";
import type { Io } from "./io.ts";
import { dataFolder } from "./project.ts";
import { programmesOf, RecordsUnusable, withStore } from "./records.ts";
import { newestBackup } from "./scheduled-backups.ts";
import { table } from "./table.ts";

/** One point: good, worth a look, or in the way. */
export interface Finding {
  readonly check: string;
  readonly state: "good" | "look" | "bad";
  readonly found: string;
  /** What to do; empty where all is well. */
  readonly advice: string;
}

export const doctorCommand: Command = {
  name: "doctor",
  summary: "Look whether the service can be relied on here: disk, database, clock, backups, members.",
  operand: null,
  flags: [],
  help: () =>
    handHelp(
      "doctor: look whether the service can be relied on here.",
      [],
      "Looks at the version of Node, the folder of the records and who may read it, room on the disk,\n" +
        "the database and whether it is whole, the clock, the age of each programme's newest backup, and\n" +
        "whether there is an administrator where others can reach the service. Reads the same settings as\n" +
        "serve; changes no record. Exit status 1 when something is in the way.\n",
    ),
  run,
};

async function run(given: Given, io: Io): Promise<ExitStatus> {
  if (given.positionals.length > 0) return reportUnfit([], "doctor", given.json, io);
  const findings = [
    nodeVersion(process.versions.node),
    ...(io.env.SKEPSIS_DATABASE ? [] : folderOf(dataFolder(io))),
    ...(await wayOf(io)),
    ...(await databaseOf(io)),
    ...(await backupsOf(io)),
  ];
  const isWell = findings.every(({ state }) => state !== "bad");
  if (given.json) io.out(`${JSON.stringify({ isWell, findings })}\n`);
  else
    io.out(
      table(
        ["check", "", "found", "what to do"],
        findings.map(({ check, state, found, advice }) => [check, state, found, advice]),
      ),
    );
  return isWell ? 0 : 1;
}

const finding = (check: string, state: Finding["state"], found: string, advice = ""): Finding => ({
  ...{ check, state, found, advice },
});

/** The service refuses anything older. */
const oldestNode = 24;

export function nodeVersion(version: string): Finding {
  const isNew = Number(version.split(".")[0]) >= oldestNode;
  return finding("Node", isNew ? "good" : "bad", version, isNew ? "" : `use Node ${oldestNode} or newer`);
}

/** Room that must be left on the disk, in bytes: SQLite copies a file when it tidies it. A choice of ours. */
const [littleRoom, tooLittleRoom] = [1024 ** 3, 100 * 1024 ** 2];

/** The folder of the records: who may read it, and room on its disk. */
export function folderOf(folder: string): readonly Finding[] {
  const found = statSync(folder, { throwIfNoEntry: false });
  if (!found) return [finding("folder", "look", "not there yet", "it is made with the first entry")];
  if (!found.isDirectory()) return [finding("folder", "bad", "no folder", "name another one by SKEPSIS_DATA")];
  const { bavail, bsize } = statfsSync(folder);
  const room = Number(bavail) * Number(bsize);
  const state = room < tooLittleRoom ? "bad" : room < littleRoom ? "look" : "good";
  const megabytes = `${Math.floor(room / 1024 ** 2)} MiB left`;
  return [readersOf(folder, found.mode), finding("disk", state, megabytes, state === "good" ? "" : "make room")];
}

/** Others' bits of the folder and of the files in it. Windows has none: there the folder's own list decides. */
function readersOf(folder: string, mode: number): Finding {
  if (process.platform === "win32") return finding("permissions", "look", "not told", "let only this account in");
  const open = readdirSync(folder)
    .filter((name) => /\.sqlite(-wal|-shm)?$/.test(name))
    .filter((name) => ((statSync(path.join(folder, name), { throwIfNoEntry: false })?.mode ?? 0) & 0o077) !== 0);
  if ((mode & 0o077) === 0) return finding("permissions", "good", "this account alone");
  return finding(
    "permissions",
    "bad",
    `other accounts of this machine may enter${open.length > 0 ? ` and read ${open.join(", ")}` : ""}`,
    `chmod 700 ${folder}`,
  );
}

/** Whether others could read along between service and database. */
async function wayOf(io: Io): Promise<readonly Finding[]> {
  const address = io.env.SKEPSIS_DATABASE;
  const { wayTo, withoutPassword } = await import("../../storage/server.ts");
  if (!address || withoutPassword(address) === null) return [];
  const check = "way to the database";
  const way = wayTo(address);
  if (way === "this-machine") return [finding(check, "good", "on this machine")];
  if (way === "tls") return [finding(check, "good", "by TLS, to the name in its certificate")];
  const isMeant = io.env.SKEPSIS_DATABASE_TLS === "off";
  return [
    finding(
      check,
      isMeant ? "look" : "bad",
      "others on the way could read along",
      isMeant
        ? "SKEPSIS_DATABASE_TLS=off says that something else keeps it from them; better sslmode=verify-full"
        : "write sslmode=verify-full at the end of SKEPSIS_DATABASE",
    ),
  ];
}

/** Minutes by which the newest entry may lie ahead of the clock. The exchange warns at the same. */
const aheadMinutes = 10;

/** The database of each programme: whether it opens, is whole, is told the time, and who may come in. */
async function databaseOf(io: Io): Promise<readonly Finding[]> {
  try {
    const programmes = await programmesOf(io);
    if (programmes.length === 0) return [finding("records", "look", "no programme yet"), guardOf(io, false)];
    const each = await Promise.all(programmes.map((programme) => programmeFindings(programme, io)));
    return [
      ...each.flatMap(({ findings }) => findings),
      guardOf(
        io,
        each.some(({ isGuarded }) => isGuarded),
      ),
    ];
  } catch (trouble) {
    if (!(trouble instanceof RecordsUnusable)) throw trouble;
    const reason = String(trouble.problem.slots.reason ?? trouble.problem.expected ?? trouble.problem.code);
    return [finding("records", "bad", reason, "see that the database answers and may be opened")];
  }
}

/** Entries taken in last whose clock is looked at. */
const newestLooked = 1000;

async function programmeFindings(programme: string, io: Io) {
  return withStore(programme, io, async (store) => {
    const [report, { position }] = [await store.check(), await store.accounts()];
    const apart = report.keptApart + report.fromLost;
    const { entries } = await store.pull(Math.max(0, position - newestLooked), newestLooked);
    // What is kept apart has a line of its own.
    const places = report.faults.length + report.damage.length;
    const [isGuarded, members] = [await store.members.hasAdministrator(), await store.members.members()];
    const present = members.filter(({ endedAt }) => endedAt === null).length;
    const newest = entries.reduce((last, { header }) => Math.max(last, Date.parse(header.recordedAt)), 0);
    const ahead = Math.round((newest - io.now().getTime()) / 60_000);
    const findings = [
      places === 0
        ? finding(`records of ${programme}`, "good", `${report.checked} entries, whole`)
        : finding(
            `records of ${programme}`,
            "bad",
            `${places} places not as they should be`,
            `skepsis verify --programme ${programme}`,
          ),
      ...rightsOf(programme, report.rights?.unproven.length ?? 0),
      ...(apart > 0
        ? [
            finding(
              `kept apart of ${programme}`,
              "look",
              `${apart} entries of a lost or copied device`,
              `skepsis apart list --programme ${programme}, then settle each; or say that the device is back`,
            ),
          ]
        : []),
      ahead > aheadMinutes
        ? finding(
            "clock",
            "look",
            `an entry of ${programme} lies ${ahead} minutes ahead`,
            "set the clock of this machine, or of the device that wrote it",
          )
        : finding("clock", "good", `no entry of ${programme} lies ahead of it`),
      finding(`members of ${programme}`, "good", present === 0 ? "none: open on this machine" : `${present}`),
    ];
    return { findings, isGuarded };
  });
}

/** What may be so by an act that nobody can read any more, and may be forged. */
const rightsOf = (programme: string, unproven: number): readonly Finding[] =>
  unproven === 0
    ? []
    : [
        finding(
          `rights of ${programme}`,
          "look",
          `${unproven} not checkable: an act that cannot be read may account for each`,
          `skepsis verify --programme ${programme} names them: see that each is meant`,
        ),
      ];

/** Whether others could come in where nobody tells them apart. */
function guardOf(io: Io, hasAdministrator: boolean): Finding {
  const { SKEPSIS_HOST: host = "127.0.0.1", SKEPSIS_ADDRESS: address } = io.env;
  const isOwn = !address && /^(localhost|\[?::1\]?|127(\.\d{1,3}){3})$/.test(host || "127.0.0.1");
  if (isOwn) return finding("reach", "good", "this machine alone");
  if (!hasAdministrator)
    return finding("reach", "bad", "others, and there is no administrator", "skepsis member add --role administrator");
  return address?.startsWith("https://")
    ? finding("reach", "good", `others, at ${address}`)
    : finding("reach", "bad", "others, and not over https", "set SKEPSIS_ADDRESS=https://…");
}

/** A backup a day is made when a folder is named; two days without one are too many. A choice of ours. */
const oldestBackupHours = 48;

/** The backups of each programme: a fresh one of another says nothing of this one. */
async function backupsOf(io: Io): Promise<readonly Finding[]> {
  const given = io.env.SKEPSIS_BACKUP;
  if (!given)
    return [finding("backups", "look", "none are made by the service", "set SKEPSIS_BACKUP, or make them yourself")];
  const folder = io.resolve(given);
  if (!statSync(folder, { throwIfNoEntry: false })?.isDirectory())
    return [finding("backups", "bad", "the folder is not there", "make it, or name another by SKEPSIS_BACKUP")];
  const names = readdirSync(folder);
  try {
    const programmes = await programmesOf(io);
    return programmes.map((programme) => backupOf(programme, newestBackup(names, programme), io));
  } catch (trouble) {
    if (!(trouble instanceof RecordsUnusable)) throw trouble;
    return [finding("backups", "look", "not told: the programmes are not known", "see the records first")];
  }
}

function backupOf(programme: string, newest: number | null, io: Io): Finding {
  const [check, command] = [`backups of ${programme}`, `skepsis backup --programme ${programme} --output FOLDER`];
  if (newest === null) return finding(check, "bad", "none yet", command);
  const hours = Math.max(0, Math.floor((io.now().getTime() - newest) / 3_600_000));
  const found = `the newest is ${hours} hours old`;
  return hours > oldestBackupHours
    ? finding(check, "bad", found, `${command}; is the service running?`)
    : finding(check, "good", found);
}
