/** Runs of neighbouring days that share an answer. */

export interface Run {
  /** Index of the first. */
  readonly first: number;
  /** Index of the last. */
  readonly last: number;
}

/**
 * First and last index of each unbroken run of true, in order.
 *
 * @example
 * runsOf([true, true, false, true])  // → [{"first":0,"last":1},{"first":3,"last":3}]
 */
export function runsOf(flags: readonly boolean[]): readonly Run[] {
  const runs: { first: number; last: number }[] = [];
  flags.forEach((flag, index) => {
    if (!flag) return;
    const open = runs.at(-1);
    if (open && open.last === index - 1) open.last = index;
    else runs.push({ first: index, last: index });
  });
  return runs;
}
