/** The service's store: one SQLite file a programme, by Kysely. */
import { rmSync } from "node:fs";
import { emptyCasebook, withRoots } from "../casebook/index.ts";
import type { Entry } from "../journal/index.ts";
import { answered, blocked, type Result } from "../units/index.ts";
import { judge } from "./admission.ts";
import { demonstration, type JournalStore, onlyDemonstration, pageSize } from "./contract.ts";
import { entryOf, heldIn, lockCounter, partOf, renewStates, takeIn } from "./server-writing.ts";
import { openFile, whenFree } from "./sqlite.ts";

export interface ServerStore extends JournalStore {
  readonly file: string;
}

export interface ServerSettings {
  /** Path of the SQLite file; made when it is not there. Its folder must exist. */
  readonly file: string;
  readonly programme: string;
}

/**
 * Opens the store of a programme. States left by another version of the fold are made anew first.
 * @throws OtherProgramme when the file belongs to another programme
 */
export async function openServerStore({ file, programme }: ServerSettings): Promise<ServerStore> {
  const { database, checkpoint, close } = openFile(file, programme);
  await whenFree(() => renewStates(database, programme));
  let [casebook, position] = [emptyCasebook, 0];

  const entries = () => database.selectFrom("entries").select(["position", "header", "body"]).orderBy("position");
  return {
    programme,
    file,
    async push(given) {
      const verdict = await whenFree(() =>
        database.transaction().execute(async (tx) => {
          const from = await lockCounter(tx, programme);
          const judged = judge(given, await heldIn(tx, given), { programme, acceptsWithheld: false });
          if (judged.admitted.length > 0 || judged.quarantined.length > 0) await takeIn(tx, judged, from);
          return judged;
        }),
      );
      if (verdict.erased.size > 0) checkpoint();
      return { heads: verdict.heads, refused: verdict.refused };
    },
    async pull(cursor, limit = pageSize) {
      const rows = await entries()
        .where("position", ">", cursor)
        .limit(limit + 1)
        .execute();
      const page = rows.slice(0, limit);
      const { position: end } = await database.selectFrom("counters").select("position").executeTakeFirstOrThrow();
      const last = page.at(-1)?.position ?? Math.min(cursor, end);
      return { entries: page.map(entryOf), cursor: last, more: rows.length > limit };
    },
    entriesOf: async (root) => (await entries().where("root", "=", root).execute()).map(entryOf),
    all: async () => (await entries().execute()).map(entryOf),
    heads: () => database.selectFrom("heads").selectAll().orderBy("device").execute(),
    async states() {
      const changed = await database.selectFrom("states").selectAll().where("position", ">", position).execute();
      position = Math.max(position, ...changed.map((row) => row.position));
      casebook = withRoots(
        casebook,
        changed.map((row) => row.root),
        changed.map(partOf),
      );
      return casebook;
    },
    async quarantined() {
      const rows = await database.selectFrom("quarantine").select("entry").execute();
      return rows.map((row) => JSON.parse(row.entry) as Entry);
    },
    close,
  };
}

/**
 * Removes the demonstration with its file. The store is closed and of no more use.
 * Refused for any other programme: records are never removed this way.
 */
export async function removeDemonstration(store: ServerStore): Promise<Result<null>> {
  if (store.programme !== demonstration) return blocked(onlyDemonstration(store.programme));
  await store.close();
  for (const ending of ["", "-wal", "-shm"]) rmSync(`${store.file}${ending}`, { force: true });
  return answered(null);
}
