/** Many colonies at once: a stream for each particle and day, noise that lasts for weeks, one step for all. */
import { drawNormal, type RandomStream, randomStream } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";
import { type DayInRun, type Engine, oneDay } from "./day.ts";
import { at } from "./layout.ts";
import { oneDayOfWholeBees } from "./whole-bees.ts";

const mostParticles = 2 ** 32;

/**
 * The stream of one particle on one day of the run. It depends on nothing else, so particles may be reckoned in any
 * order, in chunks, or on several machines of one kind.
 *
 * @throws DomainError unless particle is whole, from 0 to 2³² − 1, and elapsed whole, from 0 to 2²⁰ − 1
 */
export function particleStream(seed: number, particle: number, elapsed: number): RandomStream {
  const whole = (n: number, below: number) => Number.isInteger(n) && n >= 0 && n < below;
  ensure(whole(particle, mostParticles), "particle", particle, "a whole number from 0 to 2^32 − 1");
  ensure(whole(elapsed, 2 ** 20), "elapsed", elapsed, "a whole number from 0 to 2^20 − 1");
  return randomStream({ seed, stream: elapsed * mostParticles + particle });
}

/** Noise on contact and laying that forgets slowly, in logs. */
export interface Noise {
  /** Standard deviations in the long run. */
  readonly contact: number;
  readonly laying: number;
  /** Share of today's noise that is left tomorrow, 0–1. */
  readonly memory: number;
}

/** Contact 0.20, laying 0.08, memory 0.97 a day: assumed, no source. */
export const assumedNoise: Noise = { contact: 0.2, laying: 0.08, memory: 0.97 };

/** Moves a colony's noise on by one day: first-order autoregression. Two normal numbers of the stream. */
export function driftNoise(state: Float64Array, start: number, noise: Noise, stream: RandomStream): void {
  const fresh = Math.sqrt(1 - noise.memory * noise.memory);
  for (const [place, deviation] of [
    [start + at.contactNoise, noise.contact],
    [start + at.layingNoise, noise.laying],
  ] as const)
    state[place] = noise.memory * (state[place] as number) + deviation * fresh * drawNormal(stream);
}

/** How the particles move: by expected numbers or in whole bees, with or without noise. */
export interface Motion {
  readonly seed: number;
  readonly wholeBees: boolean;
  /** Null for none. */
  readonly noise: Noise | null;
}

/**
 * Takes the colonies `first` to `first + count − 1` through one day. `states` holds one record a particle, one after
 * another, beginning with particle `first`.
 *
 * Same seed, same bytes, on one kind of engine: exponentials and logarithms of different engines may differ in the last
 * bit. Expected courses then agree to about 1e-12; a course of whole bees may part from the other.
 *
 * @throws DomainError when `states` does not hold `count` records
 */
export function oneDayForAll(
  states: Float64Array,
  { first, count }: { readonly first: number; readonly count: number },
  model: Engine,
  day: DayInRun,
  { seed, wholeBees, noise }: Motion,
): void {
  const { length } = model.layout;
  ensure(states.length >= count * length, "states", states.length, `at least ${count * length} numbers`);
  for (let each = 0; each < count; each++) {
    const start = each * length;
    if (!wholeBees && noise === null) {
      oneDay(states, start, model, day);
      continue;
    }
    const stream = particleStream(seed, first + each, day.elapsed);
    if (noise !== null) driftNoise(states, start, noise, stream);
    if (wholeBees) oneDayOfWholeBees(states, start, model, day, stream);
    else oneDay(states, start, model, day);
  }
}
