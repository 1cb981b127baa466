/** A process that is killed without a word, and what it had said until then. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import path from "node:path";

export interface Victim {
  readonly child: ChildProcess;
  /** Whole lines it has said. */
  readonly lines: () => readonly string[];
  /** The last number it has said; 0 before the first. */
  readonly acknowledged: () => number;
  /** Ends it without a word; nothing happens when it is over already. */
  readonly kill: () => Promise<void>;
  /** Whether it ended before it was killed. */
  readonly isOver: () => boolean;
}

/** Starts Node with these words; its errors are ours. */
export function victim(args: readonly string[], env: NodeJS.ProcessEnv = {}): Victim {
  const child = spawn(process.execPath, args, {
    env: { ...process.env, ...env },
    stdio: ["ignore", "pipe", "inherit"],
  });
  let said = "";
  child.stdout.on("data", (piece: Buffer) => {
    said += piece.toString();
  });
  const lines = () =>
    said
      .slice(0, said.lastIndexOf("\n") + 1)
      .split("\n")
      .slice(0, -1);
  const isOver = () => child.exitCode !== null || child.signalCode !== null;
  return {
    child,
    lines,
    acknowledged: () => Number(lines().findLast((line) => /^\d+$/.test(line)) ?? 0),
    isOver,
    async kill() {
      if (isOver()) return;
      const gone = once(child, "close"); // what it had said before is read to its end
      child.kill("SIGKILL");
      await gone;
    },
  };
}

export const works = (...words: readonly string[]): Victim =>
  victim([path.join(import.meta.dirname, "keeps-working.ts"), ...words]);

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
