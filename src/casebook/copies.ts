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
    for (const other of header.replaces) if (other !== id) replacing.set(other, [...(replacing.get(other) ?? []), id]);
  // What was erased says nothing, whether its words have gone from here yet or not.
  const said = (id: EntryId): string | null => {
    const [entry, reading] = [entries.get(id), readings.get(id)];
    return entry && reading && !erased.has(id) ? wordsOf(entry, reading) : null;
  };
  const found = new Set(replacing.keys());
  for (const [replaced, by] of replacing) {
    const original = entries.get(replaced);
    const words = original && said(replaced);
    for (const [says, same] of Map.groupBy(by, said)) {
      if (says === null) continue;
      const isCopied = original && says === words && same.some((id) => isCopyOf(entries.get(id), original));
      const copies = isCopied ? [replaced, ...same] : same;
      const isReplaced = copies.some((id) => replacing.get(id)?.some((other) => !copies.includes(other)));
      const first = isReplaced ? null : copies.filter((id) => !replacing.has(id)).sort()[0];
      if (copies.length > 1) for (const id of copies) if (id !== first) found.add(id);
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
