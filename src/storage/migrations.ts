/** The shape of the service's database, step by step: forward only, each step taken once, all in one transaction. */
import type { Kysely } from "kysely";
import { problem } from "../units/index.ts";
import type { Engine } from "./engine.ts";
import { filesBySender, filesOfEntries } from "./files-shape.ts";
import { membersAndDevices } from "./members-shape.ts";
import { StoreTrouble } from "./patience.ts";
import type { Writing } from "./tables.ts";

export interface Migration {
  /** What it does, in words joined by hyphens. Never changed once it was released, nor is the step. */
  readonly name: string;
  readonly step: (tx: Kysely<unknown>, engine: Engine) => Promise<void>;
}

/** In order; the number of a step is its place, from 1. */
export const migrations: readonly Migration[] = [
  {
    name: "journal-as-first-released",
    // "if not exists": files older than this list have the tables and no note of it.
    async step(tx, { whole, tableEnd }) {
      const table = (name: string) => tx.schema.createTable(name).ifNotExists().modifyEnd(tableEnd);
      await table("counters")
        .addColumn("programme", "text", (column) => column.primaryKey())
        .addColumn("position", whole, (column) => column.notNull())
        .execute();
      await table("entries")
        .addColumn("position", whole, (column) => column.primaryKey())
        .addColumn("id", "text", (column) => column.notNull().unique())
        .addColumn("device", "text", (column) => column.notNull())
        .addColumn("seq", whole, (column) => column.notNull())
        .addColumn("root", "text", (column) => column.notNull())
        .addColumn("kind", "text", (column) => column.notNull())
        .addColumn("hash", "text", (column) => column.notNull())
        .addColumn("header", "text", (column) => column.notNull())
        .addColumn("body", "text")
        .addUniqueConstraint("entries_by_place", ["device", "seq"])
        .execute();
      const index = (name: string) => tx.schema.createIndex(name).ifNotExists().on("entries");
      await index("entries_by_root").columns(["root", "position"]).execute();
      await index("entries_by_kind").columns(["kind", "position"]).execute();
      await table("heads")
        .addColumn("device", "text", (column) => column.primaryKey())
        .addColumn("seq", whole, (column) => column.notNull())
        .addColumn("hash", "text", (column) => column.notNull())
        .execute();
      await table("erased")
        .addColumn("id", "text", (column) => column.notNull())
        .addColumn("root", "text", (column) => column.notNull())
        .addPrimaryKeyConstraint("erased_once", ["id", "root"])
        .execute();
      await table("quarantine")
        .addColumn("hash", "text", (column) => column.primaryKey())
        .addColumn("entry", "text", (column) => column.notNull())
        .execute();
    },
  },
  {
    name: "no-index-by-kind",
    // Nothing is looked up by kind, and every push had to keep the index.
    step: async (tx) => void (await tx.schema.dropIndex("entries_by_kind").ifExists().execute()),
  },
  { name: "members-and-devices", step: membersAndDevices },
  { name: "files-of-entries", step: filesOfEntries },
  {
    name: "passwords-that-run-out",
    // Null: chosen by the member, without an end.
    step: async (tx) => void (await tx.schema.alterTable("members").addColumn("password_ends_at", "text").execute()),
  },
  { name: "files-by-sender", step: filesBySender },
];

/**
 * Takes the steps that are missing. Must run inside a transaction that has done what the engine does before shaping.
 * @throws StoreTrouble when a newer version of the program has taken steps that this one does not know
 */
export async function migrate(tx: Writing, engine: Engine, steps: readonly Migration[] = migrations): Promise<void> {
  await tx.schema
    .createTable("migrations")
    .ifNotExists()
    .addColumn("number", "integer", (column) => column.primaryKey())
    .addColumn("name", "text", (column) => column.notNull())
    .modifyEnd(engine.tableEnd)
    .execute();
  const taken = await tx.selectFrom("migrations").select("number").execute();
  const newest = Math.max(0, ...taken.map((row) => row.number));
  if (newest > steps.length) {
    throw new StoreTrouble(
      problem("records-newer", "blocked", null, {
        given: `shape ${newest}`,
        expected: `shape ${steps.length} or older; the newer version of the program that wrote them`,
      }),
    );
  }
  for (const [index, { name, step }] of steps.entries()) {
    if (index < newest) continue;
    await step(tx as unknown as Kysely<unknown>, engine);
    await tx
      .insertInto("migrations")
      .values({ number: index + 1, name })
      .execute();
  }
}

/** Makes the projection's table where it was dropped, or never was. */
export async function makeProjection(tx: Writing, { whole, tableEnd }: Engine): Promise<void> {
  await tx.schema
    .createTable("states")
    .ifNotExists()
    .addColumn("root", "text", (column) => column.primaryKey())
    .addColumn("fold_version", "integer", (column) => column.notNull())
    .addColumn("position", whole, (column) => column.notNull())
    .addColumn("part", "text", (column) => column.notNull())
    .modifyEnd(tableEnd)
    .execute();
  const index = (name: string) => tx.schema.createIndex(name).ifNotExists().on("states");
  await index("states_by_position").column("position").execute();
  // Asked at every start: whole states lie wide apart, and to go through them all takes seconds.
  await index("states_by_fold").columns(["fold_version", "root"]).execute();
}
