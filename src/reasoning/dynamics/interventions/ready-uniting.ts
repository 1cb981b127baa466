/** The unitings of a run, each with the other colony ready to run until then. */
import { addDays, answered, blocked, type Day, daysBetween, type Result } from "../../../units/index.ts";
import { dayOfYear } from "../calendar.ts";
import { type CourseQuestion, type ReadyRun, readyRun } from "../course.ts";
import { oneDay } from "../day.ts";
import { dynamicsProblem } from "../problems.ts";
import { donorCourse, inDonor, type Uniting, unitingFigures } from "./uniting.ts";

/** A uniting within the run, and the other colony ready to run until then. */
export interface ReadyUniting {
  /** Days from the first. */
  readonly elapsed: number;
  /** Which of the unitings of the list it is, whenever it is done. */
  readonly rank: number;
  readonly action: Uniting;
  readonly field: string;
  /** Share of the other colony's adult bees that stay. */
  readonly kept: number;
  readonly donor: ReadyRun;
}

/** The unitings within the run, each with the other colony ready; a trouble of that one is told at its action. */
export function unitingsOf(question: CourseQuestion, days: number): Result<readonly ReadyUniting[]> {
  const ready: ReadyUniting[] = [];
  let rank = 0;
  for (const [index, action] of question.actions.entries()) {
    if (action.kind !== "unite") continue;
    const field = `actions[${index}]`;
    const { from, lost = unitingFigures.lost } = action;
    if (question.isStopped === true)
      return blocked(dynamicsProblem("season-uniting-stopped", "blocked", `${field}.from`, { date: from }));
    const elapsed = daysBetween(question.start.date, from);
    const donor = readyRun(donorCourse(question, action));
    if (!donor.ok) return blocked(...donor.problems.flatMap((each) => inDonor(each, field) ?? []));
    if (elapsed < days) ready.push({ elapsed, rank, action, field, kept: 1 - lost, donor: donor.value });
    rank += 1;
  }
  return answered(ready.sort((one, other) => one.elapsed - other.elapsed));
}

/** The record of a colony at the end of its expected run. */
export function expectedEnd({ model, colony, days }: ReadyRun, from: Day): Float64Array {
  const state = colony.slice();
  for (let elapsed = 0; elapsed < days; elapsed++)
    oneDay(state, 0, model, { dayOfYear: dayOfYear(addDays(from, elapsed)), elapsed });
  return state;
}
