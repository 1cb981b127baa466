/** One pair of lines with every possible end at once: bees read on average, and the cuts that keep an error. */
import { lineSlack } from "./sequential-plan.ts";

/** Lines at distances from slope·n, looked at after `minBees` and then every `batch` bees. */
export interface LinePair {
  readonly slope: number;
  readonly low: number;
  readonly high: number;
  readonly batch: number;
}

/** The bees before the first look, read whatever is found: the same for all lines. */
export interface ReadFirst {
  readonly prevalence: number;
  readonly minBees: number;
  /** Chance of each count from `from` to `top` when all but the last of the first `minBees` are read. */
  readonly chance: Float64Array;
  readonly from: number;
  readonly top: number;
}

export interface WalkedAt {
  readonly first: ReadFirst;
  /** The walk tells every end from `minBees` to here. */
  readonly maxBees: number;
}

export interface BoundedAt extends WalkedAt {
  /** Largest chance of the wrong answer. */
  readonly allowed: number;
}

/** A chance that meets its bound on paper may miss it by rounding; within this share it meets. */
export const boundSlack = 1e-12;

/**
 * Samples rarer than this are left out at both sides. All of them together weigh less than 1e-43: far below the slack
 * of the rarest error searched for, and numbers that are nearly 0 are slow to reckon with.
 */
const rarest = 1e-50;

/** What is open before the first look. */
export function readFirst({ prevalence, minBees }: Pick<ReadFirst, "prevalence" | "minBees">): ReadFirst {
  const chance = new Float64Array(minBees + 1);
  chance[0] = 1;
  let span = { from: 0, top: 0 };
  for (let n = 1; n < minBees; n += 1) span = readOne(chance, span, prevalence);
  return { prevalence, minBees, chance, ...span };
}

/** Bees read on average when the plan ends at n, at place n. */
export function averagesByEnd(pair: LinePair, at: WalkedAt): Float64Array {
  const averages = new Float64Array(at.maxBees + 1);
  walk(pair, at, {
    end: (n, { average }) => {
      averages[n] = average;
    },
  });
  return averages;
}

/**
 * At place n, for a plan that ends at n: the smallest c such that "low with c or fewer at the end" calls high with
 * chance `allowed` or less. −1 where any c does, Infinity where none does.
 */
export function fewestCuts(pair: LinePair, at: BoundedAt): Float64Array {
  const bound = at.allowed * (1 + boundSlack);
  const cuts = new Float64Array(at.maxBees + 1).fill(Infinity);
  walk(pair, at, {
    end: (n, { chance, from, top, low, high, toHigh }) => {
      let wrong = toHigh;
      let c = top;
      for (; c >= from && c >= high; c -= 1) wrong += chance[c] as number;
      if (wrong > bound) return;
      for (; c >= from && c > low; c -= 1) {
        wrong += chance[c] as number;
        if (wrong > bound) break;
      }
      if (wrong <= bound) cuts[n] = -1;
      // At n nothing would be high: that is no plan, and leaving it out spares the search whole regions.
      else if (c < n) cuts[n] = c;
    },
    over: (_, toHigh) => toHigh > bound,
  });
  return cuts;
}

/**
 * At place n, for a plan that ends at n: the largest c such that "low with c or fewer at the end" calls low with
 * chance `allowed` or less. n where any c does, −Infinity where none does.
 */
export function mostCuts(pair: LinePair, at: BoundedAt): Float64Array {
  const bound = at.allowed * (1 + boundSlack);
  const cuts = new Float64Array(at.maxBees + 1).fill(-Infinity);
  walk(pair, at, {
    end: (n, { chance, from, top, low, high, toLow }) => {
      let wrong = toLow;
      let c = from;
      for (; c <= top && c <= low; c += 1) wrong += chance[c] as number;
      if (wrong > bound) return;
      for (; c <= top && c < high; c += 1) {
        wrong += chance[c] as number;
        if (wrong > bound) break;
      }
      if (wrong <= bound) cuts[n] = n;
      // Below 0 nothing would be low.
      else if (c >= 1) cuts[n] = c - 1;
    },
    over: (toLow) => toLow > bound,
  });
  return cuts;
}

/** What is open when n bees are read and the lines have not yet been looked at. */
interface Open {
  /** Chance of each count from `from` to `top`; the rest is not meant. */
  readonly chance: Float64Array;
  readonly from: number;
  readonly top: number;
  /** The lines at n, in whole bees. */
  readonly low: number;
  readonly high: number;
  /** Chance that each line was crossed before. */
  readonly toLow: number;
  readonly toHigh: number;
  readonly average: number;
}

interface Seen {
  readonly end: (n: number, open: Open) => void;
  /** Told the chances of both lines after each look; true ends the walk. */
  readonly over?: (toLow: number, toHigh: number) => boolean;
}

function walk({ slope, batch, ...distance }: LinePair, { first, maxBees }: WalkedAt, seen: Seen): void {
  const { prevalence, minBees } = first;
  const chance = new Float64Array(maxBees + 2);
  chance.set(first.chance.subarray(0, first.top + 1));
  let { from, top }: Span = first;
  let [still, toLow, toHigh, average] = [1, 0, 0, minBees - 1];
  for (let n = minBees; n <= maxBees; n += 1) {
    average += still;
    ({ from, top } = readOne(chance, { from, top }, prevalence));
    const low = Math.floor(slope * n - distance.low + lineSlack);
    const high = Math.ceil(slope * n + distance.high - lineSlack);
    seen.end(n, { chance, from, top, low, high, toLow, toHigh, average });
    if ((n - minBees) % batch !== 0) continue;
    for (; from <= top && from <= low; from += 1) toLow += chance[from] as number;
    for (; from <= top && top >= high; top -= 1) toHigh += chance[top] as number;
    still = from > top ? 0 : 1 - toLow - toHigh;
    if (seen.over?.(toLow, toHigh)) return;
  }
}

interface Span {
  readonly from: number;
  readonly top: number;
}

/** One bee more, infested with chance p: changes the chances in place. */
function readOne(chance: Float64Array, { from, top }: Span, p: number): Span {
  if (from > top) return { from, top };
  chance[top + 1] = (chance[top] as number) * p;
  for (let x = top; x > from; x -= 1) chance[x] = (chance[x] as number) * (1 - p) + (chance[x - 1] as number) * p;
  chance[from] = (chance[from] as number) * (1 - p);
  let [first, last] = [from, top + 1];
  while (first <= last && (chance[last] as number) < rarest) last -= 1;
  while (first <= last && (chance[first] as number) < rarest) first += 1;
  return { from: first, top: last };
}
