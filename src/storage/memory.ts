/** A store that keeps in memory alone: for examples, tests and one-off answers. */
import { advance, type Folded, nothingFolded, rootOf } from "../casebook/index.ts";
import { type Entry, type EntryId, type Hash, type Head, headerHash } from "../journal/index.ts";
import { byDevice, type Erasure, type Held, judge, placeKey, withoutErasedBody } from "./admission.ts";
import { type JournalStore, pageSize } from "./contract.ts";

/** An empty store of one programme. */
export function memoryStore({ programme }: { readonly programme: string }): JournalStore {
  let entries: readonly Entry[] = [];
  let quarantine: readonly Entry[] = [];
  let folded: Folded = nothingFolded;
  const ids = new Map<EntryId, Hash>();
  const places = new Map<string, Hash>();
  const heads = new Map<string, Head>();
  const erased = new Map<string, Erasure>();
  const held: Held = { ids, places, heads, erased };

  return {
    programme,
    async push(given) {
      const verdict = judge(given, held, { programme, acceptsWithheld: false });
      for (const { entry, hash } of verdict.admitted) {
        ids.set(entry.header.id, hash);
        places.set(placeKey(entry.header.device, entry.header.seq), hash);
      }
      for (const head of verdict.heads) heads.set(head.device, head);
      for (const [key, erasure] of verdict.erased) erased.set(key, erasure);
      const admitted = verdict.admitted.map((each) => each.entry);
      entries = [...entries, ...admitted].map((entry) => withoutErasedBody(entry, verdict.erased));
      folded = advance(folded, admitted);
      quarantine = withQuarantined(quarantine, verdict.quarantined).map((entry) => withoutErasedBody(entry, erased));
      return { heads: verdict.heads, refused: verdict.refused };
    },
    async pull(cursor, limit = pageSize) {
      const page = entries.slice(cursor, cursor + limit);
      const last = Math.min(cursor, entries.length) + page.length;
      return { entries: page, cursor: last, more: last < entries.length };
    },
    entriesOf: async (root) => entries.filter((entry) => rootOf(entry) === root),
    all: async () => entries,
    heads: async () => [...heads.values()].sort(byDevice),
    states: async () => folded.casebook,
    quarantined: async () => quarantine,
    close: async () => {},
  };
}

const withQuarantined = (known: readonly Entry[], added: readonly Entry[]): readonly Entry[] => [
  ...new Map([...known, ...added].map((entry) => [headerHash(entry.header), entry])).values(),
];
