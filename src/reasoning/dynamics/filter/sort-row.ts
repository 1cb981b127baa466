/** Sorts numbers by how they lie between the least and the most of them: several times as fast as comparing. */

/** Room for sorting rows of one length again and again. */
export interface SortingRoom {
  readonly sorted: Float64Array;
  readonly heaps: Int32Array;
}

export const sortingRoom = (length: number): SortingRoom => ({
  sorted: new Float64Array(length),
  heaps: new Int32Array(length + 1),
});

/** Heaps with more are sorted by comparing before the last pass. */
const largeHeap = 24;

/**
 * The numbers of a row in rising order, in the room's own array, which the next call overwrites. The same as any other
 * sorting gives; no NaN.
 */
export function sortedRow(row: Float64Array, { sorted, heaps }: SortingRoom): Float64Array {
  const { length } = row;
  let [least, most] = [Infinity, -Infinity];
  for (let each = 0; each < length; each++) {
    const value = row[each] as number;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  const scale = (length - 1) / (most - least);
  if (!(scale > 0 && scale < Infinity)) return sortedAlike(row, sorted);
  heaps.fill(0);
  for (let each = 0; each < length; each++) {
    const heap = (((row[each] as number) - least) * scale) | 0;
    heaps[heap] = (heaps[heap] as number) + 1;
  }
  let end = 0;
  for (let heap = 0; heap < length; heap++) {
    end += heaps[heap] as number;
    heaps[heap] = end;
  }
  for (let each = length - 1; each >= 0; each--) {
    const value = row[each] as number;
    const heap = ((value - least) * scale) | 0;
    const place = (heaps[heap] as number) - 1;
    heaps[heap] = place;
    sorted[place] = value;
  }
  heaps[length] = length;
  for (let heap = 0; heap < length; heap++) {
    const [from, to] = [heaps[heap] as number, heaps[heap + 1] as number];
    if (to - from > largeHeap) sorted.subarray(from, to).sort();
  }
  return insertionSorted(sorted);
}

/** All alike, or too near or too far apart to tell heaps by. */
function sortedAlike(row: Float64Array, sorted: Float64Array): Float64Array {
  sorted.set(row);
  return sorted.sort();
}

/** Quick for what is nearly sorted: no number is far from its place. */
function insertionSorted(sorted: Float64Array): Float64Array {
  for (let each = 1; each < sorted.length; each++) {
    const value = sorted[each] as number;
    let place = each;
    while (place > 0 && (sorted[place - 1] as number) > value) {
      sorted[place] = sorted[place - 1] as number;
      place--;
    }
    sorted[place] = value;
  }
  return sorted;
}
