/** The best action along the belief: where waiting gives way to testing, and testing to acting. */
import { type Belief, type BenchChances, type BenchTest, type BrokenLine, movedTo, signals } from "./belief.ts";
import { type Action, bestOf, lossesFrom, type Prices } from "./losses.ts";

/** A stretch of the strip with one best action. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly best: Action;
}

export interface Setting {
  readonly belief: Belief;
  readonly prices: Prices;
  readonly test: BenchTest;
  readonly bench: BenchChances;
  readonly line: BrokenLine;
}

/** Places looked at before halving; denser near 0, where the choice turns. */
const places = 80;

/**
 * Best action by centre of belief from 0 to 1. Each turn between two places looked at is found by halving to 1e-9;
 * a stretch narrower than a place (about 0.0002 near 0, 0.025 near 1) could be overlooked.
 */
export function strip(setting: Setting): readonly Stretch[] {
  const { belief, prices, test, bench, line } = setting;
  const bestAt = (centre: number): Action =>
    bestOf(lossesFrom(signals(movedTo(belief, centre), test, bench, line), line, prices));
  const edge = 1e-6; // a beta belief has no mean of exactly 0 or 1
  const grid = Array.from({ length: places + 1 }, (_, i) => edge + (1 - 2 * edge) * (i / places) ** 2);
  const stretches: { from: number; to: number; best: Action }[] = [{ from: 0, to: 1, best: bestAt(edge) }];
  for (const [i, right] of grid.entries()) {
    const current = stretches.at(-1);
    if (i === 0 || !current) continue;
    const best = bestAt(right);
    if (best === current.best) continue;
    let [low, high] = [grid[i - 1] ?? 0, right];
    while (high - low > 1e-9) {
      const middle = (low + high) / 2;
      if (bestAt(middle) === current.best) low = middle;
      else high = middle;
    }
    current.to = high;
    stretches.push({ from: high, to: 1, best });
  }
  return stretches;
}
