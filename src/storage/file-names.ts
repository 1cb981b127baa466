/** Which entry names which file: kept in the transaction that takes in the entry, and gone with its body. */
import { rootOf } from "../casebook/index.ts";
import { type Entry, fileNamedBy } from "../journal/index.ts";
import { hasMembers } from "./rows.ts";
import type { Database, Tables, Writing } from "./tables.ts";

/** The row of an entry that names a file; null for any other. */
export function attachedRow(entry: Entry): Tables["attached"] | null {
  const file = fileNamedBy(entry);
  if (file === null) return null;
  const { sha256, bytes, mediaType } = file;
  return { entry: entry.header.id, root: rootOf(entry), sha256, bytes, media_type: mediaType, arrived: 0 };
}

/** Notes the files that these entries name. */
export async function keepNames(tx: Writing, entries: readonly Entry[]): Promise<void> {
  for (const entry of entries) {
    const row = attachedRow(entry);
    if (row === null) continue;
    const arrived = (await hasCome(tx, row, entry.header.device)) ? 1 : 0;
    await tx
      .insertInto("attached")
      .values({ ...row, arrived })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
}

/**
 * Whether an entry opens its file at once: another of the same member's opens it, so that he has sent all of it. The
 * work is the same whether others have sent it or not. A device that is nobody's proves nothing, since anybody's words
 * may stand on it; where there never was a member nothing is asked.
 */
async function hasCome(tx: Writing, { sha256, bytes }: Tables["attached"], device: string): Promise<boolean> {
  const owner = await tx.selectFrom("devices").select("member").where("device", "=", device).executeTakeFirst();
  if (owner) {
    const own = await namesFor(tx, sha256, owner.member).select(["attached.bytes", "attached.arrived"]).execute();
    return own.some((name) => name.bytes === bytes && name.arrived === 1);
  }
  if (await hasMembers(tx)) return false;
  const file = tx.selectFrom("files").select("sha256").where("sha256", "=", sha256).where("bytes", "=", bytes);
  return (await file.executeTakeFirst()) !== undefined;
}

/** Entries that name the file, and whose device wrote each. */
const namesOf = (on: Database | Writing, sha256: string) =>
  on
    .selectFrom("attached")
    .innerJoin("entries", "entries.id", "attached.entry")
    .leftJoin("devices", "devices.device", "entries.device")
    .where("attached.sha256", "=", sha256);

/** Entries that name the file and for which it is the sender's to send: those of his devices; all where there are no members. */
export const namesFor = (on: Database | Writing, sha256: string, sender: string | null) =>
  sender === null ? namesOf(on, sha256) : namesOf(on, sha256).where("devices.member", "=", sender);

/**
 * Takes the name away that an entry gave a file, and the file too when it came from the writer of no other entry. What
 * is on its way is begun again by whoever still names it.
 */
export async function forgetName(tx: Writing, entry: string, root: string): Promise<void> {
  const named = tx.selectFrom("attached").select("sha256").where("entry", "=", entry).where("root", "=", root);
  const row = await named.executeTakeFirst();
  if (!row) return;
  await tx.deleteFrom("attached").where("entry", "=", entry).execute();
  for (const table of ["pieces", "uploads"] as const)
    await tx.deleteFrom(table).where("sha256", "=", row.sha256).execute();
  const other = tx.selectFrom("attached").select("entry").where("sha256", "=", row.sha256).where("arrived", "=", 1);
  if (!(await other.limit(1).executeTakeFirst())) await throwAway(tx, row.sha256);
}

/** Takes a file off the shelf. */
export async function throwAway(tx: Writing, sha256: string): Promise<void> {
  await tx.deleteFrom("chunks").where("sha256", "=", sha256).execute();
  await tx.deleteFrom("files").where("sha256", "=", sha256).execute();
}
