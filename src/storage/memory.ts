/** A store that keeps in memory alone: for examples, tests and one-off answers. */
import { advance, type Folded, nothingFolded, rootOf } from "../casebook/index.ts";
import { type Entry, headerHash } from "../journal/index.ts";
import { byDevice, type Holding, hold, judge, withoutErasedBody } from "./admission.ts";
import { type JournalStore, pageSize } from "./contract.ts";

/** An empty store of one programme. */
export function memoryStore({ programme }: { readonly programme: string }): JournalStore {
  let entries: readonly Entry[] = [];
  let quarantine: readonly Entry[] = [];
  let folded: Folded = nothingFolded;
  const held: Holding = { ids: new Map(), places: new Map(), heads: new Map(), erased: new Map() };

  return {
    programme,
    async push(given) {
      const verdict = judge(given, held, { programme, acceptsWithheld: false });
      hold(held, verdict);
      const admitted = verdict.admitted.map((each) => each.entry);
      entries = [...entries, ...admitted].map((entry) => withoutErasedBody(entry, verdict.erased));
      folded = advance(folded, admitted);
      quarantine = withQuarantined(quarantine, verdict.quarantined).map((entry) =>
        withoutErasedBody(entry, held.erased),
      );
      return { heads: verdict.heads, refused: verdict.refused };
    },
    async pull(cursor, limit = pageSize) {
      const page = entries.slice(cursor, cursor + limit);
      const last = Math.min(cursor, entries.length) + page.length;
      return { entries: page, cursor: last, more: last < entries.length };
    },
    entriesOf: async (root) => entries.filter((entry) => rootOf(entry) === root),
    all: async () => entries,
    heads: async () => [...held.heads.values()].sort(byDevice),
    states: async () => folded.casebook,
    quarantined: async () => quarantine,
    close: async () => {},
  };
}

const withQuarantined = (known: readonly Entry[], added: readonly Entry[]): readonly Entry[] => [
  ...new Map([...known, ...added].map((entry) => [headerHash(entry.header), entry])).values(),
];
