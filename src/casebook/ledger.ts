/** What was met of one root: sets that only grow, so that neither order nor copies can matter. */
import {
  type Entry,
  type EntryId,
  erasedBy,
  type Reading,
  readEntry,
  type UnreadReason,
  wasRead,
} from "../journal/index.ts";
import { passedOver } from "./copies.ts";

/** Entries of one root with what they say of each other. */
export interface Ledger {
  readonly entries: ReadonlyMap<EntryId, Entry>;
  /** Bodies as read, so that no body is read twice. */
  readonly readings: ReadonlyMap<EntryId, Reading | { readonly unread: UnreadReason }>;
  /** Ids that a `content-erased` entry names, arrived or not. */
  readonly erased: ReadonlySet<EntryId>;
}

/** The ledger of no entries. */
export const noLedger: Ledger = { entries: new Map(), readings: new Map(), erased: new Set() };

/** The ledger with further entries of its root. */
export function ledgerOf(ledger: Ledger, entries: readonly Entry[]): Ledger {
  const met = new Map(ledger.entries);
  const readings = new Map(ledger.readings);
  const erased = new Set(ledger.erased);
  for (const entry of entries) {
    const { id } = entry.header;
    const known = met.get(id);
    const kept = known ? preferred(known, entry) : entry;
    if (kept !== known) {
      met.set(id, kept);
      readings.set(id, readEntry(kept));
    }
    for (const other of erasedBy(entry)) erased.add(other);
  }
  return { entries: met, readings, erased };
}

/** Of two copies the one that has a body; of two that differ, which must not be, always the same one. */
function preferred(one: Entry, other: Entry): Entry {
  if ((one.body === null) !== (other.body === null)) return one.body === null ? other : one;
  return JSON.stringify(one) <= JSON.stringify(other) ? one : other;
}

/** An entry that counts, and how its body was read. */
export interface Standing {
  readonly entry: Entry;
  readonly reading: Reading | { readonly unread: UnreadReason };
}

/**
 * The entries that no other replaces, copies once, oldest first. A withdrawn withdrawal does not bring back what it
 * withdrew: that is recorded again. An erased body is not read even where it is still here; an erasure itself is never erased.
 */
export function standing(ledger: Ledger): readonly Standing[] {
  const passed = passedOver(ledger);
  return [...ledger.entries.values()]
    .filter(({ header: { id } }) => !passed.has(id))
    .sort((one, other) => compareStamp(one, other))
    .map((entry) => {
      const { id, kind } = entry.header;
      if (kind !== "content-erased" && ledger.erased.has(id)) return { entry, reading: { unread: "erased" } };
      return { entry, reading: ledger.readings.get(id) ?? readEntry(entry) };
    });
}

/** By the time it was written down, then by id: for listing only, never for deciding. */
function compareStamp({ header: one }: Entry, { header: other }: Entry): number {
  const [a, b] = [`${one.recordedAt} ${one.id}`, `${other.recordedAt} ${other.id}`];
  return a < b ? -1 : a > b ? 1 : 0;
}

/** A standing entry whose body was read. */
export interface ReadEntry {
  readonly entry: Entry;
  readonly reading: Reading;
}

/** Whether the body was read. */
export const isRead = (each: Standing): each is ReadEntry => wasRead(each.reading);
