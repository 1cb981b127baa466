/** How many bees the model's own colony has on a day: to begin from where nobody counted. */
import { addDays, answered, type Day, isDay, type Result } from "../../../units/index.ts";
import { dayOfYear } from "../calendar.ts";
import { readyRun } from "../course.ts";
import { seeColony } from "../observe.ts";
import type { CourseSite } from "../place.ts";
import { usualColony } from "../start-colony.ts";

/** A run of one day, to have the place read and its faults told. */
const anyColony = { bees: 10_000, infestedShare: 0, brood: "usual" } as const;

/**
 * Adult bees of the colony that the model was tuned to, at a place on a day.
 *
 * Tuned to a summer peak of 30 to 60 thousand bees and 8 to 15 thousand in late winter; no colony's own number.
 *
 * Blocked for a day or place that cannot be.
 */
export function usualBees(site: CourseSite, date: Day): Result<number> {
  const ready = readyRun({
    site,
    start: { date, ...anyColony },
    actions: [],
    until: isDay(date) ? addDays(date, 1) : date,
  });
  if (!ready.ok) return ready;
  const { model } = ready.value;
  const colony = usualColony(model, {
    ...{ dayOfYear: dayOfYear(date), southern: (site.latitude ?? 0) < 0 },
    ...{ contactRate: model.parameters.contactRate, stockSusceptibility: 1 },
  });
  return answered(seeColony(colony, 0, model.layout).bees, ready.problems);
}
