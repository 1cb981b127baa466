/** The tables of the service's store: the same in SQLite and in PostgreSQL. */
import type { Kysely, Selectable, Transaction } from "kysely";
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
  erased: { id: EntryId; root: string };
  quarantine: { hash: Hash; entry: string };
  /** One row: whose records these are, and how far they have come. Its lock is the right to write. */
  counters: { programme: string; position: number };
  /** Which steps of the shape were taken. */
  migrations: { number: number; name: string };
  /** A projection: the kept state of a root, which fold made it, and up to which position. Can be dropped at any time. */
  states: { root: string; fold_version: number; position: number; part: string };
}

export type EntryRow = Selectable<Tables["entries"]>;
export type Database = Kysely<Tables>;
export type Writing = Transaction<Tables>;
