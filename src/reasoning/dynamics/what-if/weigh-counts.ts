/** Another count, before it is made: how each draw would weigh under each number of infested bees it could find. */
import { ensure } from "../../../units/index.ts";
import type { Range } from "../filter/forecast.ts";
import type { CountError } from "../observe.ts";

/** Most bees of a count that is looked ahead to. Judgement: none reads more. */
export const mostMoreBees = 1000;

/**
 * Chance of each number of infested bees, 0 to `examined`, under each share: for each share `examined` + 1 numbers that
 * sum to 1, one share after another.
 *
 * Model: beta-binomial, as `logChanceOfCount`; number by number from the one next to it, beginning where a count is to be
 * expected, and scaled to the sum that is known: no logarithm is needed.
 *
 * @throws DomainError unless `examined` is whole, from 0 to 1,000
 * @example
 * chancesOfCounts(Float64Array.of(0.1), 2, { sensitivity: 1, specificity: 1, overdispersion: 0.02 })[0]  // → 0.8118
 */
export function chancesOfCounts(shares: Float64Array, examined: number, error: CountError): Float64Array {
  ensure(
    Number.isInteger(examined) && examined >= 0 && examined <= mostMoreBees,
    "examined",
    examined,
    `a whole number from 0 to ${mostMoreBees}`,
  );
  const { sensitivity, specificity, overdispersion } = error;
  const size = (1 - overdispersion) / overdispersion;
  const width = examined + 1;
  const chances = new Float64Array(shares.length * width);
  shares.forEach((share, each) => {
    const row = each * width;
    const positive = size * (sensitivity * share + (1 - specificity) * (1 - share));
    const negative = size * ((1 - sensitivity) * share + specificity * (1 - share));
    const middle = Math.round((examined * positive) / size);
    let [chance, sum] = [1, 1];
    chances[row + middle] = 1;
    for (let found = middle; found < examined; found++) {
      chance *= ((examined - found) * (positive + found)) / ((found + 1) * (negative + examined - found - 1));
      chances[row + found + 1] = chance;
      sum += chance;
    }
    chance = 1;
    for (let found = middle; found > 0; found--) {
      chance *= (found * (negative + examined - found)) / ((examined - found + 1) * (positive + found - 1));
      chances[row + found - 1] = chance;
      sum += chance;
    }
    for (let place = row; place < row + width; place++) chances[place] = (chances[place] as number) / sum;
  });
  return chances;
}

/**
 * Ends of the 90 % and 50 % range and the middle of weighed values, interpolated between the middles of their weights;
 * with equal weights the ranges of a forecast.
 *
 * @param order places of the values from the lowest to the highest
 * @throws DomainError when no weight is above 0
 */
export function weighedRange(values: Float64Array, order: Int32Array, weights: Float64Array): Range {
  const total = weights.reduce((sum, each) => sum + each, 0);
  ensure(total > 0 && total < Infinity, "weights", total, "a finite sum above 0");
  const points = [0.05, 0.25, 0.5, 0.75, 0.95];
  const found: number[] = [];
  let [below, middleBefore, before] = [0, 0, Number.NaN];
  for (const place of order) {
    const weight = (weights[place] as number) / total;
    if (weight === 0) continue;
    const value = values[place] as number;
    const middle = below + weight / 2;
    while (found.length < points.length && (points[found.length] as number) <= middle) {
      const wanted = points[found.length] as number;
      const way = Number.isNaN(before) ? 1 : (wanted - middleBefore) / (middle - middleBefore);
      found.push(Number.isNaN(before) ? value : before + way * (value - before));
    }
    below += weight;
    [middleBefore, before] = [middle, value];
  }
  while (found.length < points.length) found.push(before);
  const [q05, q25, q50, q75, q95] = found as [number, number, number, number, number];
  return { q05, q25, q50, q75, q95 };
}

/** Places of values from the lowest to the highest. */
export const orderOf = (values: Float64Array): Int32Array =>
  Int32Array.from(values.keys()).sort((one, other) => (values[one] as number) - (values[other] as number));
