/** Philox4x32-10: four random words from a counter and a key, with nothing remembered in between. */

/** Four 32-bit words. */
export type Counter = readonly [number, number, number, number];
/** Two 32-bit words. */
export type Key = readonly [number, number];

const rounds = 10;

/**
 * The block of four random 32-bit words that belongs to a counter and a key.
 *
 * @source Salmon, Moraes, Dror & Shaw 2011, Parallel random numbers: as easy as 1, 2, 3 (SC '11)
 * @example
 * philox([0, 0, 0, 0], [0, 0])[0].toString(16)  // → "6627e8d5"
 */
export function philox(counter: Counter, key: Key): Counter {
  let [c0, c1, c2, c3] = counter;
  let [k0, k1] = key;
  for (let round = 0; round < rounds; round += 1) {
    const high0 = upperProduct(0xd2511f53, c0);
    const low0 = Math.imul(0xd2511f53, c0);
    const high1 = upperProduct(0xcd9e8d57, c2);
    const low1 = Math.imul(0xcd9e8d57, c2);
    c0 = (high1 ^ c1 ^ k0) >>> 0;
    c1 = low1 >>> 0;
    c2 = (high0 ^ c3 ^ k1) >>> 0;
    c3 = low0 >>> 0;
    k0 = (k0 + 0x9e3779b9) >>> 0;
    k1 = (k1 + 0xbb67ae85) >>> 0;
  }
  return [c0, c1, c2, c3];
}

/** The upper 32 bits of the 64-bit product of two 32-bit words. */
function upperProduct(a: number, b: number): number {
  const highA = a >>> 16;
  const lowA = a & 0xffff;
  const highB = b >>> 16;
  const lowB = b & 0xffff;
  const middle = highA * lowB + ((lowA * lowB) >>> 16);
  const cross = lowA * highB + (middle % 0x10000);
  return (highA * highB + Math.floor(middle / 0x10000) + Math.floor(cross / 0x10000)) >>> 0;
}
