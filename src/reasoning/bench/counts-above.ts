/** Counts by how many lie above each whole number: a sum over their steps then costs the highest of them, however many there are. */

/** For j = 0, 1, … below the highest count: how many counts are above j, each taken `times` times; once when left out. */
export function countsAbove(counts: readonly number[], times?: readonly number[]): Float64Array {
  const above = new Float64Array(counts.reduce((most, each) => Math.max(most, each), 0));
  for (const [i, count] of counts.entries())
    if (count > 0) above[count - 1] = (above[count - 1] as number) + (times?.[i] ?? 1);
  for (let j = above.length - 2; j >= 0; j -= 1) above[j] = (above[j] as number) + (above[j + 1] as number);
  return above;
}
