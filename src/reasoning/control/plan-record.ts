/** A plan in the shape the journal keeps. */
import type { Kept, PlanState } from "../../casebook/index.ts";
import type { MadePlan, PlanStep } from "./plan.ts";

/** A plan as the journal keeps it: the body of a `plan-made` entry. */
export type PlanRecord = NonNullable<PlanState["record"]> extends Kept<infer Body> ? Body : never;

export interface Recording {
  readonly plan: MadePlan;
  /** Id of the case. */
  readonly case: string;
  /** Id of the label record it was made under; null when none was needed. */
  readonly labelRecord: string | null;
  /** 1 for the first, then one more each time the plan is changed. */
  readonly version: number;
  /** The step in words, as views write it. */
  readonly noteOf: (step: PlanStep) => string;
}

/** The body to record: colonies, dates and grams unchanged. */
export function planRecord({ plan, case: kase, labelRecord, version, noteOf }: Recording): PlanRecord {
  return {
    case: kase,
    colonies: plan.colonies.map(({ id }) => id),
    control: plan.control,
    labelRecord,
    madeOn: plan.madeOn,
    steps: plan.steps.map((step) => ({
      step: step.step,
      kind: step.kind,
      on: step.on,
      until: step.until,
      gramsPerColony: step.gramsPerColony,
      gramsInAll: step.gramsInAll,
      note: noteOf(step),
    })),
    version,
  };
}
