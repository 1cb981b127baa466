/** A queen kept from laying for some days: no eggs, and weeks later fewer young bees for mites to enter. */
import type { Day } from "../../../units/index.ts";
import type { Measures } from "../measures.ts";

/** First and last day without laying. What a break does to tracheal mites has no published figure: it follows from the model. */
export interface BroodBreak {
  readonly kind: "brood-break";
  readonly from: Day;
  readonly to: Day;
}

/** Days of a break where nobody says: as long as brood takes from egg to bee, so that all of it emerges. Common practice, no source. */
export const usualBreakDays = 21;

/** Writes a break from day `from` of the run to day `to`, both included, into the measures. */
export function broodBreak(measures: Measures, from: number, to: number): void {
  measures.laying.fill(0, from, to + 1);
}
