/** Checking the chain: is everything there that was written down, and as it was written? */
import type { Entry, EntryId, Hash, Head } from "./entry.ts";
import { contentHash, headerHash } from "./hash.ts";
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
  /** Ids of the entries at this place; none for a gap. */
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
 * journal was written anew.
 */
export function verifyChain(entries: readonly Entry[], notedHeads: readonly Head[] = []): VerifyReport {
  const places = byPlace(entries);
  const heads = [...notedHeads, ...headsNotedIn(entries)];
  const devices = [...new Set([...places.keys(), ...heads.map((head) => head.device)])].sort();
  const faults = devices.flatMap((device) =>
    faultsOf(
      device,
      places.get(device) ?? new Map(),
      heads.filter((head) => head.device === device),
    ),
  );
  return {
    isIntact: faults.length === 0,
    checked: [...places.values()].flatMap((chain) => [...chain.values()]).reduce((sum, at) => sum + at.length, 0),
    faults,
    missingBodies: missingBodies([...places.values()].flatMap((chain) => [...chain.values()].flat())),
    heads: headsOf(entries),
  };
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

/** The heads that `heads-noted` entries among these hold. */
const headsNotedIn = (entries: readonly Entry[]): readonly Head[] =>
  entries.flatMap((entry) => {
    const reading = entry.header.kind === "heads-noted" ? readEntry(entry) : null;
    return reading && "kind" in reading && reading.kind === "heads-noted" ? reading.data.heads : [];
  });

interface Placed {
  readonly entry: Entry;
  readonly hash: Hash;
}
type Chain = ReadonlyMap<number, readonly Placed[]>;

/** Entries by device and number; the same header met twice counts once, and the copy with a body is kept. */
function byPlace(entries: readonly Entry[]): ReadonlyMap<string, Chain> {
  const distinct = new Map<Hash, Placed>();
  for (const entry of entries) {
    const hash = headerHash(entry.header);
    const known = distinct.get(hash);
    if (!known || (known.entry.body === null && entry.body !== null)) distinct.set(hash, { entry, hash });
  }
  const devices = new Map<string, Map<number, Placed[]>>();
  for (const placed of distinct.values()) {
    const { device, seq } = placed.entry.header;
    const chain = devices.get(device) ?? new Map<number, Placed[]>();
    devices.set(device, chain);
    chain.set(seq, [...(chain.get(seq) ?? []), placed]);
  }
  return devices;
}

function faultsOf(device: string, chain: Chain, noted: readonly Head[]): readonly ChainFault[] {
  const faults: ChainFault[] = [];
  const last = Math.max(0, ...chain.keys());
  const fault = (seq: number, reason: ChainFaultReason, at: readonly Placed[]) =>
    faults.push({ device, seq, reason, entries: at.map((each) => each.entry.header.id).sort() });

  let expected = 1;
  for (const seq of [...chain.keys()].sort((one, other) => one - other)) {
    const at = chain.get(seq) ?? [];
    if (seq > expected) fault(expected, "gap", []); // one fault a gap, however wide
    if (at.length > 1) fault(seq, seq === 1 ? "seq-restart" : "fork", at);
    const before = chain.get(seq - 1);
    for (const placed of at) {
      if (!follows(placed, before)) fault(seq, "wrong-prev", [placed]);
      if (placed.entry.body && !hasItsContent(placed.entry)) fault(seq, "wrong-content", [placed]);
    }
    expected = seq + 1;
  }
  for (const head of noted) {
    const at = chain.get(head.seq);
    if (!at) fault(head.seq, "head-missing", []);
    else if (!at.some((placed) => placed.hash === head.hash)) fault(head.seq, "head-differs", at);
  }
  // A number past the end is a missing head; inside the chain the gap itself already says it.
  return faults
    .filter((each) => each.reason !== "head-missing" || each.seq > last)
    .sort((one, other) => one.seq - other.seq);
}

/** After a gap there is nothing to hold `prev` against: the gap is the fault. */
function follows(placed: Placed, before: readonly Placed[] | undefined): boolean {
  const { seq, prev } = placed.entry.header;
  if (seq === 1) return prev === null;
  return before === undefined ? prev !== null : before.some((each) => each.hash === prev);
}

/** Whether the body is the one that the header was sealed with; true when it is withheld or erased. */
export function hasItsContent(entry: Entry): boolean {
  if (entry.body === null) return true;
  try {
    return contentHash(entry.body) === entry.header.content;
  } catch {
    return false; // it has no JSON spelling, so it is not what was sealed
  }
}

function missingBodies(placed: readonly Placed[]): readonly MissingBody[] {
  const erased = new Map(
    placed.flatMap(({ entry }) => {
      const { id, author, at } = entry.header;
      return erasedBy(entry).map((each) => [each, { by: author, at, entry: id }] as const);
    }),
  );
  return placed
    .filter(({ entry }) => entry.body === null)
    .map(({ entry: { header } }) => ({
      entry: header.id,
      device: header.device,
      seq: header.seq,
      why: erased.has(header.id) ? ("erased" as const) : ("withheld" as const),
      erased: erased.get(header.id) ?? null,
    }))
    .sort((one, other) => (one.entry < other.entry ? -1 : 1));
}

/** Ids of the entries whose bodies this entry erases; none unless it is a readable `content-erased`. */
export function erasedBy(entry: Entry): readonly EntryId[] {
  if (entry.header.kind !== "content-erased") return [];
  const reading = readEntry(entry);
  return "kind" in reading && reading.kind === "content-erased" ? reading.data.entries : [];
}
