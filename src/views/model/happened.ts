/**
 * Days on which something has happened: never a day to come, never so far back that the year is likely mistyped.
 *
 * @module views/model
 */
import { type Day, isDay, problem, yearOf } from "../../units/index.ts";
import type { FormReader } from "./form.ts";

/** Years back from today beyond which a day is taken for a slip of the pen. Our choice, no source. */
export const farthestBackYears = 5;

/** The first day that a form takes as one on which something happened. */
const firstDay = (today: Day): Day => {
  const year = yearOf(today) - farthestBackYears;
  const isLeapDay = today.endsWith("-02-29");
  return `${year}${isLeapDay ? "-02-28" : today.slice(4)}`;
};

/** Complains of a day to come or of one more than `farthestBackYears` back. */
export function heedDay(form: FormReader, name: string, { day, today }: { readonly day: Day; readonly today: Day }) {
  if (!isDay(day)) return;
  if (day > today)
    form.complain(problem("day-to-come", "blocked", name, { given: day, slots: { given: day, latest: today } }));
  else if (day < firstDay(today))
    form.complain(
      problem("day-long-ago", "blocked", name, {
        given: day,
        slots: { given: day, earliest: firstDay(today), years: farthestBackYears },
      }),
    );
}

/** The day in a field on which something happened; today when the field is empty. */
export function happenedOn(form: FormReader, name: string, today: Day): Day {
  const day = form.maybeDay(name) ?? today;
  heedDay(form, name, { day, today });
  return day;
}
