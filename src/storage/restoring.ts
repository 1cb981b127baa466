/** Records that are built up aside and become a programme's records in one transaction. */
import { type RawBuilder, sql } from "kysely";
import { answered, blocked, problem, type Result } from "../units/index.ts";
import { batches } from "./batches.ts";
import { type Keeping, prepare } from "./keeping.ts";
import { patiently } from "./patience.ts";
import { lockCounter } from "./rows.ts";
import { type ServerStore, storeIn } from "./server-store.ts";
import type { Writing } from "./tables.ts";

export interface Places {
  readonly aside: () => Keeping;
  readonly final: () => Keeping;
}

/** Whole or not at all: until the last transaction the programme's own records are as they were. */
export async function restoreThrough(
  programme: string,
  fill: (aside: ServerStore) => Promise<Result<null>>,
  places: Places,
): Promise<Result<null>> {
  const before = await storeIn(places.final(), programme);
  const isEmpty = (await before.pull(0, 1)).entries.length === 0;
  await before.close();
  if (!isEmpty) return blocked(notEmpty);
  await places.aside().discard(); // what a restore that was cut off has left
  const aside = await storeIn(places.aside(), programme);
  let filled: Result<null>;
  try {
    filled = await fill(aside);
  } finally {
    await aside.close();
  }
  const restored = filled.ok ? await settle(programme, places) : filled;
  await places.aside().discard();
  return restored;
}

const notEmpty = problem("store-not-empty", "blocked", "programme");
const tables = [
  ...(["entries", "heads", "erased", "quarantine", "states", "attached", "files", "chunks"] as const),
  ...(["members", "devices", "passkeys", "scopes", "parents"] as const),
];

async function settle(programme: string, { aside, final }: Places): Promise<Result<null>> {
  const [{ place, close: closeAside }, keeping] = [aside(), final()];
  await closeAside();
  const { engine, database } = keeping;
  try {
    await prepare(keeping, programme);
    return await keeping.beside(place, (here, there) =>
      patiently(engine, () =>
        database.transaction().execute(async (tx) => {
          await engine.beforeWriting(tx);
          await lockCounter(tx, programme);
          // A device may have pushed since the first look: what it was promised is not overwritten.
          if (await tx.selectFrom("entries").select("position").limit(1).executeTakeFirst()) return blocked(notEmpty);
          for (const table of tables) await copied(tx, table, { here, there });
          await sql`update ${sql.id(here, "counters")} set position = (select position from ${sql.id(there, "counters")})`.execute(
            tx,
          );
          return answered(null);
        }),
      ),
    );
  } finally {
    await keeping.close();
  }
}

/** Entries copied by one statement: a server that goes without a word for half a minute is taken for away. */
const positionsAtOnce = 1000;

interface Names {
  readonly here: string;
  readonly there: string;
}

/** Copies a table from there to here, slice by slice: however much there is, no statement takes long. */
async function copied(tx: Writing, table: (typeof tables)[number], { here, there }: Names): Promise<void> {
  const columns = sql.join(columnsOf[table].map((name) => sql.id(name)));
  const [from, into] = [sql.id(there, table), sql.id(here, table)];
  for await (const slice of slicesOf(tx, table, there))
    await sql`insert into ${into} (${columns}) select ${columns} from ${from} where ${slice}`.execute(tx);
}

/** Conditions that part a table: each row fits one of them. */
async function* slicesOf(
  tx: Writing,
  table: (typeof tables)[number],
  there: string,
): AsyncGenerator<RawBuilder<unknown>> {
  const all = async <T>(column: string, of: string): Promise<readonly T[]> => {
    const { rows } = await sql<{ key: T }>`select ${sql.id(column)} as key from ${sql.id(there, of)}`.execute(tx);
    return rows.map(({ key }) => key);
  };
  if (table === "entries") {
    const [end = 0] = await all<number>("position", "counters");
    for (let after = 0; after < end; after += positionsAtOnce)
      yield sql`position > ${after} and position <= ${after + positionsAtOnce}`;
  } else if (table === "states")
    for (const roots of batches(await all<string>("root", table))) yield sql`root in (${sql.join(roots)})`;
  else if (table === "chunks") for (const sha256 of await all<string>("sha256", "files")) yield sql`sha256 = ${sha256}`;
  else yield sql`true`;
}

const columnsOf = {
  entries: ["position", "id", "device", "seq", "root", "kind", "hash", "header", "body"],
  heads: ["device", "seq", "hash"],
  erased: ["id", "root"],
  quarantine: ["hash", "entry"],
  states: ["root", "fold_version", "position", "part"],
  attached: ["entry", "root", "sha256", "bytes", "media_type", "arrived"],
  files: ["sha256", "bytes"],
  chunks: ["sha256", "start", "data"],
  members: [
    ...(["id", "name", "sign_in", "role", "password", "places", "failures", "failed_at"] as const),
    ...(["admitted_at", "ended_at"] as const),
  ],
  devices: ["device", "member", "name", "registered_at", "lost_at"],
  passkeys: ["id", "member", "public_key", "counter", "transports", "name", "made_at", "used_at"],
  scopes: ["member", "root", "since"],
  parents: ["root", "parent"],
} as const;
