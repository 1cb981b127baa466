/** Another colony united with this one: its bees by age, their mites and its brood are added on a morning. */
import { addDays, type Day, daysBetween, isDay, type Problem } from "../../../units/index.ts";
import type { Action } from "../actions.ts";
import { countAgain } from "../colony.ts";
import type { CourseQuestion, CourseStart } from "../course.ts";
import type { DatedCount } from "../filter/forecast.ts";
import { broodDays, type Layout } from "../layout.ts";
import { dynamicsProblem } from "../problems.ts";

/** The other colony as it stood on a day before the uniting. Bees and share are asked for: there is no usual donor. */
export interface Donor {
  readonly start: CourseStart;
  /** Counts of it until the uniting; left out: none. */
  readonly counts?: readonly DatedCount[];
  /** What was done to it in that time; left out: nothing. */
  readonly actions?: readonly PutIn[];
}

/** What can be done to a colony that leaves its queen and its bees where they are. */
export type PutIn = Exclude<Action, { readonly kind: "unite" | "requeen" }>;

/**
 * A uniting. The other colony's queen is taken away before (common practice, no source) and this colony's goes on
 * laying; its combs of brood come along whole (common practice, no source).
 */
export interface Uniting {
  readonly kind: "unite";
  readonly from: Day;
  readonly donor: Donor;
  /** Share of the other colony's adult bees lost to fighting and to flying home; left out: 0.1. */
  readonly lost?: number;
}

/** A tenth of the bees that are brought is lost: no source, judgement; 0 to 0.3 is plausible. */
export const unitingFigures = { lost: 0.1 } as const;

/** The question of the other colony alone: the place, the model and the stock of this one, until the uniting. */
export const donorCourse = (question: CourseQuestion, { donor, from }: Uniting): CourseQuestion => ({
  site: question.site,
  start: donor.start,
  actions: donor.actions ?? [],
  until: from,
  ...(question.parameters === undefined ? {} : { parameters: question.parameters }),
  ...(question.stockSusceptibility === undefined ? {} : { stockSusceptibility: question.stockSusceptibility }),
});

/** Adds the other colony's record to this one's, both in one layout; `kept` is the share of its adult bees that stay. */
export function unite(
  state: Float64Array,
  start: number,
  layout: Layout,
  donor: { readonly states: Float64Array; readonly start: number; readonly kept: number },
): void {
  for (let each = layout.summer; each < layout.length; each++)
    state[start + each] = (state[start + each] as number) + donor.kept * (donor.states[donor.start + each] as number);
  for (let day = layout.brood; day < layout.brood + broodDays; day++)
    state[start + day] = (state[start + day] as number) + (donor.states[donor.start + day] as number);
  countAgain(state, start, layout);
}

/** What a uniting cannot be, beside what the other colony's course cannot. */
export function unitingFaults({ from, donor, lost = unitingFigures.lost }: Uniting, field: string): readonly Problem[] {
  const { date } = donor.start;
  const at = `${field}.donor.start.date`;
  return [
    ...(isDay(date) ? [] : [dynamicsProblem("season-day-unknown", "blocked", at, { date: String(date) })]),
    ...(isDay(date) && daysBetween(date, from) < 1
      ? [dynamicsProblem("season-donor-too-late", "blocked", at, { date, latest: addDays(from, -1), from })]
      : []),
    ...(lost >= 0 && lost <= 1
      ? []
      : [dynamicsProblem("season-lost-out-of-range", "blocked", `${field}.lost`, { value: lost })]),
  ];
}

/** A trouble of the other colony's question, told at the uniting; null for what was told of the place already. */
export function inDonor(each: Problem, field: string): Problem | null {
  if (each.severity === "noted" || each.field === null) return null;
  if (/^(start|counts|actions)\b/.test(each.field)) return { ...each, field: `${field}.donor.${each.field}` };
  return each.field === "until" ? { ...each, field: `${field}.from` } : each;
}
