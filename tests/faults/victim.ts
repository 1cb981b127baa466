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
  /** Ends it without a word; nothing happens when it is over already. */
  readonly kill: () => Promise<void>;
  /** Waits until it has ended by itself; its status. */
  readonly end: () => Promise<number | null>;
  /** Whether it ended before it was killed. */
  readonly isOver: () => boolean;
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
  const isOver = () => child.exitCode !== null || child.signalCode !== null;
  return {
    child,
    lines,
    complaints: () => complained,
    acknowledged(device) {
      const last = lines().findLast((line) => line.startsWith(`${device} `));
      return Number(last?.slice(device.length + 1) ?? 0);
    },
    isOver,
    async end() {
      await closed;
      return child.exitCode;
    },
    async kill() {
      if (!isOver()) child.kill("SIGKILL");
      await closed;
    },
  };
}

export const works = (env: NodeJS.ProcessEnv, ...words: readonly string[]): Victim =>
  victim([path.join(import.meta.dirname, "keeps-working.ts"), ...words], env);

/** A command of the program. */
export const command = (env: NodeJS.ProcessEnv, ...words: readonly string[]): Victim =>
  victim([path.resolve("src", "views", "cli", "skepsis.ts"), ...words], env);

export const pause = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Waits until something is so, or the time is over; whether it became so. */
export async function until(isSo: () => boolean, milliseconds = 60_000): Promise<boolean> {
  const end = Date.now() + milliseconds;
  while (!isSo()) {
    if (Date.now() > end) return false;
    await pause(2);
  }
  return true;
}
