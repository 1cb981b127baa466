/**
 * The files of the service's store, in its own tables: several processes on one PostgreSQL share no disk, a transaction
 * takes entry and file away together, and a copy of the database is a copy of the files.
 */
import { sql } from "kysely";
import { type Hash, isFreeOfTags, mediaTypeOf } from "../journal/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../units/index.ts";
import type { Engine } from "./engine.ts";
import { throwAway } from "./file-names.ts";
import { type FilePart, type FileShelf, type FileStanding, mostFileBytes } from "./files-contract.ts";
import { whoseAre } from "./member-page.ts";
import { nativeDigest } from "./native-digest.ts";
import { damagedRecords, StoreTrouble } from "./patience.ts";
import { lockCounter } from "./rows.ts";
import type { Database, Writing } from "./tables.ts";

/** Bytes by which the sort of a file is told. */
const tellingBytes = 12;

export function fileShelf(
  { database, engine, programme }: { readonly database: Database; readonly engine: Engine; readonly programme: string },
  onTables: <T>(work: () => Promise<T>) => Promise<T>,
): FileShelf {
  return {
    standing: (sha256) => onTables(() => standingOf(database, sha256)),
    take: (part) =>
      onTables(() =>
        database
          .transaction()
          .setIsolationLevel("read committed")
          .execute(async (tx) => {
            await engine.beforeWriting(tx);
            await lockCounter(tx, programme);
            return taken(tx, part);
          }),
      ),
    read: (sha256) =>
      onTables(async () => {
        const named = await database
          .selectFrom("files")
          .innerJoin("attached", "attached.sha256", "files.sha256")
          .select(["attached.media_type"])
          .where("files.sha256", "=", sha256)
          .where("files.is_whole", "=", 1)
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
          .select("files.sha256")
          .distinct()
          .where("files.is_whole", "=", 1)
          .where("entries.position", "<=", position)
          .execute();
        return rows.map(({ sha256 }) => sha256).toSorted();
      }),
    naming: (sha256, asker) =>
      onTables(async () => {
        const named = await database.selectFrom("attached").select("entry").where("sha256", "=", sha256).execute();
        return whoseAre(
          database,
          asker,
          named.map(({ entry }) => entry),
        );
      }),
  };
}

async function standingOf(on: Database | Writing, sha256: Hash): Promise<FileStanding | null> {
  const row = await on
    .selectFrom("attached")
    .leftJoin("files", "files.sha256", "attached.sha256")
    .select(["files.held", "files.is_whole"])
    .where("attached.sha256", "=", sha256)
    .executeTakeFirst();
  return row ? { held: row.held ?? 0, isWhole: row.is_whole === 1 } : null;
}

/** All that is here of a file. */
export async function bytesOf(on: Database | Writing, sha256: Hash): Promise<Uint8Array> {
  const rows = await on.selectFrom("chunks").select("data").where("sha256", "=", sha256).orderBy("start").execute();
  return Buffer.concat(rows.map(({ data }) => data));
}

const unfit = (code: string, slots: Problem["slots"] = {}): Result<never> =>
  blocked(problem(code, "blocked", "file", { slots }));

async function taken(tx: Writing, { sha256, of, from, bytes }: FilePart): Promise<Result<FileStanding>> {
  const named = await tx.selectFrom("attached").selectAll().where("sha256", "=", sha256).execute();
  // Of two entries that name one file differently one is wrong, and must not keep the file from the other.
  const sorts = new Set(named.filter((each) => each.bytes === of).map((each) => each.media_type));
  if (named.length === 0) return unfit("file-unnamed");
  if (sorts.size === 0) return unfit("file-size-unfit");
  const before = await begun(tx, sha256, of);
  if (!before.ok || before.value.isWhole) return before;
  const { held } = before.value;
  if (from > held) return unfit("file-gap", { held });
  const fresh = bytes.subarray(held - from);
  if (fresh.length === 0) return answered({ held, isWhole: false });
  const now = held + fresh.length;
  if (now > of) return unfit("file-size-unfit");
  // Others may have come in since this one was begun.
  if ((await heldBytes(tx)) + fresh.length > mostFileBytes) return unfit("files-full", { bytes: mostFileBytes });
  if (held === 0 && fresh.length >= tellingBytes && !sorts.has(mediaTypeOf(fresh) ?? ""))
    return thrownAway(tx, sha256, "file-sort-unfit");
  await tx
    .insertInto("chunks")
    .values({ sha256, start: held, data: Buffer.from(fresh) })
    .execute();
  if (now === of) {
    const whole = await bytesOf(tx, sha256);
    if (nativeDigest(whole) !== sha256) return thrownAway(tx, sha256, "file-hash-wrong");
    const sort = mediaTypeOf(whole);
    if (!sorts.has(sort ?? "")) return thrownAway(tx, sha256, "file-sort-unfit");
    if (sort === "image/jpeg" && !isFreeOfTags(whole)) return thrownAway(tx, sha256, "file-tagged");
  }
  const isWhole = now === of;
  await tx
    .updateTable("files")
    .set({ held: now, is_whole: isWhole ? 1 : 0 })
    .where("sha256", "=", sha256)
    .execute();
  if (isWhole) await tx.updateTable("attached").set({ arrived: 1 }).where("sha256", "=", sha256).execute();
  return answered({ held: now, isWhole });
}

/** The place on the shelf; another size than before begins anew, since one of the two sizes was wrong. */
async function begun(tx: Writing, sha256: Hash, of: number): Promise<Result<FileStanding>> {
  const row = await tx.selectFrom("files").selectAll().where("sha256", "=", sha256).executeTakeFirst();
  if (row && (row.is_whole === 1 || row.bytes === of)) return answered({ held: row.held, isWhole: row.is_whole === 1 });
  if (row) await throwAway(tx, sha256);
  if ((await heldBytes(tx)) + of > mostFileBytes) return unfit("files-full", { bytes: mostFileBytes });
  await tx.insertInto("files").values({ sha256, bytes: of, held: 0, is_whole: 0 }).execute();
  return answered({ held: 0, isWhole: false });
}

/** Bytes that lie here, of whole files and of those on their way: what was announced takes no room. */
async function heldBytes(tx: Writing): Promise<number> {
  const { all } = await tx
    .selectFrom("files")
    .select(sql<number | null>`cast(sum(held) as bigint)`.as("all"))
    .executeTakeFirstOrThrow();
  return Number(all ?? 0);
}

/** What cannot become the file: nothing of it is kept, so that it can be sent again from the beginning. */
async function thrownAway(tx: Writing, sha256: Hash, code: string): Promise<Result<never>> {
  await throwAway(tx, sha256);
  return unfit(code);
}
