/** The step of the store's shape that brings the files which entries name. */
import type { Kysely } from "kysely";
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
