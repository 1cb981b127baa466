/** The shapes of a control plan: what is asked, what is planned, what is refused. */
import type { CautionId, ControlId } from "../../knowledge/index.ts";
import type { Day } from "../../units/index.ts";
import type { SiteTemperatures, Span, Supers } from "../site/index.ts";
import type { EarlierTreatment } from "./day-rules.ts";
import type { LabelRecord } from "./label-record.ts";
import type { RefusalReasons } from "./problems.ts";
import type { Window } from "./windows.ts";

export interface PlannedColony {
  readonly id: string;
  readonly code: string;
  /** As last seen; `not-looked` when nobody looked. */
  readonly queen?: "laying" | "new" | "none" | "not-looked";
  readonly brood?: "present" | "absent" | "not-looked";
}

export interface PlanRequest {
  readonly control: ControlId;
  readonly colonies: readonly PlannedColony[];
  readonly coloniesInApiary: number;
  /** How many of the planned colonies were tested. */
  readonly coloniesTested: number;
  /** Why colonies nobody tested are in the plan, in the planner's words. */
  readonly untestedReason?: string;
  /** Where the apiary stands, in the words of the label record; null when not known. */
  readonly jurisdiction: string | null;
  readonly labelRecord: LabelRecord | null;
  readonly site: SiteTemperatures;
  /** Twelve means of an ordinary year, asked for a later start when `site` holds a forecast that allows none. */
  readonly ordinaryYear?: SiteTemperatures;
  readonly flows?: readonly Span[];
  /** Leave out when nobody recorded them; an empty list says that none are on. */
  readonly supers?: readonly Supers[];
  readonly treatments?: readonly EarlierTreatment[];
  /** The day wanted; null for the first day that the rules allow. */
  readonly startOn: Day | null;
  /** The days that may be planned, both included; `to` is the end of the season. */
  readonly from: Day;
  readonly to: Day;
  /** Today. */
  readonly madeOn: Day;
  /** Whether small hive beetle is in the region; decides how long a patty may lie. */
  readonly smallHiveBeetle?: "absent" | "present" | "endemic" | "unknown";
}

export type StepKind = "apply" | "check" | "remove" | "recheck" | "feed" | "requeen" | "sample";

/** A dated act. Masses are grams with their ounces (weight); unrounded. */
export interface PlanStep {
  /** Unique in the plan, the same each time the plan is made: `apply-1`. */
  readonly step: string;
  readonly kind: StepKind;
  readonly on: Day;
  readonly until: Day | null;
  readonly gramsPerColony: number | null;
  readonly gramsInAll: number | null;
  readonly ouncesPerColony: number | null;
  readonly ouncesInAll: number | null;
  /** What to do, as a code with slots; the sentence is made in views/words. */
  readonly code: StepCode;
  readonly slots: Readonly<Record<string, string | number>>;
  readonly rule: string;
  /** What the day rests on. */
  readonly basis: "label-record" | "published" | "common-practice" | "judgement";
}

/** What steps say; key: code, value: slots. */
export interface StepCodes {
  readonly "apply-by-label": { readonly number: number; readonly of: number; readonly placement: string };
  readonly "check-bees-and-heat": { readonly harmfulAboveCelsius?: number };
  readonly "remove-by-label": { readonly number: number; readonly of: number };
  readonly "recheck-after-lifespan": {
    readonly liveStainFrom: string;
    readonly emergedSinceFrom: string;
    readonly lifespanFrom: string;
  };
  readonly "feed-patty": { readonly number: number; readonly fatParts: number; readonly sugarParts: number };
  readonly "check-patty": Record<never, never>;
  readonly "remove-patty": Record<never, never>;
  readonly "requeen-colony": Record<never, never>;
  readonly "check-queen-accepted": Record<never, never>;
}
export type StepCode = keyof StepCodes;

/** One reason why there is no plan, with the rule it rests on. */
export interface Refusal {
  readonly rule: string;
  readonly reason: keyof RefusalReasons;
  /** Span it holds for; null when it holds whatever the day. */
  readonly from: Day | null;
  readonly until: Day | null;
  readonly slots: Readonly<Record<string, string | number>>;
}

/** What can be done in place of what was refused. */
export interface Option {
  readonly option: "wait" | "oil-patty" | "requeen" | "load-label-record" | "give-reason";
  /** From when; null when no day is known. */
  readonly from: Day | null;
}

export interface MadePlan {
  readonly kind: "plan";
  readonly control: ControlId;
  readonly colonies: readonly { readonly id: string; readonly code: string }[];
  readonly coloniesInApiary: number;
  readonly coloniesTested: number;
  readonly untestedReason: string | null;
  readonly madeOn: Day;
  /** The run of lawful days the plan lies in; null when no label limits the days. */
  readonly window: Window | null;
  readonly steps: readonly PlanStep[];
  /** Over all applications or feedings and colonies. */
  readonly gramsInAll: number | null;
  readonly ouncesInAll: number | null;
  readonly placement: string | null;
  readonly protectiveEquipment: string | null;
  /** Supers may go on from this day at the earliest; null when the plan does not bar them. */
  readonly supersFrom: Day | null;
  /** Vapour at the coolest and the warmest high of the treatment, as a multiple of that at 21.1 °C; null when not known. */
  readonly vapour: { readonly atCoolest: number; readonly atWarmest: number } | null;
  readonly cautions: readonly CautionId[];
}

export interface RefusedPlan {
  readonly kind: "refused";
  readonly control: ControlId;
  readonly refused: readonly Refusal[];
  /** First day on which the rules would allow a start; null when none was found in the days asked about. */
  readonly earliestStart: Day | null;
  /** What the earliest start rests on: the temperatures given, or an ordinary year in their place. */
  readonly earliestStartRestsOn: "site" | "ordinary-year" | null;
  readonly options: readonly Option[];
  readonly cautions: readonly CautionId[];
}

/** A plan, or a lawful refusal with its reasons: blockers stand before everything else. */
export type ControlPlan = MadePlan | RefusedPlan;
