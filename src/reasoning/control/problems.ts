/** The troubles and refusals of control: code → the slots its sentence needs. */
import type { DayReasons } from "./day-rules.ts";

/** Codes of the `Problem`s this folder returns. Temperatures Celsius, unrounded. */
export interface ControlProblems {
  /** blocked */
  readonly "date-unknown": { readonly date: string };
  /** blocked */
  readonly "span-ends-before-it-begins": { readonly from: string; readonly to: string };
  /** blocked */
  readonly "span-too-long": { readonly days: number; readonly longest: number };
  /** blocked */
  readonly "label-temperatures-missing": Record<never, never>;
  /** blocked */
  readonly "label-temperatures-crossed": { readonly least: number; readonly greatest: number };
  /** blocked */
  readonly "label-temperatures-look-like-fahrenheit": { readonly least: number; readonly greatest: number };
  /** blocked */
  readonly "label-duration-out-of-range": { readonly durationDays: number };
  /** blocked */
  readonly "label-applications-out-of-range": { readonly applications: number };
  /** blocked */
  readonly "label-applications-without-days-between": { readonly applications: number };
  /** blocked */
  readonly "label-days-before-supers-out-of-range": { readonly daysBeforeSupers: number };
  /** blocked */
  readonly "label-read-date-unknown": Record<never, never>;
  /** blocked */
  readonly "label-read-in-future": { readonly readOn: string; readonly madeOn: string };
  /** warned: read more than 365 days before (judgement). */
  readonly "label-record-old": { readonly readOn: string; readonly days: number };
  /** warned: the record is an invented one for a demonstration. */
  readonly "label-record-invented": Record<never, never>;
  /** warned: means of an ordinary year stood in place of highs, so days that are too hot cannot be told. */
  readonly "upper-limit-not-judged": Record<never, never>;
  /** warned: a nectar flow lies in a window; what is stored then may not be taken as honey. */
  readonly "flow-in-window": { readonly from: string; readonly to: string; readonly window: string };
  /** warned: where the apiary stands is not known, so the label's jurisdiction was not checked. */
  readonly "jurisdiction-unknown": Record<never, never>;
  /** warned: needs no label, but ask whether it is allowed there. Empty text when not known. */
  readonly "check-jurisdiction": { readonly jurisdiction: string };
  /** warned: common practice, no source. */
  readonly "queen-not-settled": { readonly colonies: string };
  /** warned: the label allows highs at which a trial saw no control. */
  readonly "vapour-doubtful": { readonly days: number; readonly limitCelsius: number };
  /** warned: the label allows highs at which bees were driven out or brood was lost. */
  readonly "heat-harms-bees": { readonly days: number; readonly limitCelsius: number };
  /** warned: bees alive then may have lived through the control and still carry dead mites. */
  readonly "recheck-among-winter-bees": { readonly on: string; readonly season: string };
  /** warned: no bees emerge since in these colonies; use the live stain or wait a lifespan. */
  readonly "no-bees-emerge-to-recheck": { readonly colonies: string };
  /** unknown: no latitude, so nobody knows whether winter bees are meant. */
  readonly "season-of-recheck-unknown": Record<never, never>;
  /** noted: patties protect young bees and do nothing to mites already inside. */
  readonly "patty-does-not-kill": Record<never, never>;
  /** warned: two summer patties failed to stop the autumn rise in a trial. */
  readonly "patty-in-summer": Record<never, never>;
  /** warned: sources contradict each other on patties during a flow. */
  readonly "patty-in-flow": { readonly from: string; readonly to: string };
  /** unknown: patties breed beetle larvae where the beetle lives. */
  readonly "small-hive-beetle-unknown": Record<never, never>;
  /** noted: new stock may be better or worse than the old. */
  readonly "requeening-may-be-worse": Record<never, never>;
  /** blocked: two weather years stand for the apiary. */
  readonly "weather-in-conflict": Record<never, never>;
  /** warned: people recorded different flows, supers or treatments (`field`); every value was taken to bar its days. */
  readonly "records-in-conflict": { readonly field: string; readonly disputed: number };
  /** blocked */
  readonly "no-colonies-in-plan": Record<never, never>;
  /** blocked */
  readonly "colony-twice-in-plan": Record<never, never>;
  /** blocked */
  readonly "more-colonies-planned-than-stand": { readonly planned: number; readonly standing: number };
  /** blocked */
  readonly "more-colonies-tested-than-stand": { readonly tested: number; readonly standing: number };
}

/** Reasons for which a plan is refused: those of single days, and these. */
export interface RefusalReasons extends DayReasons {
  /** The days asked about lie in the past. */
  readonly "season-over": Record<never, never>;
  /** The day wanted, or the end of the treatment begun on it, lies outside the days asked about. */
  readonly "start-outside-days-asked": Record<never, never>;
  readonly "label-for-another-ingredient": { readonly wanted: string; readonly label: string };
  readonly "label-for-another-jurisdiction": { readonly wanted: string; readonly label: string };
  readonly "reason-needed-for-untested": { readonly planned: number; readonly tested: number };
}
