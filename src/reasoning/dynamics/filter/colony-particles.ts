/** Colonies that could be this one: particles about a start, weighed by what was seen, resampled with their paths. */
import { drawNormal, randomStream } from "../../../numerics/index.ts";
import type { Engine } from "../day.ts";
import { at } from "../layout.ts";
import { bringTo, mostInfestedShare } from "../start-colony.ts";

/** How unsure the start is: standard deviations of the logit of the share, of ln bees, of ln contact rate. */
export interface StartDoubt {
  readonly share: number;
  readonly bees: number;
  readonly contact: number;
}

/** 0.9 on the logit of the share, 0.15 on bees and on contact: assumed, no source. */
export const assumedDoubt: StartDoubt = { share: 0.9, bees: 0.15, contact: 0.15 };

/** Width of the jitter of ln contact after a resampling, in standard deviations of the particles. Judgement. */
const jitter = 0.1;
/** Streams of the start, the jitter and the comb lie beyond those of the days, which end below 2^52. */
const [startStream, combStream] = [2 ** 52, 2 ** 52 + 2 ** 51];
const jitterStream = (sight: number, particle: number): number => startStream + 2 ** 32 * (sight + 1) + particle;

/** Things seen on one day that chance is set aside for. */
export const sameDay = 128;
/** Which of all things seen: the morning and its place on that morning. It names streams of chance. */
export const sightOf = (morning: number, index: number): number => morning * sameDay + index;

/** What is kept of each morning of each particle. */
export interface Paths {
  /** Morning by morning, particle by particle. */
  readonly bees: Float64Array;
  readonly infestedShare: Float64Array;
  /** Chance of not being lost to cold since living bees were last seen; 1 until then. */
  readonly survival: Float64Array;
}

export interface Cloud {
  readonly particles: number;
  readonly states: Float64Array;
  readonly paths: Paths;
}

/**
 * Records of the particles `first` to `first + count − 1` about a start. The shape of the colony, its brood and ages, is
 * that of `colony`; a share above the most that such a colony can have is taken as that.
 */
export function particlesAbout(
  model: Engine,
  colony: Float64Array,
  of: {
    readonly first: number;
    readonly count: number;
    readonly seed: number;
    readonly start: { readonly bees: number; readonly infestedShare: number };
    readonly doubt: StartDoubt;
  },
): Float64Array {
  const { first, count, seed, start, doubt } = of;
  const { layout } = model;
  const states = new Float64Array(count * layout.length);
  const most = mostInfestedShare(colony, 0, layout);
  const logit = Math.log(start.infestedShare / (1 - start.infestedShare));
  for (let each = 0; each < count; each++) {
    const stream = randomStream({ seed, stream: startStream + first + each });
    const [share, bees, contact] = [drawNormal(stream), drawNormal(stream), drawNormal(stream)];
    const record = each * layout.length;
    states.set(colony, record);
    const drawn = 1 / (1 + Math.exp(-(logit + doubt.share * share)));
    const infestedShare = start.infestedShare === 0 ? 0 : Math.min(drawn, most * (1 - 1e-9));
    bringTo(states, record, layout, { bees: start.bees * Math.exp(doubt.bees * bees), infestedShare });
    states[record + at.contactRate] = (colony[at.contactRate] as number) * Math.exp(doubt.contact * contact);
  }
  return states;
}

/**
 * Puts each particle, with its path up to this morning, in the place of its ancestor; then moves the contact rates a
 * little, so that copies part: towards their mean and out again, which keeps mean and spread.
 *
 * @param ancestors in rising order, as `systematic` gives them
 * @source kernel shrinkage: Liu & West 2001 (from memory)
 */
export function takeAncestors(
  { particles, states, paths }: Cloud,
  ancestors: Int32Array,
  model: Engine,
  { morning, sight, seed }: { readonly morning: number; readonly sight: number; readonly seed: number },
): void {
  const { length } = model.layout;
  inPlace(ancestors, (from, to) => states.copyWithin(to * length, from * length, (from + 1) * length));
  for (const path of [paths.bees, paths.infestedShare, paths.survival])
    for (let first = 0; first <= morning * particles; first += particles)
      inPlace(ancestors, (from, to) => {
        path[first + to] = path[first + from] as number;
      });
  const logs = Float64Array.from({ length: particles }, (_, each) =>
    Math.log(states[each * length + at.contactRate] as number),
  );
  const mean = logs.reduce((sum, each) => sum + each, 0) / particles;
  const spread = Math.sqrt(logs.reduce((sum, each) => sum + (each - mean) ** 2, 0) / particles);
  const kept = Math.sqrt(1 - jitter * jitter);
  for (let each = 0; each < particles; each++) {
    const z = drawNormal(randomStream({ seed, stream: jitterStream(sight, each) }));
    states[each * length + at.contactRate] = Math.exp(
      mean + kept * ((logs[each] as number) - mean) + jitter * spread * z,
    );
  }
}

/** ln of the chance that each particle has lived since living bees were last seen. */
export const logAlive = ({ particles, states }: Cloud, { layout: { length } }: Engine): Float64Array =>
  Float64Array.from({ length: particles }, (_, each) => -(states[each * length + at.hazard] as number));

/** Living bees were seen on a morning: no colony was lost before, and what may lose one is summed anew. */
export function seenAlive({ particles, states, paths }: Cloud, { layout: { length } }: Engine, morning: number): void {
  for (let each = 0; each < particles; each++) states[each * length + at.hazard] = 0;
  paths.survival.fill(1, 0, (morning + 1) * particles);
}

/**
 * Copies each ancestor to its place without room for all of them: numbers of ancestors never fall, so what is copied up
 * the list, last first, is no source of what is copied down, and neither overwrites a source of its own.
 */
function inPlace(ancestors: Int32Array, copy: (from: number, to: number) => void): void {
  for (let to = ancestors.length - 1; to >= 0; to--) {
    const from = ancestors[to] as number;
    if (from < to) copy(from, to);
  }
  for (let to = 0; to < ancestors.length; to++) {
    const from = ancestors[to] as number;
    if (from > to) copy(from, to);
  }
}

/** Where the comb of a resampling begins. */
export const combOf = (seed: number, sight: number): number =>
  randomStream({ seed, stream: combStream + sight }).next();
