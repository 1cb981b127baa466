/** Streams of random numbers that repeat exactly for the same seed and stream number. */
import { ensure } from "../units/index.ts";
import { philox } from "./philox.ts";

export interface StreamName {
  /** Whole, 0 ≤ seed < 2⁵³. */
  readonly seed: number;
  /** Streams of one seed are independent of each other. Whole, 0 ≤ stream < 2⁵³. */
  readonly stream: number;
}

/** The one thing in this folder that changes: each call moves it on. */
export interface RandomStream {
  /** Next number strictly between 0 and 1, of 2⁵² equally likely ones; its mean is exactly ½. */
  readonly next: () => number;
  /** Next 32 random bits as a whole number, 0 ≤ word < 2³². */
  readonly nextWord: () => number;
}

/**
 * Opens a stream at its beginning. The seed is the key of Philox4x32-10; the stream number fills the upper half of
 * the counter and the place in the stream the lower half, so no two streams of a seed ever share a block.
 *
 * @throws DomainError unless seed and stream are whole, from 0 to 2⁵³ − 1
 * @source Salmon, Moraes, Dror & Shaw 2011 (SC '11)
 * @example
 * randomStream({ seed: 0, stream: 0 }).nextWord().toString(16)  // → "6627e8d5"
 */
export function randomStream({ seed, stream }: StreamName): RandomStream {
  ensure(Number.isSafeInteger(seed) && seed >= 0, "seed", seed, "a whole number from 0 to 2^53 − 1");
  ensure(Number.isSafeInteger(stream) && stream >= 0, "stream", stream, "a whole number from 0 to 2^53 − 1");
  const key = [lowWord(seed), highWord(seed)] as const;
  const upper = [lowWord(stream), highWord(stream)] as const;
  let block = 0;
  let words = philox([0, 0, ...upper], key);
  let used = 0;
  const nextWord = (): number => {
    if (used === 4) {
      block += 1;
      words = philox([lowWord(block), highWord(block), ...upper], key);
      used = 0;
    }
    const word = words[used] as number;
    used += 1;
    return word;
  };
  const next = (): number => {
    const high = nextWord() >>> 6;
    const low = nextWord() >>> 6;
    return (high * 0x4000000 + low + 0.5) / 0x10000000000000;
  };
  return { next, nextWord };
}

const lowWord = (n: number) => n >>> 0;
const highWord = (n: number) => Math.floor(n / 0x100000000);
