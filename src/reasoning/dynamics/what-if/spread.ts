/** Mean, middle and standard deviation over the draws. */
import { rangeOf } from "../filter/pieces.ts";

/** Mean over the draws. */
export const meanOf = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0) / values.length;

/** Middle of the draws. */
export const middleOf = (values: Float64Array): number => rangeOf(values.slice().sort()).q50;

/** Standard deviation over the draws, each with its weight; left out: all alike. */
export function deviationOf(values: Float64Array, weights = new Float64Array(values.length).fill(1)): number {
  let [total, mean] = [0, 0];
  for (let each = 0; each < values.length; each++) {
    total += weights[each] as number;
    mean += (weights[each] as number) * (values[each] as number);
  }
  mean /= total;
  let squares = 0;
  for (let each = 0; each < values.length; each++)
    squares += (weights[each] as number) * ((values[each] as number) - mean) ** 2;
  return Math.sqrt(squares / total);
}
