/** What reading more bees now would narrow: the forecast after each count that could be, weighed by how likely it is. */
import { effectiveParticles } from "../filter/resample.ts";
import type { CountError } from "../observe.ts";
import { deviationOf } from "./spread.ts";
import { chancesOfCounts, orderOf, weighedRange } from "./weigh-counts.ts";

/** How far a forecast narrows in the mean over what a count could find. */
export interface Narrowing {
  /** Width of the 90 % range of the infested share at the end, now. */
  readonly widthNow: number;
  /** Its mean width after the count. */
  readonly widthAfter: number;
  /** Standard deviation of the infested share at the end, now and in the mean after: never grows. */
  readonly deviationNow: number;
  readonly deviationAfter: number;
  /** Share of the draws that the weights of a count leave worth, in the mean. */
  readonly effectiveShare: number;
}

/**
 * Expected narrowing of the share at the end by a count of `bees` now.
 *
 * Each number of infested bees that could be found weighs the draws by its chance; the ranges under these weights are
 * averaged by how likely each number is. No count is simulated: the sum over all of them is exact for the draws at hand.
 * The width of a range can grow after an odd count, and the mean width need not shrink by law; the deviation's mean does.
 *
 * @param now share of infested bees of each draw on the day of the count
 * @param end share of the same draws at the end
 */
export function narrowingBy(now: Float64Array, end: Float64Array, bees: number, error: CountError): Narrowing {
  const width = bees + 1;
  const draws = now.length;
  const chances = chancesOfCounts(now, bees, error);
  const order = orderOf(end);
  const equal = new Float64Array(draws).fill(1 / draws);
  const weights = new Float64Array(draws);
  let [widthAfter, deviationAfter, effectiveShare] = [0, 0, 0];
  for (let found = 0; found < width; found++) {
    let sum = 0;
    for (let each = 0; each < draws; each++) {
      weights[each] = chances[each * width + found] as number;
      sum += weights[each] as number;
    }
    const likely = sum / draws;
    // What no draw could give adds nothing, and has no ranges.
    if (likely < negligible) continue;
    widthAfter += likely * widthOf(weighedRange(end, order, weights));
    deviationAfter += likely * deviationOf(end, weights);
    effectiveShare += (likely * effectiveParticles(weights)) / draws;
  }
  return {
    widthNow: widthOf(weighedRange(end, order, equal)),
    widthAfter,
    deviationNow: deviationOf(end, equal),
    deviationAfter,
    effectiveShare,
  };
}

/** Chances below this change no printed figure. */
const negligible = 1e-15;

const widthOf = ({ q05, q95 }: { readonly q05: number; readonly q95: number }): number => q95 - q05;
