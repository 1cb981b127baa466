/** Patties of sugar and vegetable fat: while one is there, mites pass less easily from bee to bee. They kill none. */
import type { Measures } from "../measures.ts";

/**
 * Share of contact lost while a patty is present. Calibrated so that a treated colony stays near 10 % (BEEBOOK II 5.4);
 * plausible from 0.3 to 0.6. In Ohio, 1991 to 1993, patties all year worked and two summer applications did not.
 */
export const pattyReduction = 0.4;

/** Writes a patty from day `from` of the run to day `to`, both included, into the measures. */
export function oilPatty(measures: Measures, from: number, to: number, reduction: number): void {
  measures.contact.fill(1 - reduction, from, to + 1);
}
