/** A plan of fat-and-sugar patties: they keep mites from finding new bees and kill none. */
import { addDays, answered, type Day, ounces, type Problem, type Result, seasonOf } from "../../units/index.ts";
import { earlierOf, laterOf } from "../site/index.ts";
import { cautionsOf } from "./cautions-of.ts";
import { controlProblem } from "./control-problem.ts";
import type { ControlPlan, PlanRequest, PlanStep } from "./plan.ts";
import { recheckDoubts, recheckStep } from "./recheck.ts";

/**
 * One patty, grams (4 oz), of two parts sugar to one part solid vegetable fat by volume, on the top bars over the
 * centre of the brood nest.
 * @source BEEBOOK II, Sammataro et al. 2013, 5.4 [seen]
 */
export const pattyGrams = 113;

/** Days that one patty lies in the colony before it is renewed: "lasts a month and more", common practice, no source. */
export const pattyDays = 28;
/** Days where small hive beetle lives: a piece the bees eat in 7 to 10 days (supplier page on patties and beetles [seen]). */
const renewDaysWithBeetle = 10;

/** As `makePlan`, for patties: fed from the first day to the end of the days asked about, always present. */
export function pattyPlan(request: PlanRequest): Result<ControlPlan> {
  const start = [request.startOn ?? request.from, request.from, request.madeOn].reduce(laterOf);
  const beetle = request.smallHiveBeetle === "present" || request.smallHiveBeetle === "endemic";
  if (start >= request.to)
    return answered({
      kind: "refused",
      control: request.control,
      refused: [{ rule: "CO12", reason: "season-over", from: null, until: request.to, slots: {} }],
      earliestStart: null,
      earliestStartRestsOn: null,
      options: [{ option: "requeen", from: null }],
      cautions: cautionsOf(request.control),
    });
  const every = beetle ? renewDaysWithBeetle : pattyDays;
  const gramsEachTime = pattyGrams * request.colonies.length;
  const unweighed = { gramsPerColony: null, gramsInAll: null, ouncesPerColony: null, ouncesInAll: null };
  const steps: PlanStep[] = [];
  let number = 0;
  for (let on = start; on < request.to; on = addDays(on, every)) {
    number += 1;
    steps.push({
      step: `feed-${number}`,
      kind: "feed",
      on,
      until: earlierOf(addDays(on, every), request.to),
      gramsPerColony: pattyGrams,
      gramsInAll: gramsEachTime,
      ouncesPerColony: ounces(pattyGrams),
      ouncesInAll: ounces(gramsEachTime),
      code: "feed-patty",
      slots: { number, fatParts: 1, sugarParts: 2 },
      rule: "CO18",
      basis: number === 1 || beetle ? "published" : "common-practice",
    });
  }
  const checkOn = addDays(start, renewDaysWithBeetle);
  if (checkOn < request.to && !beetle)
    steps.push({
      ...unweighed,
      step: "check-1",
      kind: "check",
      on: checkOn,
      until: null,
      code: "check-patty",
      slots: {},
      rule: "CO18",
      basis: "judgement",
    });
  steps.push({
    ...unweighed,
    step: "remove-1",
    kind: "remove",
    on: request.to,
    until: null,
    code: "remove-patty",
    slots: {},
    rule: "CO18",
    basis: "published",
  });
  steps.push(recheckStep(request.to));
  steps.sort((a, b) => (a.on < b.on ? -1 : a.on > b.on ? 1 : 0));
  const gramsInAll = gramsEachTime * number;
  return answered(
    {
      kind: "plan",
      control: request.control,
      colonies: request.colonies.map(({ id, code }) => ({ id, code })),
      coloniesInApiary: request.coloniesInApiary,
      coloniesTested: request.coloniesTested,
      untestedReason: request.untestedReason?.trim() || null,
      madeOn: request.madeOn,
      window: null,
      steps,
      gramsInAll,
      ouncesInAll: ounces(gramsInAll),
      placement: null,
      protectiveEquipment: null,
      supersFrom: null,
      vapour: null,
      cautions: cautionsOf(request.control),
    },
    doubts(request, start),
  );
}

function doubts(request: PlanRequest, start: Day): readonly Problem[] {
  const { site, flows = [], smallHiveBeetle, colonies } = request;
  const problems: Problem[] = [
    controlProblem("check-jurisdiction", "warned", "jurisdiction", {
      slots: { jurisdiction: request.jurisdiction ?? "" },
    }),
    controlProblem("patty-does-not-kill", "noted", null),
  ];
  if (site.latitude !== undefined && seasonOf(start, site.latitude) === "summer")
    problems.push(controlProblem("patty-in-summer", "warned", "startOn", { given: start }));
  for (const { from, to } of flows)
    if (from <= request.to && to >= start)
      problems.push(controlProblem("patty-in-flow", "warned", "flows", { slots: { from, to } }));
  if (smallHiveBeetle === undefined || smallHiveBeetle === "unknown")
    problems.push(controlProblem("small-hive-beetle-unknown", "unknown", "smallHiveBeetle"));
  return [...problems, ...recheckDoubts(request.to, site.latitude, colonies)];
}
