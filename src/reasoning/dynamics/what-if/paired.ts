/** A choice beside doing nothing, draw by draw: the same colony, the same weather of chance, another action. */
import type { Day } from "../../../units/index.ts";
import { type Range, rangeOf } from "../filter/forecast.ts";
import type { Row } from "./branch.ts";

/** A difference over the draws: of the choice less that of doing nothing. */
export interface Difference extends Range {
  readonly mean: number;
  /** Share of the draws in which the choice is better: fewer infested, more bees, likelier alive. */
  readonly better: number;
  /** Share of the draws in which it makes no difference. */
  readonly alike: number;
}

/** The differences of one morning. */
export interface Paired {
  readonly date: Day;
  readonly infestedShare: Difference;
  readonly bees: Difference;
  readonly survival: Difference;
}

/** Differences below this part of the numbers come from rounding alone. */
const rounding = 1e-9;

/** What the choice changes on a morning. */
export const pairedOn = (date: Day, choice: Row, without: Row): Paired => ({
  date,
  infestedShare: differenceOf(choice.infestedShare, without.infestedShare, -1),
  bees: differenceOf(choice.bees, without.bees, 1),
  survival: differenceOf(choice.survival, without.survival, 1),
});

function differenceOf(choice: Float64Array, without: Float64Array, goodSign: 1 | -1): Difference {
  let [better, alike, sum] = [0, 0, 0];
  const differences = choice.map((value, each) => {
    const other = without[each] as number;
    const difference =
      Math.abs(value - other) <= rounding * Math.max(Math.abs(value), Math.abs(other)) ? 0 : value - other;
    if (difference === 0) alike++;
    else if (Math.sign(difference) === goodSign) better++;
    sum += difference;
    return difference;
  });
  const { length } = choice;
  return { ...rangeOf(differences.sort()), mean: sum / length, better: better / length, alike: alike / length };
}
