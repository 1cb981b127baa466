/** When a control may be in the hives, and the dated plan for it; or a refusal that says why. */
export type { DayReason, DayReasons, EarlierTreatment } from "./day-rules.ts";
export * from "./evidence-limits.ts";
export * from "./label-record.ts";
export * from "./make-plan.ts";
export { pattyDays, pattyGrams } from "./patty-plan.ts";
export * from "./plan.ts";
export * from "./plan-record.ts";
export type { ControlProblems, RefusalReasons } from "./problems.ts";
export { emergedBeeDays, type RecheckDays, recheckDays, summerLifespanDays } from "./recheck.ts";
export * from "./recorded-site.ts";
export * from "./shown-beside.ts";
export { type RefusedSpan, type Window, type WindowsAnswer, type WindowsInput, windows } from "./windows.ts";
