/** A world for tests of the command line: what was said is kept, files come from a map or from the disk. */
import { createReadStream } from "node:fs";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { Readable } from "node:stream";
import { firstBytes, type Io } from "./io.ts";
import { main } from "./main.ts";

export interface Said {
  readonly status: number;
  readonly out: string;
  readonly err: string;
  /** The one JSON value on standard output. */
  readonly json: () => Record<string, unknown>;
}

/** Runs one command line; `stdin` is what `--input -` reads, `interruptAt` the progress in 100 at which it is ended. */
export async function said(
  argv: readonly string[],
  world: {
    readonly stdin?: string;
    readonly env?: Io["env"];
    readonly folder?: string;
    readonly interruptAt?: number;
    /** How often chance was drawn before. */
    readonly drawn?: number;
  } = {},
): Promise<Said> {
  const [out, err]: [string[], string[]] = [[], []];
  let drawn = world.drawn ?? 0;
  let interrupt: (() => void) | null = null;
  const resolve = (file: string) => path.resolve(world.folder ?? ".", file);
  const status = await main(argv, {
    out: (text) => out.push(text),
    err: (text) => {
      err.push(text);
      if (Number(/(\d+) of 100/.exec(text)?.[1] ?? 0) >= (world.interruptAt ?? 101)) interrupt?.();
    },
    read: async (file) => (file === "-" ? (world.stdin ?? "") : readFile(resolve(file), "utf8")),
    readBytes: (file, most) =>
      firstBytes(file === "-" ? Readable.from([world.stdin ?? ""]) : createReadStream(resolve(file)), most),
    resolve,
    env: world.env ?? {},
    isTerminal: world.interruptAt !== undefined,
    now: () => new Date("2026-03-09T10:00:00.000Z"),
    whenInterrupted: (stop) => {
      interrupt = stop;
      return () => {
        interrupt = null;
      };
    },
    random: (bytes) => {
      drawn += 1;
      return new Uint8Array(bytes).map((_, index) => (drawn * 31 + index * 7) % 256);
    },
  });
  const text = out.join("");
  return { status, out: text, err: err.join(""), json: () => JSON.parse(text) };
}
