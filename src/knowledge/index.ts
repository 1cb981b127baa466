/** Cited facts: conditions, findings, how often one goes with the other, and who says so. */
export { conditions } from "./conditions/index.ts";
export type * from "./fact.ts";
export { findings } from "./findings/index.ts";
export { gradeProbability } from "./grade-probability.ts";
export { healthyRates } from "./healthy-rates.ts";
export { type ConditionId, conditionIds, type FindingId, findingIds } from "./ids.ts";
export { nothingWrongShare, priors, regionAdjustments } from "./priors.ts";
export { type SourceKey, sources } from "./sources.ts";

/** Version of the knowledge, by date: year and number within the year. */
export const knowledgeVersion = "2026.1";
