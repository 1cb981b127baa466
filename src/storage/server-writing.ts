/** What is done inside the service's one transaction: looking up, taking in, erasing, keeping states. */
import type { Transaction } from "kysely";
import { type Casebook, foldRoot, foldVersion, rootOf } from "../casebook/index.ts";
import { type Entry, headerHash, isEntry } from "../journal/index.ts";
import { type Erasure, erasureKey, type Held, placeKey, type Verdict, withoutErasedBody } from "./admission.ts";
import type { Database, EntryRow, Tables } from "./sqlite.ts";

type Writing = Transaction<Tables>;

/** SQLite takes only so many values in one statement. */
const batch = 400;

function batches<T>(values: readonly T[]): readonly (readonly T[])[] {
  return Array.from({ length: Math.ceil(values.length / batch) }, (_, index) =>
    values.slice(index * batch, (index + 1) * batch),
  );
}

/** An entry as it was given, from its row. */
export const entryOf = (row: Pick<EntryRow, "header" | "body">): Entry => ({
  header: JSON.parse(row.header) as Entry["header"],
  body: row.body === null ? null : (JSON.parse(row.body) as Entry["body"]),
});

/** A row's kept state. */
export const partOf = (row: { readonly part: string }): Casebook => JSON.parse(row.part) as Casebook;

/** Takes the programme's counter row, and with it the only right to write, until the transaction ends. */
export async function lockCounter(tx: Writing, programme: string): Promise<number> {
  await tx
    .updateTable("counters")
    .set((row) => ({ position: row.ref("position") }))
    .where("programme", "=", programme)
    .execute();
  const { position } = await tx
    .selectFrom("counters")
    .select("position")
    .where("programme", "=", programme)
    .executeTakeFirstOrThrow();
  return position;
}

/** What the database holds as far as these entries touch it. */
export async function heldIn(tx: Writing, entries: readonly Entry[]): Promise<Held> {
  const headers = entries.filter(isEntry).map((entry) => entry.header);
  const held = { ids: new Map(), places: new Map(), heads: new Map(), erased: new Map() };
  const devices = Map.groupBy(headers, (header) => header.device);
  for (const ids of batches(headers.map((header) => header.id))) {
    const rows = await tx.selectFrom("entries").select(["id", "hash"]).where("id", "in", ids).execute();
    for (const row of rows) held.ids.set(row.id, row.hash);
    const erased = await tx.selectFrom("erased").selectAll().where("id", "in", ids).execute();
    for (const row of erased) held.erased.set(erasureKey(row), row);
  }
  for (const [device, own] of devices) {
    const head = await tx.selectFrom("heads").selectAll().where("device", "=", device).executeTakeFirst();
    if (head) held.heads.set(device, head);
    for (const numbers of batches(own.map((header) => header.seq))) {
      const rows = await tx
        .selectFrom("entries")
        .select(["seq", "hash"])
        .where("device", "=", device)
        .where("seq", "in", numbers)
        .execute();
      for (const row of rows) held.places.set(placeKey(device, row.seq), row.hash);
    }
  }
  return held;
}

/** Writes what a verdict admits, from this position on; returns the new position. */
export async function takeIn(tx: Writing, verdict: Verdict, from: number): Promise<number> {
  let position = from;
  for (const { entry, hash } of verdict.admitted) {
    position += 1;
    const { id, device, seq, kind } = entry.header;
    const header = JSON.stringify(entry.header);
    const body = entry.body === null ? null : JSON.stringify(entry.body);
    const row = { position, id, device, seq, root: rootOf(entry), kind, hash, header, body };
    await tx.insertInto("entries").values(row).execute();
  }
  for (const head of verdict.heads) {
    await tx
      .insertInto("heads")
      .values(head)
      .onConflict((conflict) => conflict.column("device").doUpdateSet(head))
      .execute();
  }
  for (const entry of verdict.quarantined) {
    await tx
      .insertInto("quarantine")
      .values({ hash: headerHash(entry.header), entry: JSON.stringify(entry) })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
  }
  await erase(tx, verdict.erased);
  await keepStates(tx, new Set(verdict.admitted.map(({ entry }) => rootOf(entry))), position);
  await tx.updateTable("counters").set({ position }).execute();
  return position;
}

async function erase(tx: Writing, erased: ReadonlyMap<string, Erasure>): Promise<void> {
  for (const { id, root } of erased.values()) {
    await tx
      .insertInto("erased")
      .values({ id, root })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
    await tx
      .updateTable("entries")
      .set({ body: null })
      .where("id", "=", id)
      .where("root", "=", root)
      .where("kind", "!=", "content-erased")
      .execute();
  }
  if (erased.size === 0) return;
  for (const { hash, entry } of await tx.selectFrom("quarantine").selectAll().execute()) {
    const kept = JSON.stringify(withoutErasedBody(JSON.parse(entry) as Entry, erased));
    if (kept !== entry) await tx.updateTable("quarantine").set({ entry: kept }).where("hash", "=", hash).execute();
  }
}

async function keepStates(tx: Writing, roots: ReadonlySet<string>, position: number): Promise<void> {
  for (const root of roots) {
    const rows = await tx.selectFrom("entries").select(["header", "body"]).where("root", "=", root).execute();
    const part = JSON.stringify(foldRoot(root, rows.map(entryOf)));
    const row = { root, fold_version: foldVersion, position, part };
    await tx
      .insertInto("states")
      .values(row)
      .onConflict((conflict) => conflict.column("root").doUpdateSet(row))
      .execute();
  }
}

/** Makes the states anew that another version of the fold has left. */
export async function renewStates(database: Database, programme: string): Promise<void> {
  await database.transaction().execute(async (tx) => {
    const position = await lockCounter(tx, programme);
    const outdated = await tx.selectFrom("states").select("root").where("fold_version", "!=", foldVersion).execute();
    await keepStates(tx, new Set(outdated.map((row) => row.root)), position);
  });
}
