/** A dated control plan, or a refusal that says why and what can be done instead. */
import { controlIds, controls } from "../../knowledge/index.ts";
import { blocked, ensure, isDay, type Problem, type Result } from "../../units/index.ts";
import { chemicalPlan } from "./chemical-plan.ts";
import { controlProblem } from "./control-problem.ts";
import { pattyPlan } from "./patty-plan.ts";
import type { ControlPlan, PlanRequest } from "./plan.ts";
import { requeenPlan } from "./requeen-plan.ts";

/**
 * Plans one control for the colonies named: dated steps, masses in both units, placement, cautions.
 *
 * Menthol, formic acid, amitraz and plant oils exist only under a label record that the user loaded; without one
 * the answer is a refusal with `no-label-record` and no dose. Fat-and-sugar patties and requeening need no
 * label; whether they are allowed where the apiary stands is still asked. Nothing here is a licence: the
 * printed label, local codes, the competent authority and licensed practice come first.
 *
 * A lawful refusal is an answer. Blocked are only data that cannot be read.
 *
 * @throws DomainError for a control that does not exist
 */
export function makePlan(request: PlanRequest): Result<ControlPlan> {
  ensure(controlIds.includes(request.control), "control", request.control, `one of ${controlIds.join(", ")}`);
  const troubles = requestTroubles(request);
  if (troubles.length > 0) return blocked(...troubles);
  if (controls[request.control].needsLabelRecord) return chemicalPlan(request);
  return request.control === "requeen" ? requeenPlan(request) : pattyPlan(request);
}

function requestTroubles(request: PlanRequest): readonly Problem[] {
  const { colonies, coloniesInApiary, coloniesTested, from, to, madeOn, startOn } = request;
  const problems: Problem[] = [];
  for (const [field, day] of Object.entries({ from, to, madeOn, startOn }))
    if (day !== null && !isDay(day))
      problems.push(controlProblem("date-unknown", "blocked", field, { given: day, slots: { date: String(day) } }));
  if (problems.length > 0) return problems;
  if (to < from)
    problems.push(controlProblem("span-ends-before-it-begins", "blocked", "to", { given: to, slots: { from, to } }));
  if (colonies.length === 0) problems.push(controlProblem("no-colonies-in-plan", "blocked", "colonies"));
  const ids = new Set(colonies.map(({ id }) => id));
  if (ids.size < colonies.length) problems.push(controlProblem("colony-twice-in-plan", "blocked", "colonies"));
  if (colonies.length > coloniesInApiary)
    problems.push(
      controlProblem("more-colonies-planned-than-stand", "blocked", "coloniesInApiary", {
        given: coloniesInApiary,
        slots: { planned: colonies.length, standing: coloniesInApiary },
      }),
    );
  if (!(coloniesTested >= 0 && coloniesTested <= coloniesInApiary))
    problems.push(
      controlProblem("more-colonies-tested-than-stand", "blocked", "coloniesTested", {
        given: coloniesTested,
        slots: { tested: coloniesTested, standing: coloniesInApiary },
      }),
    );
  return problems;
}
