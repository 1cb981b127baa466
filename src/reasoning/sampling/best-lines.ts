/** The pair of lines, the end and the cut with the fewest bees on average: a search that leaves out nothing better. */
import { averagesByEnd, fewestCuts, type LinePair, mostCuts, readFirst } from "./cut-walk.ts";
import { type LineOffsets, logOddsRatio } from "./line-offsets.ts";
import type { SequentialTest } from "./sequential-plan.ts";

export interface LineSearch {
  readonly test: SequentialTest;
  readonly slope: number;
  readonly offsets: LineOffsets;
  readonly maxBees: number;
  readonly minBees: number;
  readonly batch: number;
  /** fewest: the plan with the fewest bees; any: the first one found, sought from the farthest lines. */
  readonly aim: "fewest" | "any";
  /** Told the share of the search that is done, from 0 to 1, now and then. */
  readonly progress?: ((share: number) => void) | undefined;
}

export interface BestLines {
  readonly low: number;
  readonly high: number;
  /** Bees at which the plan ends. */
  readonly end: number;
  /** The counts from which the cut at the end may be chosen. */
  readonly cuts: { readonly from: number; readonly to: number };
  /** The larger of the two averages. */
  readonly averageBees: number;
}

/** A block of pairs of distances, by their places in the offsets, and what its corners tell. */
interface Block {
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
  /** Both lines as near as the block has them: no pair in it reads fewer bees. At place n the larger average. */
  readonly least: Float64Array;
  /** Low line near, high line far: no pair in the block has a smaller error at the low share. */
  readonly fewest: Float64Array;
  /** Low line far, high line near: no pair in the block has a smaller error at the high share. */
  readonly most: Float64Array;
  readonly share: number;
}

/**
 * The plan sought among all pairs of offsets and all ends, or null where none keeps both errors.
 *
 * A line farther from the slope never stops a sample sooner and never makes its own error likelier, sample by
 * sample. So the corners of a block of pairs bound all pairs in it, and a block that cannot beat what is found is
 * left out whole. Of plans with the fewest bees the one with the earlier end is taken.
 *
 * @source branch and bound; the order of the plans is by samples, as said above
 */
export function bestLines(search: LineSearch): BestLines | null {
  const { offsets, maxBees, aim } = search;
  const all = { low: [0, offsets.low.length - 1], high: [0, offsets.high.length - 1] } as const;
  const corner = cornersOf(search);
  let best: BestLines | null = null;
  let done = 0;
  const open: Block[] = [
    {
      ...all,
      least: corner.least(0, 0, maxBees),
      fewest: corner.fewest(0, all.high[1], maxBees),
      most: corner.most(all.low[1], 0, maxBees),
      share: 1,
    },
  ];
  for (let block = open.pop(); block; block = open.pop()) {
    const end = firstEnd(search, block);
    const averageBees = end === null ? Infinity : (block.least[end] as number);
    const better =
      !best || averageBees < best.averageBees || (averageBees === best.averageBees && (end ?? 0) < best.end);
    if (end === null || !better) {
      done += block.share;
      search.progress?.(Math.min(1, done));
      continue;
    }
    if (block.low[0] === block.low[1] && block.high[0] === block.high[1]) {
      best = {
        low: offsets.low[block.low[0]] as number,
        high: offsets.high[block.high[0]] as number,
        end,
        cuts: { from: block.fewest[end] as number, to: block.most[end] as number },
        averageBees,
      };
      if (aim === "any") return best;
      done += block.share;
      continue;
    }
    const reach = best ? lastWorthy(block.least, best) : maxBees;
    const [near, far] = halves(block, { search, corner, reach });
    // The one looked at first comes last.
    open.push(...(aim === "any" ? [near, far] : [far, near]));
  }
  return best;
}

/** The first end at which the corners of a block leave a cut that keeps both errors; later ones only cost bees. */
function firstEnd({ minBees }: LineSearch, { fewest, most }: Block): number | null {
  for (let n = minBees; n < Math.min(fewest.length, most.length); n += 1) {
    if ((fewest[n] as number) <= (most[n] as number)) return n;
  }
  return null;
}

/** The last end whose average may still beat the best. */
function lastWorthy(least: Float64Array, best: BestLines): number {
  let n = least.length - 1;
  while (n > 1 && (least[n] as number) > best.averageBees) n -= 1;
  return n;
}

type Corners = ReturnType<typeof cornersOf>;

function cornersOf({ test, slope, offsets, minBees, batch }: LineSearch) {
  const { lowPrevalence, highPrevalence, alpha, beta } = test;
  const pair = (low: number, high: number): LinePair => ({
    slope,
    low: offsets.low[low] as number,
    high: offsets.high[high] as number,
    batch,
  });
  const atLow = readFirst({ prevalence: lowPrevalence, minBees });
  const atHigh = readFirst({ prevalence: highPrevalence, minBees });
  return {
    least: (low: number, high: number, maxBees: number) => {
      const averages = averagesByEnd(pair(low, high), { first: atLow, maxBees });
      const others = averagesByEnd(pair(low, high), { first: atHigh, maxBees });
      return averages.map((average, n) => Math.max(average, others[n] as number));
    },
    fewest: (low: number, high: number, maxBees: number) =>
      fewestCuts(pair(low, high), { first: atLow, maxBees, allowed: alpha }),
    most: (low: number, high: number, maxBees: number) =>
      mostCuts(pair(low, high), { first: atHigh, maxBees, allowed: beta }),
  };
}

/**
 * Two halves of a block, the nearer one and the farther one.
 *
 * Cut is the side along which its line's error changes more, as a share of what is wanted. Where a line lies so far
 * that it errs about never, its distance tells nothing, and cutting there would prove the same thing many times.
 */
function halves(
  block: Block,
  { search, corner, reach }: { readonly search: LineSearch; readonly corner: Corners; readonly reach: number },
): readonly [Block, Block] {
  const { test, offsets } = search;
  const [lowNear, lowFar] = block.low;
  const [highNear, highFar] = block.high;
  const odds = logOddsRatio(test);
  const change = (of: readonly number[], [near, far]: readonly [number, number], wanted: number) =>
    near === far
      ? -Infinity
      : (Math.exp(-odds * (of[near] as number)) - Math.exp(-odds * (of[far] as number))) / wanted;
  const share = block.share / 2;
  if (change(offsets.low, block.low, test.beta) > change(offsets.high, block.high, test.alpha)) {
    const middle = Math.floor((lowNear + lowFar) / 2);
    return [
      { ...block, low: [lowNear, middle], most: corner.most(middle, highNear, reach), share },
      {
        ...block,
        low: [middle + 1, lowFar],
        least: corner.least(middle + 1, highNear, reach),
        fewest: corner.fewest(middle + 1, highFar, reach),
        share,
      },
    ];
  }
  const middle = Math.floor((highNear + highFar) / 2);
  return [
    { ...block, high: [highNear, middle], fewest: corner.fewest(lowNear, middle, reach), share },
    {
      ...block,
      high: [middle + 1, highFar],
      least: corner.least(lowNear, middle + 1, reach),
      most: corner.most(lowFar, middle + 1, reach),
      share,
    },
  ];
}
