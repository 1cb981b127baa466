/** A new queen: a gap in laying, then bees of another stock from 21 days after she begins to lay. */
import { broodDays } from "../layout.ts";
import type { Measures } from "../measures.ts";

export interface Requeening {
  /** Susceptibility of the new queen's workers; 1 is the stock the model was tuned to. A label, not a measured figure. */
  readonly susceptibility: number;
  /** Days without laying. */
  readonly gapDays: number;
}

/** 10 days without eggs: assumed. The effect comes only with the new queen's offspring: BEEBOOK II 5.4. */
export const requeeningGapDays = 10;

/** Writes a requeening on day `from` of the run into the measures. It lasts to the end of the run. */
export function requeen(measures: Measures, from: number, { susceptibility, gapDays }: Requeening): void {
  measures.laying.fill(0, from, from + gapDays);
  measures.emerging.fill(susceptibility, Math.min(measures.emerging.length, from + gapDays + broodDays));
}
