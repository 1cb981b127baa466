/** Forecasts of many colonies cut into chunks that can be reckoned anywhere, and again, with the same bytes. */
import { ensure } from "../../../units/index.ts";

/** A stretch of a list of colonies, in the order of their names. */
export interface Chunk {
  /** Names the chunk: the same colonies in the same plan have the same number. */
  readonly number: number;
  readonly colonies: readonly PlannedColony[];
}

export interface PlannedColony {
  readonly colony: string;
  /** Seed of its forecast: it depends on the run's seed and the colony's name alone. */
  readonly seed: number;
}

/**
 * The chunks of a run over colonies. Neither the order in which colonies are named nor how they are cut changes a
 * colony's seed, and so no byte of its forecast: a chunk that was lost is reckoned again, one that was cut otherwise
 * joins the rest.
 *
 * @throws DomainError for a size below 1, a seed that is no whole number from 0 to 2³² − 1, or a colony named twice
 * @example
 * chunkPlan(["b", "a", "c"], { size: 2, seed: 1 }).map(({ colonies }) => colonies.map(({ colony }) => colony).join(""))  // → ["ab","c"]
 */
export function chunkPlan(
  colonies: readonly string[],
  { size, seed }: { readonly size: number; readonly seed: number },
): readonly Chunk[] {
  ensure(Number.isInteger(size) && size >= 1, "size", size, "a whole number of 1 or more");
  ensure(Number.isInteger(seed) && seed >= 0 && seed < 2 ** 32, "seed", seed, "a whole number from 0 to 2^32 − 1");
  const inOrder = [...colonies].sort((one, other) => (one < other ? -1 : one > other ? 1 : 0));
  const twice = inOrder.find((colony, index) => colony === inOrder[index + 1]);
  ensure(twice === undefined, "colonies", twice, "each named once");
  const planned = inOrder.map((colony) => ({ colony, seed: seedOf(colony, seed) }));
  return Array.from({ length: Math.ceil(planned.length / size) }, (_, number) => ({
    number,
    colonies: planned.slice(number * size, (number + 1) * size),
  }));
}

/**
 * A seed from the run's and a name: two hashes of 32 bits over the letters, of which 21 and 32 bits are kept, so that
 * even a million colonies hardly share one.
 *
 * @source FNV-1a hash: Fowler, Noll & Vo, IETF draft-eastlake-fnv; finish of MurmurHash3: Appleby (both from memory)
 */
function seedOf(colony: string, seed: number): number {
  const text = `${seed}:${colony}`;
  return (hashOf(text, 0x811c9dc5) & 0x1fffff) * 2 ** 32 + hashOf(text, 0x9747b28c);
}

function hashOf(text: string, basis: number): number {
  let hash = basis;
  for (let at = 0; at < text.length; at++) {
    const unit = text.charCodeAt(at);
    hash = Math.imul(hash ^ (unit & 0xff), 0x01000193);
    hash = Math.imul(hash ^ (unit >>> 8), 0x01000193);
  }
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (hash ^ (hash >>> 16)) >>> 0;
}
