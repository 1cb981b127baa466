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
const replacingOf = ({ entries }: Ledger): Replacing => {
  const pairs = [...entries.values()].flatMap(({ header: { id, replaces } }) =>
    [...new Set(replaces)].filter((other) => other !== id).map((other) => [other, id] as const),
  );
  return new Map([...Map.groupBy(pairs, ([other]) => other)].map(([other, by]) => [other, by.map(([, id]) => id)]));
};

/** Groups of two or more that are copies of each other. */
function groupsOf(ledger: Ledger, replacing: Replacing): Iterable<readonly EntryId[]> {
  const groups = new Map<EntryId, readonly EntryId[]>();
  for (const [replaced, by] of replacing) {
    const words = said(ledger, replaced);
    const original = ledger.entries.get(replaced);
    const same = Map.groupBy(by, (id) => said(ledger, id));
    for (const [says, ids] of same) {
      if (says === null) continue;
      const isCopied = original && says === words && ids.some((id) => isCopyOf(ledger, id, original));
      const met = isCopied ? [replaced, ...ids] : ids;
      const group = [...new Set(met.flatMap((id) => groups.get(id) ?? id))];
      if (group.length > 1) for (const id of group) groups.set(id, group);
    }
  }
  return new Set(groups.values());
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
  if (!original.replaces.every((each) => replaces.includes(each))) return false;
  const more = replaces.filter((each) => each !== original.id && !original.replaces.includes(each));
  return more.every((each) =>
    ledger.entries.get(each)?.header.replaces.some((earlier) => original.replaces.includes(earlier)),
  );
}
