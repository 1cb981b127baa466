/**
 * Ends of a scale for values on both sides of 0.
 *
 * @module views/model
 */

/**
 * The least round scale that shows every value and 0.
 * @example
 * signedEnds([-0.12, 0.31])  // → {"from":-0.2,"to":0.4}
 * signedEnds([0.31, 0.9])  // → {"from":0,"to":1}
 */
export function signedEnds(values: readonly number[]): { readonly from: number; readonly to: number } {
  const [low, high] = [Math.min(0, ...values), Math.max(0, ...values)];
  if (low === high) return { from: 0, to: 1 };
  const rough = (high - low) / 6;
  const size = 10 ** Math.floor(Math.log10(rough));
  const step = ([1, 2, 5].find((each) => each * size >= rough) ?? 10) * size;
  const tidy = (value: number) => Number(value.toPrecision(12));
  return { from: tidy(step * Math.floor(low / step + 1e-9)), to: tidy(step * Math.ceil(high / step - 1e-9)) };
}
