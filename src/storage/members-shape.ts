/** The step of the store's shape that brings members, their sessions and devices, and whose each case and apiary is. */
import type { ColumnDefinitionBuilder, Kysely } from "kysely";
import type { Engine } from "./engine.ts";
import type { Tables } from "./tables.ts";

const needed = (column: ColumnDefinitionBuilder): ColumnDefinitionBuilder => column.notNull();
const key = (column: ColumnDefinitionBuilder): ColumnDefinitionBuilder => column.primaryKey();

export async function membersAndDevices(tx: Kysely<unknown>, { whole, tableEnd }: Engine): Promise<void> {
  const table = (name: string) => tx.schema.createTable(name).modifyEnd(tableEnd);
  await table("members")
    .addColumn("id", "text", key)
    .addColumn("name", "text", needed)
    .addColumn("sign_in", "text", (column) => column.notNull().unique())
    .addColumn("role", "text", needed)
    .addColumn("password", "text")
    .addColumn("places", "integer", needed)
    .addColumn("failures", "integer", needed)
    .addColumn("failed_at", "text")
    .addColumn("admitted_at", "text", needed)
    .addColumn("ended_at", "text")
    .execute();
  await table("sessions")
    .addColumn("hash", "text", key)
    .addColumn("id", "text", (column) => column.notNull().unique())
    .addColumn("member", "text", needed)
    .addColumn("device", "text")
    .addColumn("client", "text", needed)
    .addColumn("began_at", "text", needed)
    .addColumn("seen_at", "text", needed)
    .addColumn("ends_at", "text", needed)
    .addColumn("ended_at", "text")
    .addColumn("why", "text")
    .execute();
  await table("invitations")
    .addColumn("hash", "text", key)
    .addColumn("id", "text", (column) => column.notNull().unique())
    .addColumn("role", "text", needed)
    .addColumn("by", "text")
    .addColumn("made_at", "text", needed)
    .addColumn("ends_at", "text", needed)
    .addColumn("used_at", "text")
    .addColumn("member", "text")
    .execute();
  await table("devices")
    .addColumn("device", "text", key)
    .addColumn("member", "text", needed)
    .addColumn("name", "text", needed)
    .addColumn("registered_at", "text", needed)
    .addColumn("lost_at", "text")
    .execute();
  await table("scopes")
    .addColumn("member", "text", needed)
    .addColumn("root", "text", needed)
    .addColumn("since", whole, needed)
    .addPrimaryKeyConstraint("scopes_once", ["member", "root"])
    .execute();
  await tx.schema.createIndex("scopes_by_root").on("scopes").column("root").execute();
  await table("parents")
    .addColumn("root", "text", needed)
    .addColumn("parent", "text", needed)
    .addPrimaryKeyConstraint("parents_once", ["root", "parent"])
    .execute();
  await tx.schema.createIndex("parents_by_parent").on("parents").column("parent").execute();
  await table("passkeys")
    .addColumn("id", "text", key)
    .addColumn("member", "text", needed)
    .addColumn("public_key", "text", needed)
    .addColumn("counter", whole, needed)
    .addColumn("transports", "text", needed)
    .addColumn("name", "text", needed)
    .addColumn("made_at", "text", needed)
    .addColumn("used_at", "text")
    .execute();
  await table("challenges")
    .addColumn("hash", "text", key)
    .addColumn("purpose", "text", needed)
    .addColumn("member", "text")
    .addColumn("ends_at", "text", needed)
    .execute();
  await fillFrom(tx as Kysely<Tables>);
}

const hanging = ["case-opened", "specimen-labelled", "plan-made"];
const everyones = ["label-record-loaded", "evidence-changed", "reasoning-set", "heads-noted"];

/** What hangs on what, and what is everyone's, of the entries that are there already. */
async function fillFrom(tx: Kysely<Tables>): Promise<void> {
  const rows = await tx
    .selectFrom("entries")
    .select(["position", "root", "kind", "header"])
    .where("kind", "in", [...hanging, ...everyones])
    .orderBy("position")
    .execute();
  for (const { position, root, kind, header } of rows) {
    if (everyones.includes(kind)) {
      const row = { member: "*", root, since: position };
      await tx
        .insertInto("scopes")
        .values(row)
        .onConflict((conflict) => conflict.doNothing())
        .execute();
      continue;
    }
    const parent = (JSON.parse(header) as { readonly about: readonly string[] }).about[1];
    if (parent === undefined) continue;
    await tx
      .insertInto("parents")
      .values({ root, parent })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
}
