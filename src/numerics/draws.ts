/** Draws from the usual distributions out of a random stream. */
import { ensure } from "../units/index.ts";
import { normalQuantile } from "./normal.ts";
import type { RandomStream } from "./random-stream.ts";

/**
 * A standard normal number, by inversion: one number of the stream each.
 *
 * @example
 * drawNormal(randomStream({ seed: 1, stream: 0 })) === drawNormal(randomStream({ seed: 1, stream: 0 }))  // → true
 */
export function drawNormal(stream: RandomStream): number {
  return normalQuantile(stream.next());
}

/**
 * A whole number from 0 to count − 1, each equally likely.
 *
 * @throws DomainError unless count is whole, from 1 to 2⁵²
 * @example
 * drawIndex(randomStream({ seed: 1, stream: 0 }), 1)  // → 0
 */
export function drawIndex(stream: RandomStream, count: number): number {
  ensure(Number.isInteger(count) && count >= 1 && count <= 2 ** 52, "count", count, "a whole number from 1 to 2^52");
  // Numbers beyond the last full round of `count` are thrown away: they would favour the small indices.
  const limit = 2 ** 52 - (2 ** 52 % count);
  for (;;) {
    const drawn = (stream.nextWord() >>> 6) * 0x4000000 + (stream.nextWord() >>> 6);
    if (drawn < limit) return drawn % count;
  }
}

/**
 * ln of a gamma variable of the given shape and rate 1. In logs, since a small shape gives numbers below the smallest double.
 *
 * @throws DomainError unless shape is finite and above 0
 * @source Marsaglia & Tsang 2000, ACM TOMS 26:363–372
 * @example
 * Number.isFinite(drawLogGamma(randomStream({ seed: 1, stream: 0 }), 1e-4))  // → true
 */
export function drawLogGamma(stream: RandomStream, shape: number): number {
  ensure(shape > 0 && shape < Infinity, "shape", shape, "a finite number above 0");
  if (shape < 1) return drawLogGamma(stream, shape + 1) + Math.log(stream.next()) / shape;
  const d = shape - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = drawNormal(stream);
    const root = 1 + c * z;
    const u = stream.next();
    if (root <= 0) continue;
    const cube = root ** 3;
    if (Math.log(u) < 0.5 * z * z + d - d * cube + d * Math.log(cube)) return Math.log(d) + Math.log(cube);
  }
}

/**
 * A gamma variable of the given shape and rate 1; its mean is the shape.
 *
 * @throws DomainError unless shape is finite and above 0
 * @source Marsaglia & Tsang 2000, ACM TOMS 26:363–372
 * @example
 * drawGamma(randomStream({ seed: 1, stream: 0 }), 3) > 0  // → true
 */
export function drawGamma(stream: RandomStream, shape: number): number {
  return Math.exp(drawLogGamma(stream, shape));
}

export interface BetaShapes {
  readonly a: number;
  readonly b: number;
}

/**
 * A beta(a, b) variable. With shapes far below 1 it may round to 0 or 1.
 *
 * @throws DomainError unless both shapes are finite and above 0
 * @source Devroye 1986, Non-uniform random variate generation, chapter IX.4: ratio of gamma variables
 * @example
 * drawBeta(randomStream({ seed: 1, stream: 0 }), { a: 2, b: 3 }) < 1  // → true
 */
export function drawBeta(stream: RandomStream, { a, b }: BetaShapes): number {
  const first = drawLogGamma(stream, a);
  const second = drawLogGamma(stream, b);
  return 1 / (1 + Math.exp(second - first));
}

/**
 * A binomial count.
 *
 * Large n is halved by drawing the chance-rank in the middle (a beta variable) until few trials are left, which are
 * then run down by inversion. Exact up to the rounding of doubles.
 *
 * @throws DomainError unless n is a whole number ≥ 0 and 0 ≤ p ≤ 1
 * @source Devroye 1986, Non-uniform random variate generation, chapter X.4.3–4.4
 * @example
 * drawBinomial(randomStream({ seed: 1, stream: 0 }), { n: 10, p: 1 })  // → 10
 */
export function drawBinomial(stream: RandomStream, { n, p }: { readonly n: number; readonly p: number }): number {
  ensure(Number.isInteger(n) && n >= 0, "n", n, "a whole number of 0 or more");
  ensure(p >= 0 && p <= 1, "p", p, "from 0 to 1");
  let trials = n;
  let chance = p;
  let found = 0;
  while (trials * Math.min(chance, 1 - chance) > 15) {
    const rank = Math.floor((trials + 1) * chance);
    const value = drawBeta(stream, { a: rank, b: trials + 1 - rank });
    if (value <= chance) {
      found += rank;
      trials -= rank;
      chance = (chance - value) / (1 - value);
    } else {
      trials = rank - 1;
      chance /= value;
    }
  }
  return chance > 0.5
    ? found + trials - fewByInversion(stream, trials, 1 - chance)
    : found + fewByInversion(stream, trials, chance);
}

/** Binomial count with a small mean, p ≤ ½: one number of the stream, run down the chances of 0, 1, 2, … */
function fewByInversion(stream: RandomStream, n: number, p: number): number {
  if (n === 0 || p === 0) return 0;
  const odds = p / (1 - p);
  let left = stream.next();
  let chance = Math.exp(n * Math.log1p(-p));
  for (let k = 0; k < n; k += 1) {
    if (left <= chance) return k;
    left -= chance;
    chance *= ((n - k) / (k + 1)) * odds;
    // Rounding may leave a crumb of `left` that no later count can use up.
    if (k > n * p && chance < 1e-18) return k + 1;
  }
  return n;
}

/**
 * A Poisson count with the given mean.
 *
 * @throws DomainError unless mean is finite and ≥ 0
 * @source Ahrens & Dieter 1974, Computing 12:223–246: a gamma variable tells how many arrivals are over
 * @example
 * drawPoisson(randomStream({ seed: 1, stream: 0 }), 0)  // → 0
 */
export function drawPoisson(stream: RandomStream, mean: number): number {
  ensure(mean >= 0 && mean < Infinity, "mean", mean, "a finite number of 0 or more");
  let left = mean;
  let found = 0;
  while (left > 15) {
    const arrivals = Math.floor(left * 0.875);
    const time = drawGamma(stream, arrivals);
    if (time > left) return found + drawBinomial(stream, { n: arrivals - 1, p: left / time });
    found += arrivals;
    left -= time;
  }
  const floor = Math.exp(-left);
  let product = stream.next();
  while (product > floor) {
    product *= stream.next();
    found += 1;
  }
  return found;
}
