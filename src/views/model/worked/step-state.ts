/**
 * Where a step of a plan stands on a day: done, not done, overdue or still to come.
 *
 * @module views/model
 */
import {
  type Casebook,
  type CaseState,
  isInConflict,
  type PlanState,
  plansOf,
  settled,
} from "../../../casebook/index.ts";
import type { Day } from "../../../units/index.ts";

export type StepState = "done" | "not-done" | "conflict" | "overdue" | "waits";

/** What was marked of a step that is planned for `on`; unmarked it waits, and is overdue once its day is past. */
export function stepState(
  marked: PlanState["done"][string] | undefined,
  { on, today }: { readonly on: Day; readonly today: Day },
): StepState {
  if (isInConflict(marked)) return "conflict";
  return settled(marked)?.state ?? (on < today ? "overdue" : "waits");
}

/** The days of all steps of a case that are past and that nobody marked, earliest first. */
export const overdueSteps = (casebook: Casebook, state: CaseState, today: Day): readonly Day[] =>
  plansOf(casebook, state.id)
    .flatMap((plan) =>
      (settled(plan.record)?.steps ?? [])
        .filter((step) => stepState(plan.done[step.step], { on: step.on, today }) === "overdue")
        .map((step) => step.on),
    )
    .sort();
