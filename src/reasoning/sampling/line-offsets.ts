/** All pairs of parallel lines that stop differently: how far each line may lie from the slope. */
import type { SequentialTest } from "./sequential-plan.ts";

export interface LineOffsets {
  /** Distances of the low line below slope·n, rising; each stands for all distances that stop the same at every look. */
  readonly low: readonly number[];
  /** Distances of the high line above slope·n, rising. */
  readonly high: readonly number[];
}

/** Places nearer than this are one place: far above rounding, and nearer ones need shares made to meet so closely. */
const samePlace = 1e-9;

/** A line is crossed wrongly with chance e to minus this or less: 1e-26, below every error anyone asks for. */
const farthestLogOdds = 60;

/**
 * The distances from slope·n at which a line's whole counts change where it is looked at, as the farthest distance
 * before each change. The last one is a line that no count reaches, or that is crossed wrongly about never.
 *
 * Between two such changes all distances stop the same samples. At an end that is no look only the cut tells, and the
 * farthest line leaves it the widest room: so no other distance needs to be searched.
 *
 * @source the low line is ⌊slope·n − distance⌋ and the high one ⌈slope·n + distance⌉: they change at whole counts only
 */
export function lineOffsets(of: {
  readonly slope: number;
  /** ln of the odds between the two shares, by which distances become chances. */
  readonly logOddsRatio: number;
  readonly minBees: number;
  readonly batch: number;
  readonly maxBees: number;
}): LineOffsets {
  const { slope, logOddsRatio, minBees, batch, maxBees } = of;
  const farthest = farthestLogOdds / logOddsRatio;
  const [low, high]: [Places, Places] = [
    { all: [], looked: [] },
    { all: [], looked: [] },
  ];
  for (let bees = minBees; bees <= maxBees; bees += 1) {
    const line = slope * bees;
    const isLook = (bees - minBees) % batch === 0;
    const add = ({ all, looked }: Places, distance: number) => {
      if (distance >= farthest) return;
      all.push(distance);
      if (isLook) looked.push(distance);
    };
    for (let distance = line; distance > 0; distance -= 1) add(low, distance);
    for (let count = Math.floor(line) + 1; count <= bees; count += 1) add(high, count - line);
  }
  return { low: beforeLooked(low), high: beforeLooked(high) };
}

/** Where a line's counts change: at any end, and at looks alone. */
interface Places {
  readonly all: number[];
  readonly looked: number[];
}

/** One distance in the last gap before each place of a look, and one beyond all places. */
function beforeLooked(places: Places): readonly number[] {
  const all = Float64Array.from(places.all).sort();
  const looked = Float64Array.from(places.looked).sort();
  const inside: number[] = [];
  let [before, next] = [0, 0];
  let gap: number | null = null;
  for (const place of all) {
    if (place - before > samePlace) gap = (before + place) / 2;
    before = place;
    if (place !== looked[next]) continue;
    next += 1;
    if (gap !== null) inside.push(gap);
    gap = null;
  }
  inside.push(before + 0.5);
  return inside;
}

/** ln[p1·q0 / (p0·q1)]. */
export const logOddsRatio = ({ lowPrevalence: p0, highPrevalence: p1 }: SequentialTest): number =>
  Math.log(p1 / p0) + Math.log1p(-p0) - Math.log1p(-p1);

/** The slope on which neither share is likelier than the other. */
export const waldSlope = (test: SequentialTest): number =>
  (Math.log1p(-test.lowPrevalence) - Math.log1p(-test.highPrevalence)) / logOddsRatio(test);

/**
 * The chances of error for which Wald's lines lie at these distances.
 *
 * @source Wald 1947, chapter 3: A = (1 − beta)/alpha and B = beta/(1 − alpha), solved for alpha and beta (from memory)
 */
export function errorsOfLines(distance: {
  readonly low: number;
  readonly high: number;
  readonly logOddsRatio: number;
}): Pick<SequentialTest, "alpha" | "beta"> {
  const above = distance.high * distance.logOddsRatio;
  const below = distance.low * distance.logOddsRatio;
  // alpha = (1 − B)/(A − B) and beta = B·(A − 1)/(A − B), divided through by A.
  const rest = -Math.expm1(-above - below);
  return {
    alpha: (-Math.expm1(-below) * Math.exp(-above)) / rest,
    beta: (-Math.expm1(-above) * Math.exp(-below)) / rest,
  };
}
