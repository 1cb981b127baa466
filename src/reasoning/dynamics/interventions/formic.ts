/** Formic acid in repeated doses: a hazard to the mites for some days after each, while days are warm enough. */
import type { Measures } from "../measures.ts";

/**
 * Three weekly doses, each killing at 0.2 a day for five days: e⁻³ of the mites are left. By construction more than
 * 90 % die; the figure it was made for is "more than 95 %" (Clark 1992). No dose to use: the label says what is lawful.
 * Loss of queens and brood in heat is left out, and told.
 */
export const formicCourse = { doses: 3, daysBetweenDoses: 7, actingDays: 5, hazardPerDay: 0.2 } as const;

/**
 * Highs of the days between which it is used, Celsius: one account's 50 to 85 °F, with queen losses in heat. The label
 * goes before.
 *
 * @source formic-notes-2022, seen
 */
export const formicWindow = { least: 10, most: 29.4 } as const;

/** Days from the first dose until the last has its week over. */
export const formicDays = formicCourse.doses * formicCourse.daysBetweenDoses;

/** Days of the run on which the doses of a course that begins on day `from` give off vapour. */
export function vapourDays(from: number): readonly number[] {
  const { doses, daysBetweenDoses, actingDays } = formicCourse;
  return Array.from({ length: doses * actingDays }, (_, day) => {
    const dose = Math.floor(day / actingDays);
    return from + dose * daysBetweenDoses + (day % actingDays);
  });
}

/**
 * Writes a course that begins on day `from` of the run into the measures. On a day whose high lies under `least` its
 * vapour does nothing: judgement made from the window, no trial of it in the cold was seen.
 */
export function formic(
  measures: Measures,
  from: number,
  { highOn, least }: { readonly highOn: (elapsed: number) => number; readonly least: number },
): void {
  for (const day of vapourDays(from))
    if (day < measures.clearing.length && highOn(day) >= least) measures.clearing[day] = formicCourse.hazardPerDay;
}
