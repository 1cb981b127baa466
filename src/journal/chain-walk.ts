/** A walk along every device's chain, entry by entry, for journals too large to be held at once. */
import { bytesToHex, hexToBytes } from "@noble/hashes/utils.js";
import type { Entry, EntryId, Hash, Head } from "./entry.ts";
import { type Digest, headerHash } from "./hash.ts";
import { readEntry } from "./read.ts";
import {
  type ChainFault,
  type ChainFaultReason,
  erasedBy,
  hasItsContent,
  type MissingBody,
  type VerifyReport,
} from "./verify.ts";

export interface ChainWalk {
  /**
   * The next entry. Numbers of one device must not fall; devices may take turns. The same header met twice in a row
   * counts once, and the copy with a body is looked at. The hash of the header may be given by who has it.
   */
  readonly take: (entry: Entry, hash?: Hash) => void;
  /** What was found; the walk is then over. */
  readonly report: () => VerifyReport;
}

/** Entries with one device and number: one, unless there is a fork. */
interface Place {
  readonly seq: number;
  readonly at: readonly Placed[];
}
interface Placed {
  readonly entry: Entry;
  readonly hash: Hash;
}

interface Chain {
  /** The place being met. */
  now: Place | null;
  /** The place before it, whatever its number. */
  before: Place | null;
  readonly hashes: HashList;
  /** Hashes of the places where there are several, by number. */
  readonly forks: Map<number, readonly Placed[]>;
  readonly faults: ChainFault[];
}

/**
 * A walk that holds these heads against the chains, and those noted inside the journal. It keeps one hash an entry and
 * nothing else of the entries that are whole.
 *
 * @example
 * chainWalk().report().isIntact  // → true
 */
export function chainWalk(notedHeads: readonly Head[] = [], digest?: Digest): ChainWalk {
  const chains = new Map<string, Chain>();
  const noted: Head[] = [...notedHeads];
  const erased = new Map<EntryId, NonNullable<MissingBody["erased"]>>();
  const bodiless: { readonly entry: EntryId; readonly device: string; readonly seq: number }[] = [];
  let checked = 0;

  const chainOf = (device: string): Chain => {
    const known = chains.get(device);
    if (known) return known;
    const chain: Chain = { now: null, before: null, hashes: hashList(), forks: new Map(), faults: [] };
    chains.set(device, chain);
    return chain;
  };

  function endPlace(device: string, chain: Chain): void {
    const { now, before } = chain;
    if (!now) return;
    const { seq, at } = now;
    const expected = (before?.seq ?? 0) + 1;
    if (seq > expected) chain.faults.push(fault(device, expected, "gap", [])); // one fault a gap, however wide
    if (at.length > 1) {
      chain.faults.push(fault(device, seq, seq === 1 ? "seq-restart" : "fork", at));
      chain.forks.set(seq, at);
    }
    const previous = before?.seq === seq - 1 ? before : null;
    for (const placed of at) {
      checked += 1;
      if (!follows(placed, previous)) chain.faults.push(fault(device, seq, "wrong-prev", [placed]));
      if (placed.entry.body === null) bodiless.push({ entry: placed.entry.header.id, device, seq });
      else if (!hasItsContent(placed.entry, digest)) chain.faults.push(fault(device, seq, "wrong-content", [placed]));
      if (placed.entry.header.kind === "heads-noted") noted.push(...headsIn(placed.entry));
      const { id: entry, author: by, at: day } = placed.entry.header;
      for (const id of erasedBy(placed.entry)) erased.set(id, { by, at: day, entry });
    }
    const [first] = at;
    if (first) chain.hashes.set(seq, first.hash);
    chain.before = now;
    chain.now = null;
  }

  return {
    take(entry, hash = headerHash(entry.header, digest)) {
      const { device, seq } = entry.header;
      const chain = chainOf(device);
      if (chain.now && chain.now.seq !== seq) endPlace(device, chain);
      chain.now = { seq, at: withEntry(chain.now?.at ?? [], { entry, hash }) };
    },
    report() {
      for (const [device, chain] of chains) endPlace(device, chain);
      const faults = [...chains.values()].flatMap((chain) => chain.faults);
      for (const head of noted) faults.push(...headFaults(head, chains.get(head.device)));
      faults.sort((one, other) =>
        one.device === other.device ? one.seq - other.seq : one.device < other.device ? -1 : 1,
      );
      return {
        isIntact: faults.length === 0,
        checked,
        faults,
        missingBodies: bodiless
          .map((each) => ({
            ...each,
            why: erased.has(each.entry) ? ("erased" as const) : ("withheld" as const),
            erased: erased.get(each.entry) ?? null,
          }))
          .sort((one, other) => (one.entry < other.entry ? -1 : 1)),
        heads: [...chains].flatMap(([device, { before }]) => headAt(device, before)).sort(byDevice),
      };
    },
  };
}

const byDevice = (one: Head, other: Head): number => (one.device < other.device ? -1 : 1);

const fault = (device: string, seq: number, reason: ChainFaultReason, at: readonly Placed[]): ChainFault => ({
  device,
  seq,
  reason,
  entries: at.map((each) => each.entry.header.id).sort(),
});

/** The entries of a place with one more: a copy changes nothing but that its body is looked at. */
function withEntry(at: readonly Placed[], placed: Placed): readonly Placed[] {
  const copy = at.findIndex((each) => each.hash === placed.hash);
  if (copy < 0) return [...at, placed];
  return at[copy]?.entry.body === null && placed.entry.body !== null ? at.with(copy, placed) : at;
}

/** After a gap there is nothing to hold `prev` against: the gap is the fault. */
function follows(placed: Placed, before: Place | null): boolean {
  const { seq, prev } = placed.entry.header;
  if (seq === 1) return prev === null;
  return before === null ? prev !== null : before.at.some((each) => each.hash === prev);
}

/** The heads that a `heads-noted` entry holds. */
function headsIn(entry: Entry): readonly Head[] {
  const reading = readEntry(entry);
  return "kind" in reading && reading.kind === "heads-noted" ? reading.data.heads : [];
}

/** A number past the end is a missing head; inside the chain the gap itself already says it. */
function headFaults({ device, seq, hash }: Head, chain: Chain | undefined): readonly ChainFault[] {
  if (!chain || seq > (chain.before?.seq ?? 0)) return [fault(device, seq, "head-missing", [])];
  const fork = chain.forks.get(seq);
  const kept = fork ? fork.map((each) => each.hash) : [chain.hashes.get(seq)];
  if (kept.includes(hash) || kept.includes(null)) return [];
  return [fault(device, seq, "head-differs", fork ?? [])];
}

/** Of a fork the entry with the smaller id stands for the place. */
function headAt(device: string, place: Place | null): readonly Head[] {
  const [first] = (place?.at ?? []).toSorted((one, other) => (one.entry.header.id < other.entry.header.id ? -1 : 1));
  return place && first ? [{ device, seq: place.seq, hash: first.hash }] : [];
}

/** Hashes by number, 32 bytes each. */
interface HashList {
  readonly set: (seq: number, hash: Hash) => void;
  /** Null when none was set. */
  readonly get: (seq: number) => Hash | null;
}

/** Numbers that lie far apart, as a damaged one may, are kept one by one, so that no number costs more than its hash. */
function hashList(): HashList {
  const size = 32;
  let bytes = new Uint8Array(64 * size);
  let filled = 0;
  const apart = new Map<number, Hash>();
  return {
    set(seq, hash) {
      if (seq !== filled + 1) {
        apart.set(seq, hash);
        return;
      }
      if ((filled + 1) * size > bytes.length) {
        const wider = new Uint8Array(bytes.length * 2);
        wider.set(bytes);
        bytes = wider;
      }
      bytes.set(hexToBytes(hash), filled * size);
      filled += 1;
    },
    get(seq) {
      if (seq < 1 || seq > filled) return apart.get(seq) ?? null;
      return bytesToHex(bytes.subarray((seq - 1) * size, seq * size));
    },
  };
}
