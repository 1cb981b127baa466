/** The shape of the service's database: one SQLite file for each programme, so that programmes cannot mix. */
import SQLite from "better-sqlite3";
import { Kysely, type Selectable, SqliteDialect } from "kysely";
import type { EntryId, Hash } from "../journal/index.ts";

export interface Tables {
  /** Header and body word for word as JSON text, beside what they are looked up by. */
  entries: {
    /** Given under the lock of the counter, so that order of position is order of commit. */
    position: number;
    id: EntryId;
    device: string;
    seq: number;
    root: string;
    kind: string;
    hash: Hash;
    header: string;
    body: string | null;
  };
  heads: { device: string; seq: number; hash: Hash };
  /** The kept state of a root: which fold made it, and up to which position. */
  states: { root: string; fold_version: number; position: number; part: string };
  erased: { id: EntryId; root: string };
  quarantine: { hash: Hash; entry: string };
  counters: { programme: string; position: number };
}

export type EntryRow = Selectable<Tables["entries"]>;
export type Database = Kysely<Tables>;

const shape = `
  create table if not exists counters (programme text primary key, position integer not null) strict;
  create table if not exists entries (
    position integer primary key,
    id text not null unique,
    device text not null,
    seq integer not null,
    root text not null,
    kind text not null,
    hash text not null,
    header text not null,
    body text,
    unique (device, seq)
  ) strict;
  create index if not exists entries_by_root on entries (root, position);
  create index if not exists entries_by_kind on entries (kind, position);
  create table if not exists heads (device text primary key, seq integer not null, hash text not null) strict;
  create table if not exists states (
    root text primary key,
    fold_version integer not null,
    position integer not null,
    part text not null
  ) strict;
  create index if not exists states_by_position on states (position);
  create table if not exists erased (id text not null, root text not null, primary key (id, root)) strict;
  create table if not exists quarantine (hash text primary key, entry text not null) strict;
`;

/** The file is not the one that was meant. */
export class OtherProgramme extends Error {
  override name = "OtherProgramme";
}

/** An open file: queries by Kysely, settings of SQLite by the driver. */
export interface OpenFile {
  readonly database: Database;
  /** Moves what was written into the main file, so that erased text does not linger in the log beside it. */
  checkpoint(): void;
  close(): Promise<void>;
}

/**
 * Opens or makes the file of a programme.
 * @throws OtherProgramme when the file belongs to another programme; an error of SQLite when it is none
 */
export function openFile(file: string, programme: string): OpenFile {
  const driver = new SQLite(file);
  try {
    return opened(driver, programme);
  } catch (trouble) {
    driver.close();
    throw trouble;
  }
}

function opened(driver: SQLite.Database, programme: string): OpenFile {
  driver.pragma("busy_timeout = 10000");
  driver.pragma("journal_mode = WAL");
  driver.pragma("synchronous = FULL"); // a commit is acknowledged to devices: it must be on the disk
  driver.pragma("secure_delete = ON"); // an erased body is overwritten, not only unlinked
  driver.exec(shape);
  driver
    .prepare("insert into counters (programme, position) select ?, 0 where not exists (select 1 from counters)")
    .run(programme);
  const owner = driver.prepare("select programme from counters").pluck().get();
  if (owner !== programme) throw new OtherProgramme(`the file holds the programme ${String(owner)}, not ${programme}`);
  driver.pragma("busy_timeout = 0"); // from here on `whenFree` waits, so that the service goes on answering
  const database = new Kysely<Tables>({ dialect: new SqliteDialect({ database: driver }) });
  return {
    database,
    checkpoint: () => void driver.pragma("wal_checkpoint(TRUNCATE)"),
    close: () => database.destroy(),
  };
}

const patienceMilliseconds = 10_000;

/** Does the work when no other process is writing; waits for up to ten seconds. */
export async function whenFree<T>(work: () => Promise<T>): Promise<T> {
  const began = Date.now();
  for (;;) {
    try {
      return await work();
    } catch (trouble) {
      const isBusy = String((trouble as { readonly code?: unknown }).code).startsWith("SQLITE_BUSY");
      if (!isBusy || Date.now() - began > patienceMilliseconds) throw trouble;
      await new Promise((resolve) => setTimeout(resolve, 2 + Math.random() * 10));
    }
  }
}
