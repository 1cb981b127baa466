/** The apiary's place: temperatures by day, forage and supers, day length, and how fast vapours leave. */
export * from "./daily-means.ts";
export * from "./day-length.ts";
export type { SiteProblems } from "./problems.ts";
export * from "./vapour.ts";
export * from "./weather-year.ts";
export * from "./year-calendar.ts";
