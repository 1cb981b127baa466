/** Backups by the clock of the service: one a day for each programme, the newest ones kept. */
import { spawn } from "node:child_process";
import { readdirSync, rmSync, statSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";

const dayMilliseconds = 24 * 60 * 60 * 1000;
const lookMilliseconds = 60 * 60 * 1000;

/** A backup that this tool named, with its programme and instant. */
interface Kept {
  readonly name: string;
  readonly programme: string;
  readonly at: number;
}

/** What the name of a backup says; null for any other file. */
function keptFrom(name: string): Kept | null {
  const match = /^skepsis-(.+)-(\d{4}-\d\d-\d\d)T(\d\d)(\d\d)(\d\d)Z\.zip$/.exec(name);
  if (!match) return null;
  const [, programme = "", day, hour, minute, second] = match;
  return { name, programme, at: Date.parse(`${day}T${hour}:${minute}:${second}Z`) };
}

const newestFirst = (names: readonly string[], programme: string): readonly Kept[] =>
  names
    .flatMap((name) => keptFrom(name) ?? [])
    .filter((kept) => kept.programme === programme)
    .sort((one, other) => other.at - one.at);

/** Instant of a programme's newest backup, by its name; null when there is none. */
export const newestBackup = (names: readonly string[], programme: string): number | null =>
  newestFirst(names, programme)[0]?.at ?? null;

/** Programmes whose newest backup is a day old or older, or that have none. */
export const programmesDue = (
  names: readonly string[],
  programmes: readonly string[],
  now: number,
): readonly string[] =>
  programmes.filter(
    (programme) => now - (newestBackup(names, programme) ?? Number.NEGATIVE_INFINITY) >= dayMilliseconds,
  );

/** Backups of a programme beyond the `keep` newest. Files with other names are never among them. */
export const beyondKept = (names: readonly string[], programme: string, keep: number): readonly string[] =>
  newestFirst(names, programme)
    .slice(keep)
    .map(({ name }) => name);

export interface Schedule {
  /** Folder of the backups; it must be there. */
  readonly folder: string;
  /** Newest backups that are kept of each programme, 1 or more. */
  readonly keep: number;
  readonly programmes: () => Promise<readonly string[]>;
  readonly now: () => number;
  readonly say: (text: string) => void;
  /** Makes one; true when it is whole. */
  readonly make: (programme: string, folder: string) => Promise<boolean>;
}

/** One look: what is due is made, and only after a whole new one the oldest go. */
export async function lookForDue({ folder, keep, programmes, now, say, make }: Schedule): Promise<void> {
  for (const name of leftOver(folder, now())) rmSync(path.join(folder, name), { force: true });
  for (const programme of programmesDue(readdirSync(folder), await programmes(), now())) {
    const isWhole = await make(programme, folder);
    say(isWhole ? `Backed up: ${programme}.` : `The backup of ${programme} failed; see above. Older ones are kept.`);
    if (!isWhole) continue;
    for (const name of beyondKept(readdirSync(folder), programme, keep)) rmSync(path.join(folder, name));
  }
}

/** What backups that were cut off a day ago or earlier left behind. */
const leftOver = (folder: string, now: number): readonly string[] =>
  readdirSync(folder)
    .filter((name) => /^skepsis-.+\.zip\.part-\d+$/.test(name))
    .filter(
      (name) => now - (statSync(path.join(folder, name), { throwIfNoEntry: false })?.mtimeMs ?? now) >= dayMilliseconds,
    );

/** Looks now and every hour until `stop`; a look that breaks is told and the next one comes. */
export function backUpByTheClock(schedule: Schedule, stop: AbortSignal): void {
  let running = false;
  const look = async () => {
    if (running) return;
    running = true;
    try {
      await lookForDue(schedule);
    } catch (error) {
      schedule.say(`The backups in ${schedule.folder} could not be looked at: ${(error as Error).message}`);
    } finally {
      running = false;
    }
  };
  const timer = setInterval(() => void look(), lookMilliseconds);
  timer.unref();
  stop.addEventListener("abort", () => clearInterval(timer));
  void look();
}

/** The command line's entrance beside this file: of the sources, or of the built program. */
const entrance = (): string =>
  fileURLToPath(new URL(import.meta.url.endsWith(".ts") ? "./skepsis.ts" : "./skepsis.js", import.meta.url));

/** Makes a backup in a process of its own, so that nobody waits for it. */
export const inOwnProcess = (programme: string, folder: string): Promise<boolean> =>
  new Promise((resolve) => {
    const words = [entrance(), "backup", "--programme", programme, "--output", folder];
    const child = spawn(process.execPath, words, { stdio: ["ignore", "ignore", "inherit"] });
    child.on("error", () => resolve(false));
    child.on("exit", (code) => resolve(code === 0));
  });
