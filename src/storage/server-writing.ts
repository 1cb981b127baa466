/** What is done inside the service's one transaction: looking up, taking in, erasing. */
import { rootOf } from "../casebook/index.ts";
import { type Entry, headerHash } from "../journal/index.ts";
import {
  canBeLookedUp,
  type Erasure,
  erasureKey,
  type Holding,
  placeKey,
  type Verdict,
  withoutErasedBody,
} from "./admission.ts";
import { batches } from "./batches.ts";
import { forgetName, keepNames } from "./file-names.ts";
import { dropNights } from "./nights.ts";
import { keepStates } from "./projection.ts";
import { keepScopes } from "./scopes.ts";
import type { EntryRow, Writing } from "./tables.ts";

/** What the database holds as far as these entries touch it. */
export async function heldIn(tx: Writing, entries: readonly Entry[]): Promise<Holding> {
  const headers = entries.filter(canBeAsked).map((entry) => entry.header);
  const held: Holding = { ids: new Map(), places: new Map(), heads: new Map(), erased: new Map() };
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

/** Whether it names a place and an id at all: what is no entry is judged later, and looked for in vain here. */
function canBeAsked(entry: Entry): boolean {
  const { id, device, seq, about } = (entry as Partial<Entry> | null)?.header ?? ({} as Partial<Entry["header"]>);
  return (
    typeof id === "string" &&
    /^[0-9a-f-]{36}$/.test(id) &&
    typeof device === "string" &&
    Number.isSafeInteger(seq) &&
    Array.isArray(about) &&
    about.every((each) => typeof each === "string") &&
    canBeLookedUp(entry)
  );
}

/** Writes what a verdict admits, from this position on; returns the new position. */
export async function takeIn(tx: Writing, verdict: Verdict, from: number): Promise<number> {
  const rows = verdict.admitted.map(({ entry, hash }, index): EntryRow => {
    const { id, device, seq, kind } = entry.header;
    const header = JSON.stringify(entry.header);
    const body = entry.body === null ? null : JSON.stringify(entry.body);
    return { position: from + index + 1, id, device, seq, root: rootOf(entry), kind, hash, header, body };
  });
  for (const some of batches(rows)) await tx.insertInto("entries").values(some).execute();
  const position = from + rows.length;
  for (const head of verdict.heads) {
    await tx
      .insertInto("heads")
      .values(head)
      .onConflict((conflict) => conflict.column("device").doUpdateSet(head))
      .execute();
  }
  await keepApart(tx, verdict.quarantined);
  await settleQuarantine(tx, verdict);
  await keepNames(
    tx,
    verdict.admitted.map(({ entry }) => entry),
  );
  await erase(tx, verdict.erased);
  const { programme } = await tx.selectFrom("counters").select("programme").executeTakeFirstOrThrow();
  await keepScopes(tx, { programme, from, entries: verdict.admitted.map(({ entry }) => entry) });
  await keepStates(tx, new Set(verdict.admitted.map(({ entry }) => rootOf(entry))), position);
  await tx.updateTable("counters").set({ position }).execute();
  return position;
}

/** An entry of a lost device that was found and sent again is kept apart no longer. */
async function settleQuarantine(tx: Writing, { admitted }: Verdict): Promise<void> {
  for (const hashes of batches(admitted.map(({ hash }) => hash)))
    await tx.deleteFrom("quarantine").where("hash", "in", hashes).execute();
}

async function erase(tx: Writing, erased: ReadonlyMap<string, Erasure>): Promise<void> {
  const copied = await copiedBy(tx, erased);
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
    await forgetName(tx, id, root);
  }
  if (erased.size === 0) return;
  await dropNights(tx);
  for (const { hash, entry } of await tx.selectFrom("quarantine").selectAll().execute()) {
    const kept = JSON.stringify(withoutErasedBody(JSON.parse(entry) as Entry, copied));
    if (kept !== entry) await tx.updateTable("quarantine").set({ entry: kept }).where("hash", "=", hash).execute();
  }
}

/** What is erased, and what stands under the ids that it replaced: its words may be kept apart under one of them. */
async function copiedBy(tx: Writing, erased: ReadonlyMap<string, Erasure>): Promise<ReadonlyMap<string, Erasure>> {
  const copied = new Map(erased);
  for (const ids of batches([...erased.values()].map(({ id }) => id))) {
    const rows = await tx.selectFrom("entries").select(["root", "header"]).where("id", "in", ids).execute();
    for (const { root, header } of rows.filter((row) => erased.has(erasureKey({ id: idOf(row), root: row.root }))))
      for (const id of (JSON.parse(header) as Entry["header"]).replaces)
        copied.set(erasureKey({ id, root }), { id, root });
  }
  return copied;
}

const idOf = ({ header }: Pick<EntryRow, "header">): string => (JSON.parse(header) as Entry["header"]).id;

/** Keeps entries apart from the journal, each once. */
export async function keepApart(tx: Writing, entries: readonly Entry[]): Promise<void> {
  for (const entry of entries)
    await tx
      .insertInto("quarantine")
      .values({ hash: headerHash(entry.header), entry: JSON.stringify(entry) })
      .onConflict((conflict) => conflict.doNothing())
      .execute();
}
