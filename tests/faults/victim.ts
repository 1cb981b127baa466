/** A process that is killed without a word, and what it had said until then. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import path from "node:path";

export interface Victim {
  readonly child: ChildProcess;
  /** Whole lines it has said. */
  readonly lines: () => readonly string[];
  /** What it has said on its other stream: its errors. */
  readonly complaints: () => string;
  /** The last number it has said of a device; 0 before the first. */
  readonly acknowledged: (device: string) => number;
  /**
   * Ends it without a word; whether it was still at work, and not over already.
   * @throws Error when it broke by itself: it complained, or ended with another status than 0
   */
  readonly kill: () => Promise<boolean>;
  /** Waits until it has ended by itself; its status. */
  readonly end: () => Promise<number | null>;
}

/** Starts Node with these words. */
export function victim(args: readonly string[], env: NodeJS.ProcessEnv = {}): Victim {
  const child = spawn(process.execPath, args, { env: { ...process.env, ...env }, stdio: ["ignore", "pipe", "pipe"] });
  let [said, complained] = ["", ""];
  child.stdout.on("data", (piece: Buffer) => {
    said += piece.toString();
  });
  child.stderr.on("data", (piece: Buffer) => {
    complained += piece.toString();
  });
  const closed = once(child, "close"); // what it had said before is read to its end
  const lines = () =>
    said
      .slice(0, said.lastIndexOf("\n") + 1)
      .split("\n")
      .slice(0, -1);
  return {
    child,
    lines,
    complaints: () => complained,
    acknowledged(device) {
      const last = lines().findLast((line) => line.startsWith(`${device} `));
      return Number(last?.slice(device.length + 1) ?? 0);
    },
    async end() {
      await closed;
      return child.exitCode;
    },
    async kill() {
      if (!hasEnded(child)) child.kill("SIGKILL");
      await until(
        () => hasEnded(child),
        () => "a killed process does not end",
      );
      await closed;
      if (complained !== "" || (child.exitCode ?? 0) !== 0)
        throw new Error(`${args.join(" ")} broke by itself, status ${child.exitCode}: ${complained}`);
      return child.exitCode === null;
    },
  };
}

export const hasEnded = (child: ChildProcess): boolean => child.exitCode !== null || child.signalCode !== null;

export const works = (env: NodeJS.ProcessEnv, ...words: readonly string[]): Victim =>
  victim([path.join(import.meta.dirname, "keeps-working.ts"), ...words], env);

/** A command of the program. */
export const command = (env: NodeJS.ProcessEnv, ...words: readonly string[]): Victim =>
  victim([path.resolve("src", "views", "cli", "skepsis.ts"), ...words], env);

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

/**
 * Waits until something is so.
 * @throws Error with what is missed, in words, when it is not so after the time
 */
export async function until(
  isSo: () => boolean | Promise<boolean>,
  missed: () => string,
  milliseconds = 30_000,
): Promise<void> {
  const end = Date.now() + milliseconds;
  while (!(await isSo())) {
    if (Date.now() > end) throw new Error(`after ${milliseconds / 1000} s: ${missed()}`);
    await pause(2);
  }
}

/** Waits until processes have said what is looked for. */
export const untilSaid = (saying: readonly Victim[], isSo: (lines: readonly string[]) => boolean): Promise<void> =>
  until(
    () => saying.every((one) => isSo(one.lines())),
    () => saying.map((one) => `said ${one.lines().slice(-3).join(" ")}; complained ${one.complaints()}`).join("\n"),
  );
