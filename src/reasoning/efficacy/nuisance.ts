/** The largest chance of a set of two-by-two tables over the share that both groups have in common. */
import { logChoose } from "../../numerics/index.ts";

export interface LargestChance {
  readonly chance: number;
  /** The common share at which the chance is largest, 0–1. */
  readonly share: number;
}

/**
 * Maximises the chance of the extreme tables over the common share: a grid fine enough to see every hump, then a
 * golden section on the highest ones.
 *
 * On the angle whose squared sine is the share, no hump is narrower than about 1/√(n1 + n2); the grid lays eight
 * points over that, and the search narrows the angle to 1e-9, where the chance is flat to far below 1e-12.
 */
export function largestChance(tables: {
  readonly n1: number;
  readonly n2: number;
  readonly isExtreme: (x1: number, x2: number) => boolean;
}): LargestChance {
  const { n1, n2, isExtreme } = tables;
  const extreme = Array.from({ length: n1 + 1 }, (_, x1) =>
    Array.from({ length: n2 + 1 }, (_, x2) => x2).filter((x2) => isExtreme(x1, x2)),
  );
  const [first, second] = [pointsOf(n1), pointsOf(n2)];
  const shareAt = (angle: number) => Math.sin(angle / 2) ** 2;
  const chanceAt = (angle: number) => {
    const share = shareAt(angle);
    const [one, two] = [first(share), second(share)];
    let total = 0;
    for (const [x1, row] of extreme.entries()) {
      let inner = 0;
      for (const x2 of row) inner += two[x2] as number;
      total += inner * (one[x1] as number);
    }
    return total;
  };
  const steps = Math.max(200, Math.ceil(8 * Math.PI * Math.sqrt(n1 + n2)));
  const angle = (i: number) => (Math.PI * i) / steps;
  const grid = Array.from({ length: steps + 1 }, (_, i) => chanceAt(angle(i)));
  const at = (i: number) => grid[i] ?? Number.NEGATIVE_INFINITY;
  const humps = [...grid.keys()].filter((i) => at(i) >= at(i - 1) && at(i) >= at(i + 1));
  const highest = humps.sort((i, j) => at(j) - at(i)).slice(0, 6);
  let best: LargestChance = { chance: 0, share: 0 };
  for (const i of highest) {
    const top = goldenSection(chanceAt, angle(Math.max(0, i - 1)), angle(Math.min(steps, i + 1)));
    const found = at(i) >= top.value ? { value: at(i), place: angle(i) } : top;
    if (found.value > best.chance) best = { chance: found.value, share: shareAt(found.place) };
  }
  return { ...best, chance: Math.min(1, best.chance) };
}

/** Binomial chances of 0 … n at a share; the coefficients are reckoned once. */
function pointsOf(n: number): (share: number) => Float64Array {
  const coefficients = Float64Array.from({ length: n + 1 }, (_, x) => logChoose(n, x));
  return (share) => {
    if (share === 0 || share === 1) return Float64Array.from(coefficients, (_, x) => (x === n * share ? 1 : 0));
    const [success, failure] = [Math.log(share), Math.log1p(-share)];
    return coefficients.map((each, x) => Math.exp(each + x * success + (n - x) * failure));
  };
}

/** The highest point that a golden section finds between two places. */
function goldenSection(f: (x: number) => number, from: number, to: number): { value: number; place: number } {
  const part = (Math.sqrt(5) - 1) / 2;
  let [low, high] = [from, to];
  let [left, right] = [high - part * (high - low), low + part * (high - low)];
  let [atLeft, atRight] = [f(left), f(right)];
  while (high - low > 1e-9) {
    if (atLeft >= atRight) {
      [high, right, atRight] = [right, left, atLeft];
      left = high - part * (high - low);
      atLeft = f(left);
    } else {
      [low, left, atLeft] = [left, right, atRight];
      right = low + part * (high - low);
      atRight = f(right);
    }
  }
  return atLeft >= atRight ? { value: atLeft, place: left } : { value: atRight, place: right };
}
