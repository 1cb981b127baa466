/** Quantities, calendar days, estimates and trouble: what every other folder speaks in. */
export * from "./day.ts";
export * from "./estimate.ts";
export * from "./json.ts";
export * from "./problem.ts";
export * from "./quantity.ts";
