/** What is warned of when a colony of a run hardly gets through it: likely lost to cold, or dwindling to a handful. */
import { type Day, daysBetween, type Problem } from "../../units/index.ts";
import { dynamicsProblem } from "./problems.ts";

/** A colony more likely lost than not within so many days is lost at once. Judgement. */
const soonDays = 60;
/** Fewer bees are no colony any more: twice the fewest that a run may start with. Judgement. */
export const dwindledBees = 1000;

/** A morning as far as decline is looked for. */
export interface MorningAlive {
  readonly date: Day;
  /** Mean over the draws. */
  readonly survival: number;
  /** Middle of the draws; left out: not looked at on this morning. */
  readonly bees?: number;
}

/**
 * Warned when the colony is more likely lost than not, and when its bees fall below a thousand, or below half of a start
 * of fewer than two, before that. From what it is likely lost, numbers are those of a colony that lived.
 */
export function declineWarnings(mornings: readonly MorningAlive[], startBees: number): readonly Problem[] {
  const [first, lost] = [mornings[0], mornings.find(({ survival }) => survival < 0.5)];
  const line = Math.min(dwindledBees, startBees / 2);
  const few = mornings.find(({ bees }) => bees !== undefined && bees < line);
  const problems: Problem[] = [];
  if (few !== undefined && (lost === undefined || few.date < lost.date))
    problems.push(dynamicsProblem("season-colony-dwindles", "warned", null, { date: few.date, bees: line }));
  if (first === undefined || lost === undefined) return problems;
  const { date } = lost;
  return [
    ...problems,
    daysBetween(first.date, date) <= soonDays
      ? dynamicsProblem("season-colony-lost-at-once", "warned", "start.bees", { date, bees: startBees })
      : dynamicsProblem("season-colony-likely-lost", "warned", null, { date }),
  ];
}
