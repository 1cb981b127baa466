/** A queen kept from laying for some days: no eggs, and weeks later fewer young bees for mites to enter. */
import { addDays, type Day, daysBetween, isDay, type Problem } from "../../../units/index.ts";
import type { Measures } from "../measures.ts";
import { dynamicsProblem } from "../problems.ts";

/** First and last day without laying. What a break does to tracheal mites has no published figure: it follows from the model. */
export interface BroodBreak {
  readonly from: Day;
  readonly to: Day;
}

/** Writes the breaks of a run that begins on `start` into its measures. */
export function broodBreaks(measures: Measures, start: Day, breaks: readonly BroodBreak[]): void {
  for (const { from, to } of breaks)
    measures.laying.fill(0, Math.max(0, daysBetween(start, from)), Math.max(0, daysBetween(start, addDays(to, 1))));
}

/** What breaks cannot be. */
export const breakFaults = (breaks: readonly BroodBreak[]): readonly Problem[] =>
  breaks.flatMap(({ from, to }, index): readonly Problem[] => {
    const field = `broodBreaks[${index}]`;
    for (const [part, date] of Object.entries({ from, to }))
      if (!isDay(date))
        return [dynamicsProblem("season-day-unknown", "blocked", `${field}.${part}`, { date: String(date) })];
    return to < from
      ? [dynamicsProblem("season-action-ends-early", "blocked", `${field}.to`, { action: "brood-break", from, to })]
      : [];
  });
