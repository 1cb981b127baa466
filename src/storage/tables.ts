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
  members: {
    id: string;
    name: string;
    /** The name as it is looked up: without capitals and outer spaces. */
    sign_in: string;
    role: string;
    /** Argon2id with its parameters and salt; null: signs in by a passkey alone. */
    password: string | null;
    /** Until when a password that was drawn can be exchanged for one of the member's own; null: it is his own. */
    password_ends_at: string | null;
    /** 1: exact places were granted. */
    places: number;
    /** Wrong passwords since the last right one, and the instant of the last. */
    failures: number;
    failed_at: string | null;
    admitted_at: string;
    ended_at: string | null;
  };
  /** A token is kept as its SHA-256: whoever reads the table cannot use it. */
  sessions: {
    hash: string;
    id: string;
    member: string;
    device: string | null;
    client: string;
    began_at: string;
    seen_at: string;
    /** Ends by then whatever happens. */
    ends_at: string;
    ended_at: string | null;
    why: string | null;
  };
  invitations: {
    hash: string;
    id: string;
    role: string;
    by: string | null;
    made_at: string;
    ends_at: string;
    used_at: string | null;
    member: string | null;
  };
  devices: { device: string; member: string; name: string; registered_at: string; lost_at: string | null };
  /** Whose a root is, `*` for everyone's, and the position from which on it is. */
  scopes: { member: string; root: string; since: number };
  /** What a root hangs on: a case on its apiary, a vial and a plan on their case. */
  parents: { root: string; parent: string };
  passkeys: {
    id: string;
    member: string;
    public_key: string;
    counter: number;
    transports: string;
    name: string;
    made_at: string;
    used_at: string | null;
  };
  /** A question put to a passkey, to be answered once. */
  challenges: { hash: string; purpose: string; member: string | null; ends_at: string };
  /** Which entry names which file; 1: all of it has come from whoever wrote the entry. Gone with the body of the entry. */
  attached: { entry: EntryId; root: string; sha256: Hash; bytes: number; media_type: string; arrived: number };
  /** Files that are here whole and have their hash. */
  files: { sha256: Hash; bytes: number };
  chunks: { sha256: Hash; start: number; data: Uint8Array };
  /** How much of a file has come from a member so far; empty: from anyone, where there are no members. */
  uploads: { sha256: Hash; sender: string; bytes: number; held: number };
  pieces: { sha256: Hash; sender: string; start: number; data: Uint8Array };
  /** A projection: the kept state of a root, which fold made it, and up to which position. Can be dropped at any time. */
  states: { root: string; fold_version: number; position: number; part: string };
  /** Nights that were planned: at which instant, from the records up to which position. Derived, as the next two. */
  nights: { night: string; stood_at: string; position: number };
  /** What is still to be reckoned of a night. */
  night_chunks: { night: string; number: number; text: string };
  /** The newest forecast of each colony of a case, and the night it is of. */
  forecasts: { root: string; colony: string; night: string; stood_at: string; position: number; text: string };
}

export type EntryRow = Selectable<Tables["entries"]>;
export type Database = Kysely<Tables>;
export type Writing = Transaction<Tables>;
