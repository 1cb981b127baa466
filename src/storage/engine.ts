/** All that SQLite and PostgreSQL do differently. Everything else of the service's store is one code for both. */
import { type RawBuilder, sql } from "kysely";
import type { Writing } from "./tables.ts";

export interface Engine {
  readonly name: "SQLite" | "PostgreSQL";
  /** Column type of a whole number up to 2⁵³. */
  readonly whole: "integer" | "bigint";
  /** Column type of bytes. */
  readonly bytes: RawBuilder<unknown>;
  /** What ends the statement that makes a table. */
  readonly tableEnd: RawBuilder<unknown>;
  /** A column of text in the order of its bytes, whatever language the database sorts in. */
  readonly byBytes: (column: string) => RawBuilder<string>;
  /** Times that a transaction is tried when other writers stand in its way. */
  readonly mostTries: number;
  /** The first thing in a transaction that writes entries. */
  readonly beforeWriting: (tx: Writing) => Promise<unknown>;
  /** The first thing in a transaction that changes the shape: others who would change it wait. */
  readonly beforeShaping: (tx: Writing, place: string) => Promise<unknown>;
  /** Another writer stood in the way: the same transaction can succeed when it is tried again. */
  readonly isPassing: (trouble: unknown) => boolean;
  /** The database does not answer, or not now. Whether a commit on its way came through is then not known. */
  readonly isAway: (trouble: unknown) => boolean;
  /** What the database keeps is not what it wrote: the disk, or somebody past the program, changed it. */
  readonly isDamaged: (trouble: unknown) => boolean;
  /** The tables are gone: another process removed the programme. */
  readonly isRemoved: (trouble: unknown) => boolean;
}

/** What a driver calls its trouble; empty when it has no name. */
export const codeOf = (trouble: unknown): string => {
  const code = (trouble as { readonly code?: unknown } | null)?.code;
  return typeof code === "string" ? code : "";
};

const startsLike = (pattern: RegExp) => (trouble: unknown) => pattern.test(codeOf(trouble));

export const sqliteEngine: Engine = {
  name: "SQLite",
  whole: "integer",
  bytes: sql`blob`,
  tableEnd: sql`strict`,
  byBytes: (column) => sql`${sql.ref(column)}`,
  mostTries: Number.POSITIVE_INFINITY, // a try fails at once here: patience is measured in time
  beforeWriting: async () => {},
  beforeShaping: async () => {},
  isPassing: startsLike(/^SQLITE_BUSY/),
  isAway: startsLike(/^SQLITE_(FULL|IOERR)/),
  // Also when the words that name tables and columns are no longer what was written.
  isDamaged: (trouble) =>
    startsLike(/^SQLITE_(CORRUPT|NOTADB)/)(trouble) ||
    (codeOf(trouble) === "SQLITE_ERROR" &&
      /^(no such (table|column)|malformed)|has no column/.test(String((trouble as Error).message))),
  isRemoved: () => false,
};

/** Until the transaction ends, nobody else makes, changes or removes what a programme is kept in. */
export const lockShape = (tx: Writing, place: string): Promise<unknown> =>
  sql`select pg_advisory_xact_lock(hashtext('skepsis'), hashtext(${place}))`.execute(tx);

const lockMilliseconds = 4_000;
const idleMilliseconds = 30_000;

/** What `pg` says without a code when the connection is lost. */
const lostConnection =
  /^(Connection terminated|The server does not support SSL|timeout exceeded when trying to connect|Query read timeout|Client has encountered a connection error)/;

export const postgresEngine: Engine = {
  name: "PostgreSQL",
  whole: "bigint",
  bytes: sql`bytea`,
  tableEnd: sql``,
  byBytes: (column) => sql`${sql.ref(column)} collate "C"`,
  mostTries: 6,
  // A commit is acknowledged to devices, so it must be on the disk whatever the server's default; and a machine that
  // lost its power with the counter's lock in hand may not hold the others up for hours.
  beforeWriting: (tx) =>
    sql`select set_config('lock_timeout', ${String(lockMilliseconds)}, true),
      set_config('idle_in_transaction_session_timeout', ${String(idleMilliseconds)}, true),
      case when current_setting('synchronous_commit') = 'off' then set_config('synchronous_commit', 'on', true) end`.execute(
      tx,
    ),
  beforeShaping: async (tx, place) => {
    await lockShape(tx, place);
    const there = await sql`select 1 from pg_namespace where nspname = ${place}`.execute(tx);
    if (there.rows.length === 0) await sql`create schema ${sql.id(place)}`.execute(tx);
  },
  // Serialisation failure, deadlock, lock not available.
  isPassing: startsLike(/^(40001|40P01|55P03)$/),
  // Of the network, certificates among it; connection exceptions, who may come in, no such database, too many connections, shutting down.
  isAway: (trouble) =>
    startsLike(
      /^(E[A-Z]+|EAI_AGAIN|ERR_TLS_[A-Z_]+|[A-Z_]*CERT[A-Z_]*|UNABLE_TO_VERIFY_LEAF_SIGNATURE|08...|28...|3D000|53300|57P0.|25P03)$/,
    )(trouble) ||
    (trouble instanceof Error && codeOf(trouble) === "" && lostConnection.test(trouble.message)),
  // Data corrupted, index corrupted.
  isDamaged: startsLike(/^XX00[12]$/),
  // No such schema, no such table; a table that went while it was waited for.
  isRemoved: (trouble) =>
    startsLike(/^(3F000|42P01)$/)(trouble) ||
    (codeOf(trouble) === "XX000" && /could not open relation/.test(String((trouble as Error).message))),
};
