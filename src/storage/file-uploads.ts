/**
 * A file on its way: taken piece by piece from each sender by itself, held against its hash, and put on the shelf. Two
 * members never make one file together, so that whoever is told that it came whole has held all of it; and nothing here
 * tells a sender, by answer or by work, whether the file was here before.
 */
import { sql } from "kysely";
import { type Hash, isFreeOfTags, mediaTypeOf } from "../journal/index.ts";
import { answered, blocked, type Problem, problem, type Result } from "../units/index.ts";
import { namesFor, throwAway } from "./file-names.ts";
import { type FilePart, type FileStanding, mostFileBytes } from "./files-contract.ts";
import { nativeDigest } from "./native-digest.ts";
import { hasMembers } from "./rows.ts";
import type { Database, Writing } from "./tables.ts";

/** Bytes by which the sort of a file is told. */
const tellingBytes = 12;

/** Whose upload it is, and of which file. */
interface Upload {
  readonly sha256: Hash;
  /** Empty where there are no members. */
  readonly sender: string;
}

/** How far a file has come from this sender; null when no entry names it that it is his to send for. */
export async function standingOf(
  on: Database | Writing,
  sha256: Hash,
  sender: string | null,
): Promise<FileStanding | null> {
  const names = await namesFor(on, sha256, sender).select(["attached.bytes", "attached.arrived"]).execute();
  if (names.length === 0) return null;
  const file = await on.selectFrom("files").select("bytes").where("sha256", "=", sha256).executeTakeFirst();
  const waits = names.some(({ bytes, arrived }) => arrived === 0 && bytes === file?.bytes);
  // Of names with another size alone nothing is told: they are no proof.
  if (file && !waits && names.some(({ arrived }) => arrived === 1)) return { held: file.bytes, isWhole: true };
  const upload = await on
    .selectFrom("uploads")
    .select("held")
    .where((row) => row.and({ sha256, sender: sender ?? "" }))
    .executeTakeFirst();
  return { held: upload?.held ?? 0, isWhole: false };
}

const unfit = (code: string, slots: Problem["slots"] = {}): Result<never> =>
  blocked(problem(code, "blocked", "file", { slots }));

/**
 * Takes the next piece in from a sender who may still send: since the piece was let in the first member may have been
 * admitted, or this one ended. Must run under the lock of the counter.
 */
export async function takenFrom(tx: Writing, part: FilePart): Promise<Result<FileStanding>> {
  const { sender } = part;
  if (sender === null) return (await hasMembers(tx)) ? unfit("file-unnamed") : taken(tx, part);
  const ended = tx.selectFrom("members").select("id").where("id", "=", sender).where("ended_at", "is not", null);
  return (await ended.executeTakeFirst()) ? unfit("file-unnamed") : taken(tx, part);
}

/** Takes the next piece in. Must run under the lock of the counter. */
export async function taken(tx: Writing, { sha256, of, from, bytes, sender }: FilePart): Promise<Result<FileStanding>> {
  const named = await namesFor(tx, sha256, sender).select(["attached.bytes", "attached.media_type"]).execute();
  // Of two entries that name one file differently one is wrong, and must not keep the file from the other.
  const sorts = new Set(named.filter((each) => each.bytes === of).map((each) => each.media_type));
  if (named.length === 0) return unfit("file-unnamed");
  if (sorts.size === 0) return unfit("file-size-unfit");
  const before = await standingOf(tx, sha256, sender);
  if (before?.isWhole) return answered(before);
  const upload = { sha256, sender: sender ?? "" };
  const begun = await begin(tx, upload, of);
  if (!begun.ok) return begun;
  const held = begun.value;
  if (from > held) return unfit("file-gap", { held });
  const fresh = bytes.subarray(held - from);
  if (fresh.length === 0) return answered({ held, isWhole: false });
  const now = held + fresh.length;
  if (now > of) return unfit("file-size-unfit");
  // Others may have come in since this one was begun.
  if ((await heldBytes(tx)) + fresh.length > mostFileBytes) return unfit("files-full", { bytes: mostFileBytes });
  if (held === 0 && fresh.length >= tellingBytes && !sorts.has(mediaTypeOf(fresh) ?? ""))
    return givenUp(tx, upload, "file-sort-unfit");
  await tx
    .insertInto("pieces")
    .values({ ...upload, start: held, data: Buffer.from(fresh) })
    .execute();
  if (now === of) {
    const trouble = misfitOf(await piecesOf(tx, upload), sha256, sorts);
    if (trouble) return givenUp(tx, upload, trouble);
    await putOnShelf(tx, upload, of);
    const names = namesFor(tx, sha256, sender).where("attached.bytes", "=", of).select("attached.entry");
    await tx.updateTable("attached").set({ arrived: 1 }).where("entry", "in", names).execute();
    return answered({ held: now, isWhole: true });
  }
  await tx
    .updateTable("uploads")
    .set({ held: now })
    .where((row) => row.and(upload))
    .execute();
  return answered({ held: now, isWhole: false });
}

/** Why these bytes cannot be the file; null when they are. */
function misfitOf(whole: Uint8Array, sha256: Hash, sorts: ReadonlySet<string>): string | null {
  if (nativeDigest(whole) !== sha256) return "file-hash-wrong";
  const sort = mediaTypeOf(whole);
  if (!sorts.has(sort ?? "")) return "file-sort-unfit";
  return sort === "image/jpeg" && !isFreeOfTags(whole) ? "file-tagged" : null;
}

/** Lets go of all that is on its way from a member; of null, what began before there were any. */
export async function giveUpAllOf(tx: Writing, sender: string | null): Promise<void> {
  for (const table of ["pieces", "uploads"] as const)
    await tx
      .deleteFrom(table)
      .where("sender", "=", sender ?? "")
      .execute();
}

/** Bytes that have come of an upload; another size than before begins it anew, since one of the two sizes was wrong. */
async function begin(tx: Writing, upload: Upload, of: number): Promise<Result<number>> {
  const row = await tx
    .selectFrom("uploads")
    .selectAll()
    .where((each) => each.and(upload))
    .executeTakeFirst();
  if (row?.bytes === of) return answered(row.held);
  if (row) await giveUp(tx, upload);
  if ((await heldBytes(tx)) + of > mostFileBytes) return unfit("files-full", { bytes: mostFileBytes });
  await tx
    .insertInto("uploads")
    .values({ ...upload, bytes: of, held: 0 })
    .execute();
  return answered(0);
}

/** Puts what came in the place of what may lie there: the same bytes, unless the disk has damaged them. */
async function putOnShelf(tx: Writing, upload: Upload, bytes: number): Promise<void> {
  const { sha256 } = upload;
  await throwAway(tx, sha256);
  await tx.insertInto("files").values({ sha256, bytes }).execute();
  const came = tx
    .selectFrom("pieces")
    .select(["sha256", "start", "data"])
    .where((row) => row.and(upload));
  await tx.insertInto("chunks").columns(["sha256", "start", "data"]).expression(came).execute();
  await giveUp(tx, upload);
}

async function piecesOf(tx: Writing, upload: Upload): Promise<Uint8Array> {
  const pieces = tx
    .selectFrom("pieces")
    .select("data")
    .where((row) => row.and(upload));
  const rows = await pieces.orderBy("start").execute();
  return Buffer.concat(rows.map(({ data }) => data));
}

/** Bytes that lie here, of whole files and of those on their way: what was announced takes no room. */
async function heldBytes(tx: Writing): Promise<number> {
  const all = sql<number | null>`cast(sum(bytes) as bigint)`.as("all");
  const here = await tx.selectFrom("files").select(all).executeTakeFirstOrThrow();
  const held = sql<number | null>`cast(sum(held) as bigint)`.as("all");
  const coming = await tx.selectFrom("uploads").select(held).executeTakeFirstOrThrow();
  return Number(here.all ?? 0) + Number(coming.all ?? 0);
}

/** What cannot become the file: nothing of it is kept, so that it can be sent again from the beginning. */
async function givenUp(tx: Writing, upload: Upload, code: string): Promise<Result<never>> {
  await giveUp(tx, upload);
  return unfit(code);
}

async function giveUp(tx: Writing, upload: Upload): Promise<void> {
  for (const table of ["pieces", "uploads"] as const)
    await tx
      .deleteFrom(table)
      .where((row) => row.and(upload))
      .execute();
}
