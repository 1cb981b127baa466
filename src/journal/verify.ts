/** Checking the chain: is everything there that was written down, and as it was written? */
import { chainWalk } from "./chain-walk.ts";
import type { Entry, EntryId, Head } from "./entry.ts";
import { contentHash, type Digest, headerHash } from "./hash.ts";
import { readEntry } from "./read.ts";

/**
 * What is wrong at a place of a chain.
 * gap: the entry is not there · wrong-prev: it does not follow the one before it · wrong-content: its body is not
 * the one it was sealed with · fork: two entries have this number · seq-restart: the device began again at 1 ·
 * head-missing: a head was noted here and there is no entry · head-differs: it is another entry than the noted one.
 */
export type ChainFaultReason =
  | "gap"
  | "wrong-prev"
  | "wrong-content"
  | "fork"
  | "seq-restart"
  | "head-missing"
  | "head-differs";

/** One place of a chain where something is wrong. */
export interface ChainFault {
  readonly device: string;
  readonly seq: number;
  /** Ids of the entries at this place; none for a gap or a head. */
  readonly entries: readonly EntryId[];
  readonly reason: ChainFaultReason;
}

/** An entry without a body: lawful, and said aloud. */
export interface MissingBody {
  readonly entry: EntryId;
  readonly device: string;
  readonly seq: number;
  readonly why: "erased" | "withheld";
  /** Who erased it and when, as the entry that did says; null when it is withheld. */
  readonly erased: { readonly by: string; readonly at: string; readonly entry: EntryId } | null;
}

/** What checking a journal found. */
export interface VerifyReport {
  /** True when there is no fault; missing bodies are none. */
  readonly isIntact: boolean;
  /** Different entries looked at. */
  readonly checked: number;
  /** By device, then by number: the first fault of a device is its first damaged or missing entry. */
  readonly faults: readonly ChainFault[];
  readonly missingBodies: readonly MissingBody[];
  /** The newest entry of each device, to note and to stand on a report. */
  readonly heads: readonly Head[];
}

/**
 * Walks every device's chain from its first entry. Heads noted inside the journal (`heads-noted`) are held against it,
 * and so are those given: only heads kept elsewhere show that the end of a chain was cut off or that the whole
 * journal was written anew. Entries may come in any order and more than once.
 */
export function verifyChain(entries: readonly Entry[], notedHeads: readonly Head[] = []): VerifyReport {
  const walk = chainWalk(notedHeads);
  for (const entry of entries.toSorted((one, other) => one.header.seq - other.header.seq)) walk.take(entry);
  return walk.report();
}

/** The newest entry of each device among these, by device. */
export function headsOf(entries: readonly Entry[]): readonly Head[] {
  const newest = new Map<string, Entry>();
  for (const entry of entries) {
    const { device, seq, id } = entry.header;
    const known = newest.get(device)?.header;
    if (!known || seq > known.seq || (seq === known.seq && id < known.id)) newest.set(device, entry);
  }
  return [...newest.values()]
    .map(({ header }) => ({ device: header.device, seq: header.seq, hash: headerHash(header) }))
    .sort((one, other) => (one.device < other.device ? -1 : 1));
}

/** Whether the body is the one that the header was sealed with; true when it is withheld or erased. */
export function hasItsContent(entry: Entry, digest?: Digest): boolean {
  if (entry.body === null) return true;
  try {
    return contentHash(entry.body, digest) === entry.header.content;
  } catch {
    return false; // it has no JSON spelling, so it is not what was sealed
  }
}

/** Ids of the entries whose bodies this entry erases; none unless it is a readable `content-erased`. */
export function erasedBy(entry: Entry): readonly EntryId[] {
  if (entry.header.kind !== "content-erased") return [];
  const reading = readEntry(entry);
  return "kind" in reading && reading.kind === "content-erased" ? reading.data.entries : [];
}
