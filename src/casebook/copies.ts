/** Entries that say the same in the place of the same entry: what was written once counts once. */
import { canonicalJson, type Entry, type EntryId, readEntry, wasRead } from "../journal/index.ts";
import type { Ledger } from "./ledger.ts";

/** Its kind, time, ids and words in the newest shape; null when this version cannot read them, or none are here. */
export function wordsOf(entry: Entry, reading = readEntry(entry)): string | null {
  const { at, about } = entry.header;
  return wasRead(reading) ? canonicalJson([reading.kind, at, about, reading.data]) : null;
}

/** Whether both say the same of the same thing at the same time. */
export const saysTheSame = (one: Entry, other: Entry): boolean => {
  const words = wordsOf(one);
  return words !== null && words === wordsOf(other);
};

/**
 * Ids of one root that do not count: what another entry replaces, arrived or not, and copies but one. Copies of one
 * entry, made by people who did not know of each other, stand once, by the smallest id; what replaces one of them
 * replaces all. Follows from the set of entries alone.
 */
export function passedOver({ entries, readings, erased }: Ledger): ReadonlySet<EntryId> {
  const replacing = new Map<EntryId, EntryId[]>();
  for (const [id, { header }] of entries)
    for (const other of header.replaces) {
      const by = replacing.get(other) ?? [];
      if (other !== id) replacing.set(other, by);
      by.push(id);
    }
  // Each once: one entry may replace many. What was erased says nothing, whether its words have gone from here or not.
  const words = new Map<EntryId, string | null>();
  const said = (id: EntryId): string | null => {
    const [entry, reading] = [entries.get(id), readings.get(id)];
    if (!words.has(id)) words.set(id, entry && reading && !erased.has(id) ? wordsOf(entry, reading) : null);
    return words.get(id) ?? null;
  };
  const found = new Set(replacing.keys());
  for (const [replaced, by] of replacing) {
    const original = entries.get(replaced);
    for (const [says, same] of Map.groupBy(by, said)) {
      if (says === null) continue;
      const isCopied = original && says === said(replaced) && same.some((id) => isCopyOf(entries.get(id), original));
      const copies = new Set(isCopied ? [replaced, ...same] : same);
      if (copies.size < 2) continue;
      const isReplaced = [...copies].some((id) => replacing.get(id)?.some((other) => !copies.has(other)));
      const first = isReplaced ? null : [...copies].filter((id) => !replacing.has(id)).sort()[0];
      for (const id of copies) if (id !== first) found.add(id);
    }
  }
  return found;
}

/**
 * Whether it replaces the entry and all that that one replaced. To choose one side of a conflict is no copy, though it
 * says the same: it names both sides, and not what they replaced.
 */
function isCopyOf(copy: Entry | undefined, { header: { replaces } }: Entry): boolean {
  const also = copy?.header.replaces ?? [];
  return (replaces.length > 0 || also.length === 1) && replaces.every((each) => also.includes(each));
}
