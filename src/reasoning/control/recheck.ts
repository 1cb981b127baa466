/** When a look inside the tracheae can show whether a control worked: dead mites stay where they died. */
import { addDays, type Day, type Problem, seasonOf } from "../../units/index.ts";
import { controlProblem } from "./control-problem.ts";
import type { PlannedColony, PlanStep } from "./plan.ts";

/**
 * Upper end of a summer worker's life, days: 3 to 6 weeks.
 * @source Agroscope page on worker life [seen]; winter bees live 3 to 6 months
 */
export const summerLifespanDays = 42;

/**
 * Days a bee that emerged since should have lived in the colony before it is dissected: one week or more.
 * @source BEEBOOK II, Sammataro et al. 2013, 5.2, retrieval in the resistance bioassay [seen]
 */
export const emergedBeeDays = 7;

/** Which ways of rechecking there are, and from when each can tell. */
export interface RecheckDays {
  /** Fresh bees, mites stained live or dead. */
  readonly liveStainFrom: Day;
  /** Bees marked as they emerged after the control ended. */
  readonly emergedSinceFrom: Day;
  /** Any bees, once those alive at the control have died of age. */
  readonly lifespanFrom: Day;
}

/**
 * From when a recheck can tell, for a control that ended on `ended`.
 *
 * Prevalence by dissection barely falls while infested bees live on, because dead mites stay in the tracheae.
 *
 * @source Underwood & Currie 2009, J. Econ. Entomol. 102:1881, abstract [seen]
 *
 * @example
 * recheckDays("2026-09-05")  // → {"liveStainFrom":"2026-09-05","emergedSinceFrom":"2026-09-12","lifespanFrom":"2026-10-17"}
 */
export const recheckDays = (ended: Day): RecheckDays => ({
  liveStainFrom: ended,
  emergedSinceFrom: addDays(ended, emergedBeeDays),
  lifespanFrom: addDays(ended, summerLifespanDays),
});

/** The recheck step: planned for one bee lifespan after the end, with the earlier ways in its slots. */
export function recheckStep(ended: Day): PlanStep {
  const days = recheckDays(ended);
  return {
    step: "recheck",
    kind: "recheck",
    on: days.lifespanFrom,
    until: null,
    gramsPerColony: null,
    gramsInAll: null,
    ouncesPerColony: null,
    ouncesInAll: null,
    code: "recheck-after-lifespan",
    slots: { ...days },
    rule: "CO17",
    basis: "published",
  };
}

/** What weakens a recheck: winter bees that live for months, colonies without brood, an unknown season. */
export function recheckDoubts(
  ended: Day,
  latitude: number | undefined,
  colonies: readonly PlannedColony[],
): readonly Problem[] {
  const problems: Problem[] = [];
  const { lifespanFrom } = recheckDays(ended);
  if (latitude === undefined) problems.push(controlProblem("season-of-recheck-unknown", "unknown", "site.latitude"));
  else {
    const season = seasonOf(lifespanFrom, latitude);
    if (season === "autumn" || season === "winter")
      problems.push(
        controlProblem("recheck-among-winter-bees", "warned", null, { slots: { on: lifespanFrom, season } }),
      );
  }
  const broodless = colonies.filter(({ brood, queen }) => brood === "absent" || queen === "none");
  if (broodless.length > 0)
    problems.push(
      controlProblem("no-bees-emerge-to-recheck", "warned", "colonies", {
        slots: { colonies: broodless.map(({ code }) => code).join(", ") },
      }),
    );
  return problems;
}
