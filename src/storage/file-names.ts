/** Which entry names which file: kept in the transaction that takes in the entry, and gone with its body. */
import { rootOf } from "../casebook/index.ts";
import { type Entry, fileNamedBy } from "../journal/index.ts";
import type { Tables, Writing } from "./tables.ts";

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
    const file = tx.selectFrom("files").select("is_whole").where("sha256", "=", row.sha256);
    await tx
      .insertInto("attached")
      .values({ ...row, arrived: (await file.executeTakeFirst())?.is_whole ?? 0 })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
}

/** Takes the name away that an entry gave a file, and the file too when no other entry names it. */
export async function forgetName(tx: Writing, entry: string, root: string): Promise<void> {
  const named = tx.selectFrom("attached").select("sha256").where("entry", "=", entry).where("root", "=", root);
  const row = await named.executeTakeFirst();
  if (!row) return;
  await tx.deleteFrom("attached").where("entry", "=", entry).execute();
  const other = tx.selectFrom("attached").select("entry").where("sha256", "=", row.sha256).limit(1);
  if (!(await other.executeTakeFirst())) await throwAway(tx, row.sha256);
}

/** Takes a file off the shelf, whole or in part. */
export async function throwAway(tx: Writing, sha256: string): Promise<void> {
  await tx.deleteFrom("chunks").where("sha256", "=", sha256).execute();
  await tx.deleteFrom("files").where("sha256", "=", sha256).execute();
}
