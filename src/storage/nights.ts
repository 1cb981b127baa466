/** Forecasts of the night: what is to be reckoned, chunk by chunk, and what was found. Derived: dropped and made anew at will. */
import { sql } from "kysely";
import type { Engine } from "./engine.ts";
import type { Desk } from "./member-desk.ts";
import type { Writing } from "./tables.ts";

/** When and from which records a night was planned. */
export interface NightStanding {
  /** Day of the night. */
  readonly night: string;
  /** Instant, and position of the last entry that was in it. */
  readonly stoodAt: string;
  readonly position: number;
}

/** A chunk's text is what it is reckoned from, whole: the records may go on meanwhile. */
export interface ChunkToKeep {
  readonly number: number;
  readonly text: string;
}

/** Names a chunk of one plan: a night that was dropped and planned anew has chunks of its own. */
export interface ChunkName {
  readonly night: string;
  /** When the night was planned. */
  readonly stoodAt: string;
  readonly number: number;
}

export interface KeptForecast extends NightStanding {
  readonly root: string;
  readonly colony: string;
  readonly text: string;
}

export interface Nights {
  /** The newest night that was planned; null before the first. */
  readonly newest: () => Promise<NightStanding | null>;
  /**
   * Keeps the chunks of a night, unless it was planned already; forecasts of colonies that are not among `colonies` go.
   * Returns how the records stood when it was planned, and the numbers of the chunks that are still to be reckoned;
   * null, and nothing kept, when something was erased since `position`: the chunks may hold it.
   */
  readonly plan: (
    standing: NightStanding,
    chunks: readonly ChunkToKeep[],
    colonies: readonly { readonly root: string; readonly colony: string }[],
  ) => Promise<(NightStanding & { readonly left: readonly number[] }) | null>;
  /** What a chunk is reckoned from; null when it is done, or was dropped with its plan. */
  readonly chunk: (name: ChunkName) => Promise<string | null>;
  /** Keeps what a chunk found and drops the chunk, in one step; nothing when it was done, or its plan dropped, meanwhile. */
  readonly done: (name: ChunkName, found: readonly Found[]) => Promise<void>;
  readonly forecasts: () => Promise<readonly KeptForecast[]>;
}

type Found = Pick<KeptForecast, "root" | "colony" | "text">;

/** Makes the tables where they were dropped, or never were. */
export async function makeNights(tx: Writing, { whole, tableEnd }: Engine): Promise<void> {
  const table = (name: string) => tx.schema.createTable(name).ifNotExists().modifyEnd(tableEnd);
  await table("nights")
    .addColumn("night", "text", (column) => column.primaryKey())
    .addColumn("stood_at", "text", (column) => column.notNull())
    .addColumn("position", whole, (column) => column.notNull())
    .execute();
  await table("night_chunks")
    .addColumn("night", "text", (column) => column.notNull())
    .addColumn("number", "integer", (column) => column.notNull())
    .addColumn("text", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("night_chunks_once", ["night", "number"])
    .execute();
  await table("forecasts")
    .addColumn("root", "text", (column) => column.notNull())
    .addColumn("colony", "text", (column) => column.notNull())
    .addColumn("night", "text", (column) => column.notNull())
    .addColumn("stood_at", "text", (column) => column.notNull())
    .addColumn("position", whole, (column) => column.notNull())
    .addColumn("text", "text", (column) => column.notNull())
    .addPrimaryKeyConstraint("forecasts_once", ["root", "colony"])
    .execute();
}

/** Drops all of it: after an erasure nothing may hold what was erased. The next night makes it anew. */
export async function dropNights(tx: Writing): Promise<void> {
  for (const table of ["nights", "night_chunks", "forecasts"] as const) await tx.deleteFrom(table).execute();
}

export function nightsOf({ database, read, inTransaction }: Pick<Desk, "database" | "read"> & Transacting): Nights {
  return {
    newest: () =>
      read(async () => {
        const row = await database.selectFrom("nights").selectAll().orderBy("night", "desc").executeTakeFirst();
        return row === undefined ? null : standingOf(row);
      }),
    plan: ({ night, stoodAt, position }, chunks, colonies) =>
      inTransaction(async (tx) => {
        const isNew = await tx
          .insertInto("nights")
          .values({ night, stood_at: stoodAt, position })
          .onConflict((conflict) => conflict.doNothing())
          .executeTakeFirst();
        if (Number(isNew.numInsertedOrUpdatedRows ?? 0) > 0) {
          if (await isErasedSince(tx, position)) {
            await tx.deleteFrom("nights").where("night", "=", night).execute();
            return null;
          }
          await tx.deleteFrom("nights").where("night", "<", night).execute();
          await tx.deleteFrom("night_chunks").where("night", "<", night).execute();
          const wanted = new Set(colonies.map(({ root, colony }) => `${root} ${colony}`));
          const kept = await tx.selectFrom("forecasts").select(["root", "colony"]).execute();
          for (const { root, colony } of kept.filter((each) => !wanted.has(`${each.root} ${each.colony}`)))
            await tx.deleteFrom("forecasts").where("root", "=", root).where("colony", "=", colony).execute();
          for (const { number, text } of chunks)
            await tx.insertInto("night_chunks").values({ night, number, text }).execute();
        }
        const left = tx.selectFrom("night_chunks").select("number").where("night", "=", night).orderBy("number");
        const own = await tx.selectFrom("nights").selectAll().where("night", "=", night).executeTakeFirstOrThrow();
        return { ...standingOf(own), left: (await left.execute()).map(({ number }) => number) };
      }),
    chunk: ({ night, stoodAt, number }) =>
      read(async () => {
        const row = await database
          .selectFrom("night_chunks")
          .innerJoin("nights", "nights.night", "night_chunks.night")
          .select("night_chunks.text")
          .where("nights.night", "=", night)
          .where("nights.stood_at", "=", stoodAt)
          .where("night_chunks.number", "=", number)
          .executeTakeFirst();
        return row?.text ?? null;
      }),
    done: ({ night, stoodAt, number }, found) =>
      inTransaction(async (tx) => {
        const plan = tx.selectFrom("nights").selectAll().where("night", "=", night).where("stood_at", "=", stoodAt);
        const own = await plan.executeTakeFirst();
        // Another plan stands: what was reckoned from the dropped one may hold what was erased.
        if (own === undefined) return;
        const chunk = tx.deleteFrom("night_chunks").where("night", "=", night).where("number", "=", number);
        const gone = await chunk.executeTakeFirst();
        if (Number(gone.numDeletedRows) === 0) return;
        for (const { root, colony, text } of found) {
          const row = { root, colony, text, night, stood_at: stoodAt, position: own.position };
          await tx
            .insertInto("forecasts")
            .values(row)
            .onConflict((conflict) => conflict.columns(["root", "colony"]).doUpdateSet(row))
            .execute();
        }
      }),
    forecasts: () =>
      read(async () => {
        const rows = await database
          .selectFrom("forecasts")
          .selectAll()
          .orderBy(sql`root`)
          .orderBy(sql`colony`)
          .execute();
        return rows.map((row) => ({ ...standingOf(row), root: row.root, colony: row.colony, text: row.text }));
      }),
  };
}

async function isErasedSince(tx: Writing, position: number): Promise<boolean> {
  const erasures = tx.selectFrom("entries").select("id").where("kind", "=", "content-erased");
  return (await erasures.where("position", ">", position).executeTakeFirst()) !== undefined;
}

interface Transacting {
  readonly inTransaction: <T>(work: (tx: Writing) => Promise<T>) => Promise<T>;
}

const standingOf = (row: {
  readonly night: string;
  readonly stood_at: string;
  readonly position: number;
}): NightStanding => ({
  night: row.night,
  stoodAt: row.stood_at,
  position: row.position,
});
