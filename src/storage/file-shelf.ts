/**
 * The files of the service's store, in its own tables: several processes on one PostgreSQL share no disk, a transaction
 * takes entry and file away together, and a copy of the database is a copy of the files.
 */
import { type EntryId, type Hash, mediaTypeOf } from "../journal/index.ts";
import type { Engine } from "./engine.ts";
import { standingOf, taken, takenFrom } from "./file-uploads.ts";
import type { FileOfBackup, FileShelf } from "./files-contract.ts";
import { whoseAre } from "./member-page.ts";
import { nativeDigest } from "./native-digest.ts";
import { damagedRecords, StoreTrouble } from "./patience.ts";
import { lockCounter } from "./rows.ts";
import type { Database, Writing } from "./tables.ts";

export function fileShelf(
  { database, engine, programme }: { readonly database: Database; readonly engine: Engine; readonly programme: string },
  onTables: <T>(work: () => Promise<T>) => Promise<T>,
): FileShelf {
  const write = <T>(work: (tx: Writing) => Promise<T>): Promise<T> =>
    onTables(() =>
      database
        .transaction()
        .setIsolationLevel("read committed")
        .execute(async (tx) => {
          await engine.beforeWriting(tx);
          await lockCounter(tx, programme);
          return work(tx);
        }),
    );
  return {
    standing: (sha256, sender) => onTables(() => standingOf(database, sha256, sender)),
    take: (part) => write((tx) => takenFrom(tx, part)),
    putBack: ({ sha256, bytes, openedBy }) =>
      write(async (tx) => {
        const put = await taken(tx, { sha256, of: bytes.length, from: 0, bytes, sender: null });
        if (openedBy !== null) await closeToOthers(tx, { sha256, openedBy });
        return put;
      }),
    read: (sha256) =>
      onTables(async () => {
        const named = await database
          .selectFrom("files")
          .innerJoin("attached", "attached.sha256", "files.sha256")
          .select(["attached.media_type"])
          .where("files.sha256", "=", sha256)
          .executeTakeFirst();
        if (!named) return null;
        const bytes = await bytesOf(database, sha256);
        if (nativeDigest(bytes) !== sha256)
          throw new StoreTrouble(damagedRecords(`the file ${sha256} is no longer what was written`));
        return { mediaType: mediaTypeOf(bytes) ?? named.media_type, bytes };
      }),
    upTo: (position) =>
      onTables(async () => {
        const rows = await database
          .selectFrom("files")
          .innerJoin("attached", "attached.sha256", "files.sha256")
          .innerJoin("entries", "entries.id", "attached.entry")
          .select(["files.sha256", "attached.entry"])
          .where("attached.arrived", "=", 1)
          .where("entries.position", "<=", position)
          .orderBy("entries.position")
          .execute();
        const files = [...Map.groupBy(rows, ({ sha256 }) => sha256)].map(
          ([sha256, names]): FileOfBackup => ({ sha256, openedBy: names.map(({ entry }) => entry) }),
        );
        return files.toSorted((one, other) => (one.sha256 < other.sha256 ? -1 : 1));
      }),
    naming: (sha256, asker) =>
      onTables(async () => {
        const names = await database
          .selectFrom("attached")
          .select(["entry", "bytes", "arrived"])
          .where("sha256", "=", sha256)
          .execute();
        const named = new Map(names.map((each) => [each.entry, each]));
        return (await whoseAre(database, asker, [...named.keys()])).flatMap(({ id, kind, whose }) => {
          const name = named.get(id);
          return name ? { kind, whose, bytes: name.bytes, hasCome: name.arrived === 1 } : [];
        });
      }),
  };
}

/** All that is here of a file. */
export async function bytesOf(on: Database | Writing, sha256: Hash): Promise<Uint8Array> {
  const rows = await on.selectFrom("chunks").select("data").where("sha256", "=", sha256).orderBy("start").execute();
  return Buffer.concat(rows.map(({ data }) => data));
}

/** Of the entries that name the file, those alone that a backup says open it. */
async function closeToOthers(
  tx: Writing,
  { sha256, openedBy }: { readonly sha256: Hash; readonly openedBy: readonly EntryId[] },
): Promise<void> {
  const names = tx.updateTable("attached").set({ arrived: 0 }).where("sha256", "=", sha256);
  await (openedBy.length > 0 ? names.where("entry", "not in", openedBy) : names).execute();
}
