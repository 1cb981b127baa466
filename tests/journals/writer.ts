/** Writes journals for tests: a device with a seeded source of chance and a clock that ticks once an entry. */
import {
  type Entry,
  type EntryDraft,
  type Head,
  headsOf,
  newEntryId,
  newSalt,
  sealChain,
} from "../../src/journal/index.ts";

export interface Writer {
  readonly device: string;
  /** Seals drafts onto the end of this device's chain. */
  write(...drafts: readonly EntryDraft[]): readonly Entry[];
  head(): Head | null;
}

export interface WriterSettings {
  readonly device?: string;
  readonly programme?: string;
  readonly author?: string;
  /** First instant; each entry is a minute later. */
  readonly from?: string;
  readonly head?: Head | null;
}

export function writer(settings: WriterSettings = {}): Writer {
  const { device = "phone-1", programme = "main", author = "R. Vale", from = "2026-03-09T08:00:00.000Z" } = settings;
  const chance = seededBytes(device);
  let head: Head | null = settings.head ?? null;
  let milliseconds = Date.parse(from);
  return {
    device,
    head: () => head,
    write(...drafts) {
      return drafts.map((draft) => {
        const recordedAt = new Date(milliseconds).toISOString();
        const piece = { id: newEntryId(milliseconds, chance()), salt: newSalt(chance()) };
        milliseconds += 60_000;
        const [entry] = sealChain([draft], { device, programme, author, recordedAt, head }, [piece]);
        if (!entry) throw new Error("nothing was sealed");
        head = headsOf([entry])[0] ?? null;
        return entry;
      });
    },
  };
}

/** Sixteen bytes at a time from a seed: xorshift, good enough to make ids differ, and the same on every run. */
export function seededBytes(seed: string): () => Uint8Array {
  let state = [...seed].reduce((sum, letter) => (Math.imul(sum, 31) + letter.charCodeAt(0)) >>> 0, 2463534242) || 1;
  return () =>
    Uint8Array.from({ length: 16 }, () => {
      state ^= state << 13;
      state ^= state >>> 17;
      state ^= state << 5;
      state >>>= 0;
      return state & 0xff;
    });
}
