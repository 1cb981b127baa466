/** Records that are built up aside and become a programme's records in one transaction. */
import { sql } from "kysely";
import { answered, blocked, problem, type Result } from "../units/index.ts";
import { type Keeping, prepare } from "./keeping.ts";
import { patiently } from "./patience.ts";
import { lockCounter } from "./rows.ts";
import { type ServerStore, storeIn } from "./server-store.ts";

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
          for (const table of tables) {
            const columns = sql.join(columnsOf[table].map((name) => sql.id(name)));
            const from = sql.id(there, table);
            await sql`insert into ${sql.id(here, table)} (${columns}) select ${columns} from ${from}`.execute(tx);
          }
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

const columnsOf = {
  entries: ["position", "id", "device", "seq", "root", "kind", "hash", "header", "body"],
  heads: ["device", "seq", "hash"],
  erased: ["id", "root"],
  quarantine: ["hash", "entry"],
  states: ["root", "fold_version", "position", "part"],
  attached: ["entry", "root", "sha256", "bytes", "media_type", "arrived"],
  files: ["sha256", "bytes", "held", "is_whole"],
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
