/**
 * What was put into a colony, as a course of it can take it in: from the first day on, whole or what is left of it.
 *
 * @module views/model
 */
import { dynamics } from "../../../reasoning/index.ts";
import { addDays, type Day } from "../../../units/index.ts";

/** What was done already, beside the first day of a course. */
export interface DoneFrom {
  /** In the course; of a patty that lay there before, the days from the first on. */
  readonly actions: readonly dynamics.Action[];
  /** Vapours that still act on the first day and began before it: a part of their course is none. */
  readonly leftOut: readonly dynamics.Action[];
  /** Over within months before the first day: what they did is in what was seen since. */
  readonly over: readonly dynamics.Action[];
}

/** Days before the first of a course within which what was done is told. Judgement: a winter bee's months. */
const toldDays = 120;

const isActing = (action: dynamics.Action, on: Day): boolean => action.from < on && dynamics.lastDayOf(action) >= on;

/** The day to begin at, so that no vapour is cut in two: the wanted one, or the first day of one that still acts then. */
export const startWith = (done: readonly dynamics.Action[], wanted: Day): Day =>
  done
    .filter((action) => action.kind !== "oil-patty" && isActing(action, wanted))
    .map(({ from }) => from)
    .toSorted()[0] ?? wanted;

/** What of it a course from `start` on takes in, and what it does not. */
export function doneFrom(done: readonly dynamics.Action[], start: Day): DoneFrom {
  const acting = done.filter((action) => isActing(action, start));
  const whole = done.filter(({ from }) => from >= start);
  const rest = acting.flatMap((action) => (action.kind === "oil-patty" ? [{ ...action, from: start }] : []));
  const told = addDays(start, -toldDays);
  return {
    actions: [...rest, ...whole],
    leftOut: acting.filter(({ kind }) => kind !== "oil-patty"),
    over: done.filter((action) => dynamics.lastDayOf(action) < start && dynamics.lastDayOf(action) >= told),
  };
}
