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
 * Ids of one root that do not count, besides those that are replaced. Copies of one entry, made by people who did not
 * know of each other, stand once, by the smallest id; what replaces one of them replaces all. Follows from the set of
 * entries alone.
 */
export function doubles(ledger: Ledger): ReadonlySet<EntryId> {
  const replacing = replacingOf(ledger);
  const found = new Set<EntryId>();
  for (const group of groupsOf(ledger, replacing)) {
    const isReplaced = group.some((id) => replacing.get(id)?.some((other) => !group.includes(other)));
    const first = isReplaced ? null : group.filter((id) => !replacing.has(id)).sort()[0];
    for (const id of group) if (id !== first) found.add(id);
  }
  return found;
}

type Replacing = ReadonlyMap<EntryId, readonly EntryId[]>;

/** Which entries name an id, arrived or not. */
function replacingOf({ entries }: Ledger): Replacing {
  const replacing = new Map<EntryId, EntryId[]>();
  for (const { header } of entries.values())
    for (const other of new Set(header.replaces)) {
      if (other === header.id) continue;
      const known = replacing.get(other);
      if (known) known.push(header.id);
      else replacing.set(other, [header.id]);
    }
  return replacing;
}

/** Groups of two or more that are copies of each other. */
function groupsOf(ledger: Ledger, replacing: Replacing): readonly (readonly EntryId[])[] {
  const groups = new Map<EntryId, readonly EntryId[]>();
  const join = (one: EntryId, other: EntryId) => {
    const together = [...new Set([...(groups.get(one) ?? [one]), ...(groups.get(other) ?? [other])])];
    for (const id of together) groups.set(id, together);
  };
  for (const [replaced, by] of replacing) {
    const original = ledger.entries.get(replaced);
    const copies = original ? by.filter((id) => isCopyOf(ledger, id, original)) : [];
    const same = Map.groupBy(by.length > 1 || copies.length > 0 ? by : [], (id) => said(ledger, id));
    for (const [words, [first, ...others]] of same)
      if (words !== null && first !== undefined) for (const other of others) join(first, other);
    for (const id of copies) if (said(ledger, id) === said(ledger, replaced)) join(replaced, id);
  }
  return [...new Set(groups.values())];
}

/** What was erased says nothing, whether its words have gone from here yet or not; withdrawals have nothing to say. */
function said({ entries, readings, erased }: Ledger, id: EntryId): string | null {
  const [entry, reading] = [entries.get(id), readings.get(id)];
  if (!entry || !reading || erased.has(id)) return null;
  return ["entry-withdrawn", "content-erased"].includes(entry.header.kind) ? null : wordsOf(entry, reading);
}

/**
 * Whether it replaces the entry, what that one replaced, and else only what came in for those: to choose one side of a
 * conflict is no copy, though it says the same.
 */
function isCopyOf(ledger: Ledger, id: EntryId, { header: original }: Entry): boolean {
  const replaces = ledger.entries.get(id)?.header.replaces ?? [];
  if (said(ledger, id) === null || !original.replaces.every((each) => replaces.includes(each))) return false;
  const more = replaces.filter((each) => each !== original.id && !original.replaces.includes(each));
  return more.every((each) =>
    ledger.entries.get(each)?.header.replaces.some((earlier) => original.replaces.includes(earlier)),
  );
}
