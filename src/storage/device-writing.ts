/** What is done inside the device's one transaction: looking up, taking in, erasing, keeping states. */
import { foldRoot, rootOf } from "../casebook/index.ts";
import { type Entry, type EntryId, type Hash, type Head, isEntry } from "../journal/index.ts";
import {
  type Admitted,
  type Erasure,
  erasureKey,
  type Held,
  placeKey,
  type Verdict,
  withoutErasedBody,
} from "./admission.ts";
import { dropNamed } from "./device-files.ts";
import type { DeviceRecord, Writing } from "./indexed-db.ts";

/** What the database holds as far as these entries touch it. */
export async function heldIn(tx: Writing, entries: readonly Entry[]): Promise<Held> {
  const store = tx.objectStore("entries");
  const byPlace = store.index("by-place");
  const fit = entries.filter(isEntry);
  const headers = fit.map((entry) => entry.header);
  const withBody = new Set(fit.filter(({ body }) => body !== null).map(({ header }) => header.id));
  const ids = new Map<EntryId, Hash>();
  const places = new Map<string, Hash>();
  const heads = new Map<string, Head>();
  const erased = new Map<string, Erasure>();
  await Promise.all([
    ...headers.map(async ({ id, device, seq, about: [root = ""] }) => {
      const [same, placed, named] = await Promise.all([
        store.get(id),
        byPlace.get([device, seq]),
        tx.objectStore("erased").get([id, root]),
      ]);
      // Held without its body, which was withheld and comes now: as if it were not here yet.
      if (same?.entry.body === null && withBody.has(id) && !named && placed?.hash === same.hash) return;
      if (same) ids.set(id, same.hash);
      if (placed) places.set(placeKey(device, seq), placed.hash);
      if (named) erased.set(erasureKey(named), named);
    }),
    ...[...new Set(headers.map((header) => header.device))].map(async (device) => {
      const head = await tx.objectStore("heads").get(device);
      if (head) heads.set(device, head);
    }),
  ]);
  return { ids, places, heads, erased };
}

export interface TakingIn {
  readonly admitted: readonly Admitted[];
  readonly heads: readonly Head[];
  readonly erased: ReadonlyMap<string, Erasure>;
  readonly record: DeviceRecord;
  readonly areUnsent: boolean;
}

/** Writes admitted entries, heads, erasures and the states of the roots touched; returns the new position. */
export async function takeIn(tx: Writing, { admitted, heads, erased, record, areUnsent }: TakingIn): Promise<number> {
  let position = record.position;
  const writes: Promise<unknown>[] = [];
  for (const { entry, hash } of admitted) {
    const { id, device, seq, kind } = entry.header;
    position += 1;
    const row = { id, device, seq, root: rootOf(entry), kind, hash, position, entry };
    writes.push(tx.objectStore("entries").put(areUnsent ? { ...row, unsent: 1 } : row));
  }
  for (const head of heads) writes.push(tx.objectStore("heads").put(head));
  await Promise.all(writes);
  await erase(tx, erased);
  await keepStates(tx, new Set(admitted.map(({ entry }) => rootOf(entry))), position);
  return position;
}

async function erase(tx: Writing, erased: ReadonlyMap<string, Erasure>): Promise<void> {
  const gone: Entry[] = [];
  for (const { id, root } of erased.values()) {
    await tx.objectStore("erased").put({ id, root });
    const row = await tx.objectStore("entries").get(id);
    if (row?.root === root && row.kind !== "content-erased" && row.entry.body !== null) {
      await tx.objectStore("entries").put({ ...row, entry: { header: row.entry.header, body: null } });
      gone.push(row.entry);
    }
  }
  await dropNamed(tx, gone);
  if (erased.size === 0) return;
  for (const { hash, entry } of await tx.objectStore("quarantine").getAll()) {
    await tx.objectStore("quarantine").put({ hash, entry: withoutErasedBody(entry, erased) });
  }
}

/** Folds the roots anew from their entries and keeps what comes out. */
export async function keepStates(tx: Writing, roots: ReadonlySet<string>, position: number): Promise<void> {
  for (const root of roots) {
    const rows = await tx.objectStore("entries").index("by-root").getAll(root);
    const part = foldRoot(
      root,
      rows.map((row) => row.entry),
    );
    await tx.objectStore("states").put({ root, position, words: JSON.stringify(part) });
  }
}

/** Keeps apart the entries that claim a taken number. */
export async function quarantine(tx: Writing, { quarantined }: Verdict, hashOf: (entry: Entry) => Hash): Promise<void> {
  for (const entry of quarantined) await tx.objectStore("quarantine").put({ hash: hashOf(entry), entry });
}
