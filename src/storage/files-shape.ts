/** The steps of the store's shape that bring the files which entries name, and part them by who sends them. */
import type { Kysely } from "kysely";
import { batches } from "./batches.ts";
import type { Engine } from "./engine.ts";
import { attachedRow } from "./file-names.ts";
import { entryOf } from "./rows.ts";
import type { Tables } from "./tables.ts";

export async function filesOfEntries(tx: Kysely<unknown>, { whole, bytes, tableEnd }: Engine): Promise<void> {
  const table = (name: string) => tx.schema.createTable(name).modifyEnd(tableEnd);
  await table("attached")
    .addColumn("entry", "text", (column) => column.primaryKey())
    .addColumn("root", "text", (column) => column.notNull())
    .addColumn("sha256", "text", (column) => column.notNull())
    .addColumn("bytes", whole, (column) => column.notNull())
    .addColumn("media_type", "text", (column) => column.notNull())
    .addColumn("arrived", "integer", (column) => column.notNull())
    .execute();
  await tx.schema.createIndex("attached_by_hash").on("attached").column("sha256").execute();
  await table("files")
    .addColumn("sha256", "text", (column) => column.primaryKey())
    .addColumn("bytes", whole, (column) => column.notNull())
    .addColumn("held", whole, (column) => column.notNull())
    .addColumn("is_whole", "integer", (column) => column.notNull())
    .execute();
  await table("chunks")
    .addColumn("sha256", "text", (column) => column.notNull())
    .addColumn("start", whole, (column) => column.notNull())
    .addColumn("data", bytes, (column) => column.notNull())
    .addPrimaryKeyConstraint("chunks_once", ["sha256", "start"])
    .execute();
  // An older version kept such entries without reading them.
  const named = await (tx as Kysely<Tables>)
    .selectFrom("entries")
    .select(["header", "body"])
    .where("kind", "=", "file-attached")
    .execute();
  for (const row of named) {
    const attached = attachedRow(entryOf(row));
    if (attached) await (tx as Kysely<Tables>).insertInto("attached").values(attached).execute();
  }
}

/**
 * What is on its way lies apart from what is here, for each sender by itself. Files that are here stay open to all
 * entries that name them, as they were; what was on its way from nobody knows whom is sent again from the beginning.
 */
export async function filesBySender(tx: Kysely<unknown>, { whole, bytes, tableEnd }: Engine): Promise<void> {
  const before = tx as Kysely<Pick<Tables, "chunks"> & { files: Tables["files"] & { is_whole: number } }>;
  const here = before.selectFrom("files").where("is_whole", "=", 1);
  await before.deleteFrom("chunks").where("sha256", "not in", here.select("sha256")).execute();
  const rows = await here.select(["sha256", "bytes"]).execute();
  await tx.schema.dropTable("files").execute();
  const table = (name: string) => tx.schema.createTable(name).modifyEnd(tableEnd);
  await table("files")
    .addColumn("sha256", "text", (column) => column.primaryKey())
    .addColumn("bytes", whole, (column) => column.notNull())
    .execute();
  for (const some of batches(rows))
    await (tx as Kysely<Tables>)
      .insertInto("files")
      .values([...some])
      .execute();
  await table("uploads")
    .addColumn("sha256", "text", (column) => column.notNull())
    .addColumn("sender", "text", (column) => column.notNull())
    .addColumn("bytes", whole, (column) => column.notNull())
    .addColumn("held", whole, (column) => column.notNull())
    .addPrimaryKeyConstraint("uploads_once", ["sha256", "sender"])
    .execute();
  await table("pieces")
    .addColumn("sha256", "text", (column) => column.notNull())
    .addColumn("sender", "text", (column) => column.notNull())
    .addColumn("start", whole, (column) => column.notNull())
    .addColumn("data", bytes, (column) => column.notNull())
    .addPrimaryKeyConstraint("pieces_once", ["sha256", "sender", "start"])
    .execute();
}
