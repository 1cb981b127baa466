/** What the command line needs of the world around it; a test hands in its own. */
import { randomBytes } from "node:crypto";
import { createReadStream } from "node:fs";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { text } from "node:stream/consumers";

export interface Io {
  /** Answers. With `--json` exactly one JSON value comes this way. */
  readonly out: (text: string) => void;
  /** Progress and trouble. */
  readonly err: (text: string) => void;
  /** A file as text; `-` is what comes in on standard input. */
  readonly read: (file: string) => Promise<string>;
  /** The first bytes of a file, one more than `most` at most: so that one that is too large is not read to its end. */
  readonly readBytes: (file: string, most: number) => Promise<Uint8Array>;
  /** A relative path, seen from where the person stands. */
  readonly resolve: (file: string) => string;
  readonly env: Readonly<Record<string, string | undefined>>;
  readonly isTerminal: boolean;
  readonly now: () => Date;
  readonly random: (bytes: number) => Uint8Array;
  /** Calls `stop` when the person asks the program to end; a second time ends it. Returns what forgets it. */
  readonly whenInterrupted: (stop: () => void) => () => void;
}

/** The world of a running process. */
export function processIo(): Io {
  const resolve = (file: string) => path.resolve(file);
  return {
    out: (words) => process.stdout.write(words),
    err: (words) => process.stderr.write(words),
    read: (file) => (file === "-" ? text(process.stdin) : readFile(resolve(file), "utf8")),
    readBytes: (file, most) => firstBytes(file === "-" ? process.stdin : createReadStream(resolve(file)), most),
    resolve,
    env: process.env,
    isTerminal: process.stderr.isTTY === true,
    now: () => new Date(),
    random: (bytes) => randomBytes(bytes),
    whenInterrupted: (stop) => {
      process.once("SIGINT", stop);
      return () => process.off("SIGINT", stop);
    },
  };
}

/** At most one byte more than `most` of a stream; the rest is not waited for. */
export async function firstBytes(stream: AsyncIterable<unknown>, most: number): Promise<Uint8Array> {
  const pieces: Buffer[] = [];
  let length = 0;
  for await (const piece of stream) {
    const bytes = Buffer.from(piece as Buffer);
    pieces.push(bytes);
    length += bytes.length;
    if (length > most) break;
  }
  return Buffer.concat(pieces).subarray(0, most + 1);
}
