/** How long a piece of work takes: the median of several runs, after it has run warm. */

/** The middle of an odd number of values, the mean of the two middle ones of an even number. */
export function median(values: readonly number[]): number {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length / 2;
  return ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
}

/** Milliseconds of one run: the median of `runs`, after `warm` runs that are not counted. */
export function medianTime({ work, warm, runs }: { work: () => unknown; warm: number; runs: number }): number {
  for (let run = 0; run < warm; run++) work();
  return median(
    Array.from({ length: runs }, () => {
      const began = performance.now();
      work();
      return performance.now() - began;
    }),
  );
}
