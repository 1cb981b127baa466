/** A plan of requeening: it works only as the new queen's workers replace the old ones. */
import { addDays, answered, type Problem, type Result } from "../../units/index.ts";
import { laterOf } from "../site/index.ts";
import { cautionsOf } from "./cautions-of.ts";
import { controlProblem } from "./control-problem.ts";
import type { ControlPlan, PlanRequest, PlanStep } from "./plan.ts";
import { recheckDoubts, recheckStep } from "./recheck.ts";

/** Days to the look for eggs of the new queen. Common practice, no source. */
const acceptedAfterDays = 14;
/** Days from egg to worker: egg 3, open larva 6, sealed 12. Common practice, no source here. */
const eggToWorkerDays = 21;

/** As `makePlan`, for a new queen in each colony on one day. */
export function requeenPlan(request: PlanRequest): Result<ControlPlan> {
  const on = [request.startOn ?? request.from, request.from, request.madeOn].reduce(laterOf);
  if (on > request.to)
    return answered({
      kind: "refused",
      control: "requeen",
      refused: [{ rule: "CO12", reason: "season-over", from: null, until: request.to, slots: {} }],
      earliestStart: null,
      earliestStartRestsOn: null,
      options: [{ option: "oil-patty", from: null }],
      cautions: cautionsOf("requeen"),
    });
  const bare = {
    until: null,
    gramsPerColony: null,
    gramsInAll: null,
    ouncesPerColony: null,
    ouncesInAll: null,
    slots: {},
    rule: "CO19",
    basis: "common-practice",
  } as const;
  // The first workers of the new queen emerge three weeks after she is in; one lifespan later they are the colony.
  const firstOwnWorkers = addDays(on, eggToWorkerDays);
  const steps: readonly PlanStep[] = [
    { ...bare, step: "requeen-1", kind: "requeen", on, code: "requeen-colony" },
    { ...bare, step: "check-1", kind: "check", on: addDays(on, acceptedAfterDays), code: "check-queen-accepted" },
    { ...recheckStep(firstOwnWorkers), rule: "CO19" },
  ];
  return answered(
    {
      kind: "plan",
      control: "requeen",
      colonies: request.colonies.map(({ id, code }) => ({ id, code })),
      coloniesInApiary: request.coloniesInApiary,
      coloniesTested: request.coloniesTested,
      untestedReason: request.untestedReason?.trim() || null,
      madeOn: request.madeOn,
      window: null,
      steps,
      gramsInAll: null,
      ouncesInAll: null,
      placement: null,
      protectiveEquipment: null,
      supersFrom: null,
      vapour: null,
      cautions: cautionsOf("requeen"),
    },
    [...doubts(request), ...recheckDoubts(firstOwnWorkers, request.site.latitude, [])],
  );
}

const doubts = ({ jurisdiction }: PlanRequest): readonly Problem[] => [
  controlProblem("requeening-may-be-worse", "noted", null),
  controlProblem("check-jurisdiction", "warned", "jurisdiction", { slots: { jurisdiction: jurisdiction ?? "" } }),
];
