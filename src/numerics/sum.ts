/** Sums of many numbers without piling up rounding. */

/**
 * The sum of the numbers; its error does not grow with their count.
 *
 * @source Neumaier 1974, Zeitschrift für Angewandte Mathematik und Mechanik 54:39–51 (from memory)
 * @example
 * sum([1, 1e100, 1, -1e100])  // → 2
 */
export function sum(numbers: Iterable<number>): number {
  let total = 0;
  let rest = 0;
  for (const each of numbers) {
    const next = total + each;
    rest += Math.abs(total) >= Math.abs(each) ? total - next + each : each - next + total;
    total = next;
  }
  return total + rest;
}

/**
 * ln of the sum of e^each, without overflow or underflow; −Infinity for none.
 *
 * @example
 * logSumExp([-1000, -1000])  // → -999.3068528194
 */
export function logSumExp(logs: readonly number[]): number {
  const largest = logs.reduce((most, each) => Math.max(most, each), -Infinity);
  if (!Number.isFinite(largest)) return largest;
  return largest + Math.log(sum(logs.map((each) => Math.exp(each - largest))));
}
