/** The service as a process of its own, on a database, and the few requests that tests send it. */
import { spawn } from "node:child_process";
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Entry } from "../../src/journal/index.ts";
import type { Page, PushReply } from "../../src/storage/index.ts";
import { hasEnded, until } from "../faults/victim.ts";

export interface ServiceProcess {
  readonly address: string;
  /** Everything it has said, on both streams. */
  readonly said: () => string;
  /** Whether it has ended, by itself or not. */
  readonly isOver: () => boolean;
  /** Ends it without a word. */
  readonly kill: () => Promise<void>;
  /** Asks it to stop, and waits. */
  readonly stop: () => Promise<void>;
}

/** Starts a service on this database, or in this folder, at a free port; it is ready when this resolves. */
export async function startService(
  database: string,
  folder = mkdtempSync(path.join(tmpdir(), "skepsis-unused-")),
): Promise<ServiceProcess> {
  const env = {
    ...process.env,
    SKEPSIS_PORT: "0",
    SKEPSIS_HOST: "127.0.0.1",
    SKEPSIS_DATA: folder,
    SKEPSIS_DATABASE: database,
  };
  const child = spawn(process.execPath, ["src/views/cli/skepsis.ts", "serve"], {
    env,
    stdio: ["ignore", "pipe", "pipe"],
  });
  let said = "";
  for (const stream of [child.stdout, child.stderr])
    stream.on("data", (piece: Buffer) => {
      said += piece.toString();
    });
  const ended = async (signal: NodeJS.Signals): Promise<void> => {
    if (hasEnded(child)) return;
    child.kill(signal);
    await until(
      () => hasEnded(child),
      () => `the service does not end after ${signal}: ${said}`,
    );
  };
  const address = () => /http:\/\/\S+/.exec(said)?.[0];
  await until(
    () => {
      if (hasEnded(child)) throw new Error(`the service did not start: ${said}`);
      return address() !== undefined;
    },
    () => `the service does not start: ${said}`,
  );
  return {
    address: address() ?? "",
    ...{ said: () => said, isOver: () => hasEnded(child) },
    ...{ kill: () => ended("SIGKILL"), stop: () => ended("SIGTERM") },
  };
}

const entriesOf = (address: string): string => `${address}/api/programmes/main/entries`;

/** Pushes, and gives back status and reply. */
export async function push(
  address: string,
  entries: readonly Entry[],
): Promise<{ readonly status: number; readonly text: string; readonly reply: PushReply }> {
  const response = await fetch(entriesOf(address), {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ entries }),
  });
  const text = await response.text();
  return { status: response.status, text, reply: JSON.parse(text) as PushReply };
}

/** Everything, page by page. */
export async function pullAll(address: string, limit = 40): Promise<readonly Entry[]> {
  const seen: Entry[] = [];
  for (let cursor = 0; ; ) {
    const response = await fetch(`${entriesOf(address)}?cursor=${cursor}&limit=${limit}`);
    const page = (await response.json()) as Page;
    seen.push(...page.entries);
    cursor = page.cursor;
    if (!page.more) return seen;
  }
}
