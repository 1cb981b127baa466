/** Which entries a store may take in: shape, programme, content, and place in their device's chain. */
import { rootOf } from "../casebook/index.ts";
import {
  type Digest,
  type Entry,
  type EntryId,
  entryMisfit,
  erasedBy,
  type Hash,
  type Head,
  hasItsContent,
  headerHash,
} from "../journal/index.ts";
import { type Problem, problem } from "../units/index.ts";
import type { Refusal } from "./contract.ts";

/** What the store already holds, as far as these entries touch it. */
export interface Held {
  /** Header hash by entry id. */
  readonly ids: ReadonlyMap<EntryId, Hash>;
  /** Header hash by `placeKey`. */
  readonly places: ReadonlyMap<string, Hash>;
  readonly heads: ReadonlyMap<string, Head>;
  /** What erasures name, by `erasureKey`. */
  readonly erased: ReadonlyMap<string, Erasure>;
}

/** What is held, kept up to date while several pushes are judged one after another. */
export interface Holding extends Held {
  readonly ids: Map<EntryId, Hash>;
  readonly places: Map<string, Hash>;
  readonly heads: Map<string, Head>;
  readonly erased: Map<string, Erasure>;
}

/** An entry whose body is to be erased, and the root that it must belong to. */
export interface Erasure {
  readonly id: EntryId;
  readonly root: string;
}

export interface AdmissionRule {
  readonly programme: string;
  /** Whether entries whose body is withheld are taken in: by a reader's device, not by the service. */
  readonly acceptsWithheld: boolean;
  /**
   * Whether a chain may have holes: a device is given only what its member may see. What is held of it must still
   * follow where two neighbours meet.
   */
  readonly acceptsGaps?: boolean;
  /** Entries come in the order in which they were once taken in, and keep it: a cursor then means what it meant. */
  readonly keepsOrder?: boolean;
  /** SHA-256 as the machine has it; the journal's own when left out. */
  readonly digest?: Digest;
}

export interface Admitted {
  /** Erased bodies are already gone. */
  readonly entry: Entry;
  readonly hash: Hash;
}

export interface Verdict {
  readonly admitted: readonly Admitted[];
  readonly refused: readonly Refusal[];
  readonly quarantined: readonly Entry[];
  /** Heads after admission, of the devices met. */
  readonly heads: readonly Head[];
  /** What the admitted entries erase, by `erasureKey`. */
  readonly erased: ReadonlyMap<string, Erasure>;
}

/** Names a place in a chain. */
export const placeKey = (device: string, seq: number): string => `${seq} ${device}`;

/** Names an erasure: one about another root never takes the place of the right one. */
export const erasureKey = ({ id, root }: Erasure): string => `${id} ${root}`;

/** PostgreSQL keeps no null character in a text, so no store takes one in a name that is looked up. */
export const canBeLookedUp = ({ header: { device, about } }: Entry): boolean =>
  ![device, ...about].some((name) => name.includes("\0"));

/** Heads are listed by device, signs in the order of their numbers: databases sort by the language of a place. */
export const byDevice = (one: Head, other: Head): number => (one.device < other.device ? -1 : 1);

const erasuresOf = (entry: Entry): readonly (readonly [string, Erasure])[] =>
  erasedBy(entry).map((id) => {
    const erasure = { id, root: rootOf(entry) };
    return [erasureKey(erasure), erasure];
  });

/** Sorts entries into those to take in, to refuse and to keep apart. Changes nothing. */
export function judge(entries: readonly Entry[], held: Held, rule: AdmissionRule): Verdict {
  const ids = new Map(held.ids);
  const places = new Map(held.places);
  const heads = new Map(held.heads);
  const erased = new Map(held.erased);
  const admitted: Admitted[] = [];
  const refused: Refusal[] = [];
  const quarantined: Entry[] = [];
  const met = new Set<string>();

  const fit: Entry[] = [];
  for (const entry of entries) {
    const unfit = unfitness(entry, rule.programme);
    if (unfit) refused.push({ id: idOf(entry), problem: unfit });
    else fit.push(entry);
  }
  const newlyErased = new Map(fit.flatMap(erasuresOf));
  const mayLackBody = (entry: Entry) => rule.acceptsWithheld || isErased(entry, erased) || isErased(entry, newlyErased);

  for (const entry of rule.keepsOrder ? fit : fit.toSorted(byChain)) {
    const { id, device, seq } = entry.header;
    const hash = headerHash(entry.header, rule.digest);
    met.add(device);
    if (ids.get(id) === hash) continue; // already here: acknowledged again
    const place = places.get(placeKey(device, seq));
    const trouble =
      placeTrouble(entry, {
        ...{ hash, sameId: ids.get(id), samePlace: place, head: heads.get(device) },
        mayLeap: rule.acceptsGaps === true,
      }) ?? bodyTrouble(entry, mayLackBody(entry), rule.digest);
    if (trouble) {
      refused.push({ id, problem: trouble });
      if (place !== undefined && place !== hash && isWhatItsHeaderNames(entry, rule.digest)) quarantined.push(entry);
      continue;
    }
    admitted.push({ entry, hash });
    ids.set(id, hash);
    places.set(placeKey(device, seq), hash);
    if (seq > (heads.get(device)?.seq ?? 0)) heads.set(device, { device, seq, hash });
    for (const [key, erasure] of erasuresOf(entry)) erased.set(key, erasure);
  }
  return {
    admitted: admitted.map(({ entry, hash }) => ({ entry: withoutErasedBody(entry, erased), hash })),
    refused,
    quarantined: quarantined.map((entry) => withoutErasedBody(entry, erased)),
    heads: [...met].sort().flatMap((device) => heads.get(device) ?? []),
    erased: new Map([...erased].filter(([key]) => !held.erased.has(key))),
  };
}

/** Notes what a verdict admits, so that the next push is judged as if it were written already. */
export function hold(held: Holding, { admitted, heads, erased }: Verdict): void {
  for (const { entry, hash } of admitted) {
    held.ids.set(entry.header.id, hash);
    held.places.set(placeKey(entry.header.device, entry.header.seq), hash);
  }
  for (const head of heads) held.heads.set(head.device, head);
  for (const [key, erasure] of erased) held.erased.set(key, erasure);
}

const isErased = (entry: Entry, erased: ReadonlyMap<string, Erasure>): boolean =>
  entry.header.kind !== "content-erased" && erased.has(erasureKey({ id: entry.header.id, root: rootOf(entry) }));

/** The entry as it may be kept: without its body when an erasure of the same root names it. */
export const withoutErasedBody = (entry: Entry, erased: ReadonlyMap<string, Erasure>): Entry =>
  entry.body !== null && isErased(entry, erased) ? { header: entry.header, body: null } : entry;

const byChain = ({ header: one }: Entry, { header: other }: Entry): number =>
  one.device < other.device ? -1 : one.device > other.device ? 1 : one.seq - other.seq;

/** The id, as far as it can be told from something that may not be an entry. */
function idOf(entry: Entry): EntryId {
  const id: unknown = (entry as Partial<Entry> | null)?.header?.id;
  return typeof id === "string" ? id : "";
}

function unfitness(entry: Entry, programme: string): Problem | null {
  const misfit = entryMisfit(entry);
  if (misfit) {
    return problem("entry-unfit", "blocked", misfit.path, {
      expected: misfit.expected,
      slots: { path: misfit.path, expected: misfit.expected },
    });
  }
  if (!canBeLookedUp(entry)) {
    const expected = "names without a null character";
    return problem("entry-unfit", "blocked", "header", { expected, slots: { path: "header", expected } });
  }
  if (entry.header.programme === programme) return null;
  return problem("other-programme", "blocked", "header.programme", {
    given: entry.header.programme,
    expected: programme,
    slots: { programme: entry.header.programme, expected: programme },
  });
}

interface Place {
  readonly hash: Hash;
  readonly sameId: Hash | undefined;
  readonly samePlace: Hash | undefined;
  readonly head: Head | undefined;
  readonly mayLeap: boolean;
}

function placeTrouble(entry: Entry, { hash, sameId, samePlace, head, mayLeap }: Place): Problem | null {
  const { id, device, seq, prev } = entry.header;
  const expected = (head?.seq ?? 0) + 1;
  const slots = { id, device, seq, expected };
  if (samePlace !== undefined && samePlace !== hash) {
    return problem("two-entries-one-number", "blocked", "header.seq", { given: seq, slots });
  }
  if (sameId !== undefined) return problem("entry-id-taken", "blocked", "header.id", { given: id, slots });
  if (seq !== expected && mayLeap) return null;
  if (seq !== expected) {
    return problem("entries-missing-before", "blocked", "header.seq", { given: seq, expected: `${expected}`, slots });
  }
  if (prev !== (head?.hash ?? null)) return problem("chain-broken", "blocked", "header.prev", { given: prev, slots });
  return null;
}

/** What is not what its header names is nobody's word, and is not kept for a person to judge. */
const isWhatItsHeaderNames = (entry: Entry, digest: Digest | undefined): boolean =>
  bodyTrouble(entry, true, digest) === null;

function bodyTrouble(entry: Entry, mayLackBody: boolean, digest: Digest | undefined): Problem | null {
  const { id, device, seq } = entry.header;
  const slots = { id, device, seq };
  if (entry.body === null) return mayLackBody ? null : problem("body-missing", "blocked", "body", { slots });
  return hasItsContent(entry, digest) ? null : problem("body-damaged", "blocked", "body", { slots });
}
