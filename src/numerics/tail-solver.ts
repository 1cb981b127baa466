/** Finds where a tail probability reaches a wanted value, by guarded Newton steps on ln tail against ln x. */

export interface TailAt {
  /** ln tail − ln wanted. */
  readonly gap: number;
  /** d ln tail / d ln x. */
  readonly slope: number;
}

export interface TailSearch {
  readonly start: number;
  readonly low: number;
  /** May be Infinity. */
  readonly high: number;
  /** True where the tail grows with x. */
  readonly rising: boolean;
  readonly at: (x: number) => TailAt;
}

/** The x at which the gap is 0; 0 where it lies below the smallest double. */
export function solveTail({ start, low, high, rising, at }: TailSearch): number {
  let below = low;
  let above = high;
  let x = start > low && start < high ? start : between(low, high, 1);
  let lastStep = Infinity;
  for (let round = 0; round < 2000; round += 1) {
    const { gap, slope } = at(x);
    if (gap === 0) return x;
    if (gap < 0 === rising) below = x;
    else above = x;
    const step = -gap / slope;
    const newton = Math.abs(step) < 1 ? x + x * Math.expm1(step) : x * Math.exp(step);
    if (newton === 0 && below === 0) return 0;
    const inside = Number.isFinite(newton) && newton > below && newton < above;
    const size = Math.abs(step);
    // Once steps are at the level of rounding they stop shrinking: take the last one and be done.
    if (size < 1e-15 || (size < 1e-7 && size >= lastStep / 2)) return inside ? newton : x;
    lastStep = inside ? size : Infinity;
    const next = inside ? newton : between(below, above, x);
    if (next === x || next <= below || next >= above) return x;
    x = next;
  }
  throw new Error(`the search for a quantile did not settle between ${below} and ${above}`);
}

function between(below: number, above: number, x: number): number {
  if (below === 0 && above === Infinity) return 1;
  if (above === Infinity) return Math.max(x, below) * 4;
  if (below === 0) return above * 1e-3;
  return above / below > 4 ? Math.sqrt(below) * Math.sqrt(above) : below + (above - below) / 2;
}
