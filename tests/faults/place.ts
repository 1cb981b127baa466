/** Where the records of a test are kept that other processes work on and are killed over: a folder, or a database. */
import { existsSync, mkdirSync, rmSync } from "node:fs";
import path from "node:path";
import SQLite from "better-sqlite3";
import { expect } from "vitest";
import { fold } from "../../src/casebook/index.ts";
import { inFolder, type Records, recordsBy, type ServerStore } from "../../src/storage/server.ts";
import { scratch } from "./count.ts";

export interface Place {
  /** Address of the database, else empty; and the folder, which a database leaves unused. */
  readonly database: string;
  readonly folder: string;
  /** The settings by which a process finds it. */
  readonly env: NodeJS.ProcessEnv;
  /** Statements that go past the store. */
  readonly run: (statements: string) => Promise<void>;
  /** Removes all records, and what a restore has left aside. */
  readonly empty: () => Promise<void>;
  /** Waits until the database has seen that killed processes are gone: it ends the statement it had from them first. */
  readonly quiet: () => Promise<void>;
  /** Whether a restore has left something that it was building up aside. */
  readonly hasAside: () => Promise<boolean>;
  readonly remove: () => void;
}

export const envOf = (database: string, folder: string) => ({ SKEPSIS_DATABASE: database, SKEPSIS_DATA: folder });

/** A new folder for records, in a folder of the test's. */
export async function folderPlace(parent = scratch("killed")): Promise<Place> {
  const folder = path.join(parent, "data");
  const file = path.join(folder, "main.sqlite");
  return {
    ...{ database: "", folder, env: envOf("", folder) },
    async run(statements) {
      mkdirSync(folder, { recursive: true });
      const raw = new SQLite(file);
      raw.exec(statements);
      raw.close();
    },
    empty: async () => rmSync(folder, { recursive: true, force: true }),
    quiet: async () => {}, // the locks of a file go with the process
    hasAside: async () => existsSync(`${file}.restoring`),
    remove: () => rmSync(path.dirname(folder), { recursive: true, force: true }),
  };
}

export function recordsIn({ database, folder }: Pick<Place, "database" | "folder">): Records {
  const records = recordsBy({ database, folder });
  if (!records.ok) throw new Error("no address");
  return records.value;
}

/** Work with the store of a place, opened and brought up to date for it, and closed. */
export async function inStore<T>(place: Place, work: (store: ServerStore) => Promise<T>): Promise<T> {
  const records = recordsIn(place);
  try {
    const store = await records.open("main");
    const done = await work(store);
    await store.close();
    return done;
  } finally {
    await records.close();
  }
}

/** Everything about a store that can be held against something else, a store that nothing ever disturbed among it. */
export async function isWhole(store: ServerStore): Promise<void> {
  const entries = await store.all();
  expect(await store.check()).toMatchObject({ isIntact: true, checked: entries.length });
  expect(await store.states()).toEqual(fold(entries));
  const { cursor } = await store.pull(Number.MAX_SAFE_INTEGER - 1, 1);
  expect(cursor).toBe(entries.length);
  const folder = scratch("undisturbed");
  const undisturbed = await inFolder(folder).open("main");
  await undisturbed.pushRestored(entries);
  expect(await store.fingerprint(cursor)).toBe(await undisturbed.fingerprint(cursor));
  await undisturbed.close();
  rmSync(folder, { recursive: true, force: true });
}
