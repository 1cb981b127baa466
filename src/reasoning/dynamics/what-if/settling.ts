/** When a count would settle the choice: how often what is chosen after it would stand if all were known later. */
import { rangeOf } from "../filter/forecast.ts";
import type { CountError } from "../observe.ts";
import { chancesOfCounts } from "./weigh-counts.ts";

/** Shares that lie nearer than half a bee in 100 to each other are told in the same words. Judgement. */
export const noticeable = 0.005;

/**
 * The best choice of each draw: the first, in the order given, that ends at or below the line; where none does, the one
 * that ends lowest, and of those that end noticeably as low the first.
 *
 * Own definition. Choices are given in the order in which one would rather do them, doing nothing first: so more is done
 * only where less does not suffice. Doing nothing also stands where nothing else ends noticeably lower.
 *
 * @param ends for each choice the share of infested bees of each draw at the end
 */
export function bestChoices(ends: readonly Float64Array[], line: number): Int32Array {
  const draws = ends[0]?.length ?? 0;
  return Int32Array.from({ length: draws }, (_, each) => {
    const enough = ends.findIndex((end) => (end[each] as number) <= line);
    if (enough >= 0) return enough;
    const lowest = ends.reduce((least, end) => Math.min(least, end[each] as number), Infinity);
    return ends.findIndex((end) => (end[each] as number) < lowest + noticeable);
  });
}

/**
 * Places of the other choices whose end these draws cannot tell from that of one: the paired differences lie within
 * half a bee in 100 in nine draws of ten, or their mean within two of its own Monte Carlo errors of nothing.
 *
 * @param ends for each choice the share of infested bees of each draw at the end
 */
export const alikeAtEnd = (ends: readonly Float64Array[], one: number): readonly number[] =>
  ends.flatMap((end, other) => (other !== one && areAlike(end, ends[one] as Float64Array) ? [other] : []));

function areAlike(end: Float64Array, other: Float64Array): boolean {
  const differences = end.map((share, each) => share - (other[each] as number)).sort();
  const { q05, q95 } = rangeOf(differences);
  if (Math.max(Math.abs(q05), Math.abs(q95)) < noticeable) return true;
  const { length } = differences;
  const mean = differences.reduce((sum, each) => sum + each, 0) / length;
  const variance = differences.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (length - 1);
  return Math.abs(mean) <= 2 * Math.sqrt(variance / length);
}

/** Share of the draws in which each choice is best. */
export function chancesOfBest(best: Int32Array, choices: number): readonly number[] {
  const times = new Array<number>(choices).fill(0);
  for (const each of best) times[each] = (times[each] as number) + 1;
  return times.map((each) => each / best.length);
}

/**
 * Share of decisions that a perfect later knowledge would not reverse, when the choice that is most often best is taken
 * after a count of `bees`; in the mean over what the count could find, exact for the draws at hand. From the chance of
 * the likeliest choice, without a count, to 1; more bees never lower it.
 *
 * @param shares share of infested bees of each draw on the day of the count, without any of the choices
 */
export function heldAfter(
  shares: Float64Array,
  best: Int32Array,
  of: { readonly choices: number; readonly bees: number; readonly error: CountError },
): number {
  const { choices, bees, error } = of;
  const width = bees + 1;
  const chances = chancesOfCounts(shares, bees, error);
  const by = new Float64Array(choices * width);
  for (let each = 0; each < best.length; each++) {
    const row = (best[each] as number) * width;
    for (let found = 0; found < width; found++)
      by[row + found] = (by[row + found] as number) + (chances[each * width + found] as number);
  }
  let held = 0;
  for (let found = 0; found < width; found++) {
    let most = 0;
    for (let choice = 0; choice < choices; choice++) most = Math.max(most, by[choice * width + found] as number);
    held += most;
  }
  return held / best.length;
}
