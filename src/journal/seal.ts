/** Sealing: a draft becomes an entry with its place in the device's chain. */
import * as z from "zod";
import { DomainError, ensure } from "../units/index.ts";
import type { Entry, EntryBody, EntryHeader, EntryId, Hash, Head } from "./entry.ts";
import { canonicalJson, contentHash, headerHash } from "./hash.ts";
import { type BodyOf, type Kind, kinds } from "./kinds/index.ts";
import { entryMisfit } from "./shape.ts";

/** What is to be recorded, before it has an id and a place in the chain. */
export type EntryDraft<K extends Kind = Kind> = {
  [Each in K]: {
    readonly kind: Each;
    /** When it happened: a day, or an instant with its offset. */
    readonly at: string;
    /** The root first, then the ids that the kind asks for. */
    readonly about: readonly string[];
    /** Every entry this one corrects or withdraws. */
    readonly replaces?: readonly EntryId[];
    readonly data: BodyOf<Each>;
  };
}[K];

/** The place in the device's chain, and who writes when. */
export interface ChainPlace {
  readonly device: string;
  readonly seq: number;
  /** Hash of the device's previous header; null for `seq` 1. */
  readonly prev: Hash | null;
  readonly programme: string;
  readonly author: string;
  /** Instant with milliseconds and Z, as `Date.toISOString` writes it. */
  readonly recordedAt: string;
}

/** Chance, given by the caller: see `newEntryId` and `newSalt`. */
export interface SealingChance {
  readonly id: EntryId;
  readonly salt: string;
}

/**
 * The entry for a draft: body checked by its kind and hashed, header complete.
 * Spaces around short texts are dropped, as the kind's schema says; what is hashed is what is kept.
 * @throws DomainError when the body does not fit its kind, an id that the kind asks for is missing,
 *   a withdrawal replaces nothing, or the place in the chain is not one
 */
export function sealEntry(draft: EntryDraft, place: ChainPlace, chance: SealingChance): Entry {
  const { schema, body: shape, about } = kinds[draft.kind];
  const read = shape.safeParse(draft.data);
  if (!read.success)
    throw new DomainError(`data of ${draft.kind}`, canonicalJson(draft.data), z.prettifyError(read.error));
  ensure(draft.about.length > about.length, "about", draft.about.join(", "), `the root, then ${about.join(", ")}`);
  const replaces = draft.replaces ?? [];
  ensure(draft.kind !== "entry-withdrawn" || replaces.length > 0, "replaces", "", "the entries that are withdrawn");
  ensure((place.seq === 1) === (place.prev === null), "prev", place.prev, "null for the first entry, else a hash");

  // Read back from the hashed spelling: no undefined members, no minus zero, nothing shared with the caller.
  const data = JSON.parse(canonicalJson(read.data)) as EntryBody["data"];
  const body: EntryBody = { salt: chance.salt, data };
  const header: EntryHeader = {
    id: chance.id,
    kind: draft.kind,
    schema,
    device: place.device,
    seq: place.seq,
    prev: place.prev,
    at: draft.at,
    recordedAt: place.recordedAt,
    author: place.author,
    programme: place.programme,
    about: [...draft.about],
    replaces: [...replaces],
    content: contentHash(body),
  };
  const entry: Entry = { header, body };
  const misfit = entryMisfit(entry);
  ensure(misfit === null, misfit?.path ?? "entry", "another value", misfit?.expected ?? "an entry");
  return entry;
}

/** Who continues a chain, where, when and for which programme. */
export interface ChainEnd extends Omit<ChainPlace, "seq" | "prev"> {
  /** The device's newest entry; null when it has none. */
  readonly head: Head | null;
}

/**
 * Seals drafts one after another onto the end of a device's chain. One piece of chance for each draft.
 * @throws DomainError as `sealEntry` does, or when the chance does not suffice
 */
export function sealChain(
  drafts: readonly EntryDraft[],
  end: ChainEnd,
  chances: readonly SealingChance[],
): readonly Entry[] {
  const { head, ...who } = end;
  let [seq, prev] = [head?.seq ?? 0, head?.hash ?? null];
  return drafts.map((draft, index) => {
    const chance = chances[index];
    ensure(chance !== undefined, "chances", chances.length, `one for each of ${drafts.length} drafts`);
    seq += 1;
    const entry = sealEntry(draft, { ...who, seq, prev }, chance);
    prev = headerHash(entry.header);
    return entry;
  });
}
