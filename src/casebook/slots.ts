/** Slots: values of one kind, sorted into the places where only one of them can stand. */
import type { BodyOf, Kind } from "../journal/index.ts";
import type { ReadEntry } from "./ledger.ts";
import type { Candidate, Kept } from "./state.ts";

/** One value with the ids it is about, root first. */
export interface Item<K extends Kind> {
  readonly candidate: Candidate<BodyOf<K>>;
  readonly about: readonly string[];
}

/** Read entries of one root, by kind, oldest first. */
export type ByKind = ReadonlyMap<string, readonly ReadEntry[]>;

/** Entries by kind, order kept. */
export const byKind = (entries: readonly ReadEntry[]): ByKind => Map.groupBy(entries, (each) => each.reading.kind);

/** Whether there is an entry of any of these kinds. */
export const hasAny = (entries: ByKind, kinds: readonly Kind[]): boolean => kinds.some((kind) => entries.has(kind));

/** The values of one kind, oldest first. */
export function itemsOf<K extends Kind>(entries: ByKind, kind: K): readonly Item<K>[] {
  return (entries.get(kind) ?? []).map(({ entry: { header }, reading }) => ({
    candidate: {
      value: reading.data as BodyOf<K>,
      entry: header.id,
      at: header.at,
      recordedAt: header.recordedAt,
      author: header.author,
      device: header.device,
    },
    about: header.about,
  }));
}

/** The slot that these values stand in; null when there are none. */
export function keep<T>(candidates: readonly Candidate<T>[]): Kept<T> | null {
  const [first, ...more] = candidates;
  return first ? { candidates: [first, ...more] } : null;
}

/** The one slot of a kind that has no more than one in a root. */
export const slotOf = <K extends Kind>(entries: ByKind, kind: K): Kept<BodyOf<K>> | null =>
  keep(itemsOf(entries, kind).map((item) => item.candidate));

/** Slots of a kind by key, in order of key. */
export const slotsBy = <K extends Kind>(
  items: readonly Item<K>[],
  key: (item: Item<K>) => string,
): Readonly<Record<string, Kept<BodyOf<K>>>> =>
  grouped(items, key, (own) => keep(own.map((item) => item.candidate)) as Kept<BodyOf<K>>);

/** Values by key, in order of key, each group made into one thing. */
export function grouped<Value, Made>(
  values: readonly Value[],
  key: (value: Value) => string,
  make: (own: readonly [Value, ...Value[]], key: string) => Made,
): Readonly<Record<string, Made>> {
  const groups = [...Map.groupBy(values, key)].sort(([one], [other]) => (one < other ? -1 : 1));
  return Object.fromEntries(groups.map(([name, [first, ...more]]) => [name, make([first as Value, ...more], name)]));
}

/** The id that all of these agree on; null when they differ or there are none. */
export function agreed(ids: readonly (string | undefined)[]): string | null {
  const [first, ...more] = new Set(ids);
  return more.length === 0 ? (first ?? null) : null;
}
