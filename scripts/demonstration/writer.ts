/** Writes a journal as one device would, with a clock and chance that come from a seed: the same script gives the same bytes. */
import { type Entry, type EntryDraft, headerHash, newEntryId, newSalt, sealEntry } from "../../src/journal/index.ts";
import { type RandomStream, randomStream } from "../../src/numerics/index.ts";

export interface Writer {
  /** Seals a draft as the next entry; returns it so that a later one can replace it. */
  readonly write: (author: string, draft: EntryDraft) => Entry;
  readonly entries: readonly Entry[];
  /** Chance for what was seen and counted. */
  readonly stream: RandomStream;
  /** An id that is the same in every run. */
  readonly id: (name: string) => string;
}

/** A writer for the programme `demonstration`. Ids are readable names: they are invented and collide with nothing real. */
export function openWriter(seed: number): Writer {
  const entries: Entry[] = [];
  const chance = randomStream({ seed, stream: 1 });
  const sixteenBytes = () => {
    const bytes = new Uint8Array(16);
    const view = new DataView(bytes.buffer);
    for (let word = 0; word < 4; word += 1) view.setUint32(word * 4, chance.nextWord());
    return bytes;
  };
  let clock = 0;
  const write = (author: string, draft: EntryDraft): Entry => {
    // Written down at eight in the evening of the day, each entry a minute after the last one of that day.
    const evening = Date.parse(`${draft.at.slice(0, 10)}T20:00:00.000Z`);
    clock = Math.max(clock + 60_000, evening);
    const previous = entries.at(-1);
    const entry = sealEntry(
      draft,
      {
        device: "demonstration",
        seq: entries.length + 1,
        prev: previous ? headerHash(previous.header) : null,
        programme: "demonstration",
        author,
        recordedAt: new Date(clock).toISOString(),
      },
      { id: newEntryId(clock, sixteenBytes()), salt: newSalt(sixteenBytes()) },
    );
    entries.push(entry);
    return entry;
  };
  return { write, entries, stream: randomStream({ seed, stream: 2 }), id: (name) => `demonstration-${name}` };
}
