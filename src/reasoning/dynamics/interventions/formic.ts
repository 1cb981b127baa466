/** Formic acid in repeated doses: a hazard to the mites for some days after each. */
import type { Measures } from "../measures.ts";

/**
 * Three weekly doses, each killing at 0.2 a day for five days: e⁻³ of the mites are left. By construction more than
 * 90 % die; the figure it was made for is "more than 95 %" (Clark 1992). No dose to use: the label says what is lawful.
 * Loss of queens and brood in heat is left out.
 */
export const formicCourse = { doses: 3, daysBetweenDoses: 7, actingDays: 5, hazardPerDay: 0.2 } as const;

/** Days from the first dose until the last has its week over. */
export const formicDays = formicCourse.doses * formicCourse.daysBetweenDoses;

/** Writes a course that begins on day `from` of the run into the measures. */
export function formic(measures: Measures, from: number): void {
  const { doses, daysBetweenDoses, actingDays, hazardPerDay } = formicCourse;
  for (let dose = 0; dose < doses; dose++) {
    const first = from + dose * daysBetweenDoses;
    measures.clearing.fill(hazardPerDay, first, first + actingDays);
  }
}
