/** A PostgreSQL database: one for all programmes, each in a schema of its own, so that programmes cannot mix. */
import { createHash } from "node:crypto";
import { Kysely, PostgresDialect, sql } from "kysely";
import pg from "pg";
import { lockShape, postgresEngine } from "./engine.ts";
import type { Keeping } from "./keeping.ts";
import { patiently } from "./patience.ts";
import type { Tables } from "./tables.ts";

export interface PostgresDatabase {
  /** What a programme is kept in; closing it leaves the database open. */
  readonly keepingOf: (programme: string) => Keeping;
  /** What a programme is built up in before it becomes its records. */
  readonly asideOf: (programme: string) => Keeping;
  /** Whether anything was ever kept for a programme. */
  readonly has: (programme: string) => Promise<boolean>;
  /** Programmes of which anything was ever kept. */
  readonly programmes: () => Promise<readonly string[]>;
  readonly close: () => Promise<void>;
}

/** Connections of one process; PostgreSQL allows a hundred in all unless it was told otherwise. */
const mostConnections = 10;

/** Opens nothing yet: the first question connects. */
export function postgresDatabase(address: string): PostgresDatabase {
  const pool = new pg.Pool({
    connectionString: address,
    max: mostConnections,
    connectionTimeoutMillis: 5_000,
    query_timeout: 30_000, // a server that went without a word is not waited for any longer
    keepAlive: true,
    application_name: "skepsis",
    types: { getTypeParser: ((id: number, format?: "text") => parserOf(id, format)) as typeof pg.types.getTypeParser },
  });
  // A connection lost while nobody used it: the pool has let it go, and the next question opens another.
  pool.on("error", () => {});
  // One lost between two statements of a transaction: the next statement of it fails, and tells.
  pool.on("connect", (client) => client.on("error", () => {}));
  const whole = new Kysely<Tables>({ dialect: new PostgresDialect({ pool }) });
  return {
    keepingOf: (programme) => keepingIn(whole, schemaOf(programme)),
    asideOf: (programme) => keepingIn(whole, schemaOf(programme).replace(/^skepsis_/, "restoring_")),
    async has(programme) {
      const asked = sql<{ found: number }>`select 1 as found from pg_namespace where nspname = ${schemaOf(programme)}`;
      return (await patiently(postgresEngine, () => asked.execute(whole))).rows.length > 0;
    },
    async programmes() {
      const asked = sql<{
        place: string;
      }>`select nspname as place from pg_namespace where nspname like ${"skepsis\\_%"}`;
      const places = (await patiently(postgresEngine, () => asked.execute(whole))).rows;
      const named = places.map(({ place }) =>
        whole.withSchema(place).selectFrom("counters").select("programme").execute(),
      );
      return (await Promise.all(named)).flat().map(({ programme }) => programme);
    },
    close: () => whole.destroy(),
  };
}

const keepingIn = (whole: Kysely<Tables>, place: string): Keeping => ({
  engine: postgresEngine,
  database: whole.withSchema(place),
  place,
  beside: (other, work) => work(place, other),
  findsWrong: async () => [],
  afterErasure: () => {}, // rows that were overwritten go when PostgreSQL cleans up by itself
  discard: () =>
    whole.transaction().execute(async (tx) => {
      await lockShape(tx, place);
      await sql`drop schema if exists ${sql.id(place)} cascade`.execute(tx);
    }),
  close: async () => {},
});

const longestName = 61; // of PostgreSQL's 63, for a name aside is two longer

/** Name of a programme's schema. PostgreSQL cuts long names in silence, so those end in a hash instead. */
export function schemaOf(programme: string): string {
  const plain = `skepsis_${programme}`;
  if (plain.length <= longestName) return plain;
  return `${plain.slice(0, 44)}_${createHash("sha256").update(programme).digest("hex").slice(0, 16)}`;
}

const bigint = 20;

/** Whole numbers of eight bytes come as text: read as numbers as far as a number can hold them, and never rounded. */
const parserOf = (id: number, format: "text" | undefined) =>
  id === bigint ? wholeNumber : pg.types.getTypeParser(id, format);

export function wholeNumber(text: string): number {
  const number = Number(text);
  if (!Number.isSafeInteger(number)) throw new RangeError(`${text} is too large for a whole number here`);
  return number;
}
