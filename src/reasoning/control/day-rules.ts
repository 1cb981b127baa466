/** What speaks against a treatment lying in the hive on one day. */
import { type Day, daysBetween } from "../../units/index.ts";
import { isWithin, nextSupersOn, type Span, type Supers, supersAreOn } from "../site/index.ts";
import { vapourLimits } from "./evidence-limits.ts";
import type { LabelLimits } from "./label-record.ts";

/** Something already put into the hives; `off` null while it is still in. */
export interface EarlierTreatment {
  readonly activeIngredient: string;
  readonly on: Day;
  readonly off: Day | null;
}

/** Why a day is refused. The key is the reason, the value its slots. Temperatures unrounded, Celsius. */
export interface DayReasons {
  readonly "no-label-record": Record<never, never>;
  readonly "no-temperature": Record<never, never>;
  readonly "too-cool": { readonly limitCelsius: number; readonly warmestCelsius: number };
  readonly "too-warm": { readonly limitCelsius: number; readonly coolestCelsius: number };
  readonly "vapour-too-weak": { readonly limitCelsius: number; readonly warmestCelsius: number };
  readonly "supers-on": { readonly off: string };
  readonly "too-close-to-supers": { readonly on: string; readonly days: number };
  readonly "flow-and-supers-not-recorded": Record<never, never>;
  readonly "other-treatment-in-hive": { readonly activeIngredient: string; readonly off: string };
  readonly "too-few-days": { readonly days: number; readonly needed: number };
  readonly "too-few-days-before-end": { readonly days: number; readonly needed: number };
}

export type DayReason = keyof DayReasons;

/** A reason against one day, with the rule it rests on. */
export interface Against {
  readonly reason: DayReason;
  readonly rule: string;
  /** Text slots of the reason; equal slots join neighbouring days into one span. */
  readonly slots: Readonly<Record<string, string | number>>;
}

export interface DayQuestion {
  readonly day: Day;
  /** Unrounded, Celsius; undefined when no temperature is known. */
  readonly highCelsius: number | undefined;
  readonly label: LabelLimits;
  readonly flows: readonly Span[];
  /** Undefined when nobody recorded whether supers are on; an empty list says that none are. */
  readonly supers: readonly Supers[] | undefined;
  readonly treatments: readonly EarlierTreatment[];
}

/** Every reason against the day, in the order of the rules; none means the treatment may lie in the hive that day. */
export function reasonsAgainst(question: DayQuestion): readonly Against[] {
  return [...temperatureReasons(question), ...supersReasons(question), ...treatmentReasons(question)];
}

function temperatureReasons({ highCelsius, label }: DayQuestion): readonly Against[] {
  if (highCelsius === undefined) return [{ reason: "no-temperature", rule: "CO3", slots: {} }];
  const { minDailyHighCelsius: least, maxDailyHighCelsius: greatest } = label;
  if (highCelsius < least) return [{ reason: "too-cool", rule: "CO2", slots: { limitCelsius: least } }];
  if (highCelsius > greatest) return [{ reason: "too-warm", rule: "CO2", slots: { limitCelsius: greatest } }];
  const floor = vapourLimits(label.activeIngredient)?.tooWeakBelowCelsius;
  if (floor !== undefined && highCelsius < floor)
    return [{ reason: "vapour-too-weak", rule: "CO8", slots: { limitCelsius: floor } }];
  return [];
}

function supersReasons({ day, label, flows, supers }: DayQuestion): readonly Against[] {
  if (label.supersAllowed) return [];
  if (supers === undefined)
    return isWithin(day, flows) ? [{ reason: "flow-and-supers-not-recorded", rule: "CO6", slots: {} }] : [];
  if (supersAreOn(day, supers)) {
    const off = supers.find(({ on, off }) => day >= on && (off === null || day < off))?.off;
    return [{ reason: "supers-on", rule: "CO4", slots: { off: off ?? "" } }];
  }
  const on = nextSupersOn(day, supers);
  // The treatment that still lies in on this day comes out on the next at the earliest.
  if (on !== null && daysBetween(day, on) - 1 < label.daysBeforeSupers)
    return [{ reason: "too-close-to-supers", rule: "CO5", slots: { on, days: label.daysBeforeSupers } }];
  return [];
}

const treatmentReasons = ({ day, treatments }: DayQuestion): readonly Against[] =>
  treatments
    .filter(({ on, off }) => day >= on && (off === null || day < off))
    .map(({ activeIngredient, off }) => ({
      reason: "other-treatment-in-hive",
      rule: "CO7",
      slots: { activeIngredient, off: off ?? "" },
    }));
