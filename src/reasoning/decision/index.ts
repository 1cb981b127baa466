/** Decision: wait, test first or act now, and what would change the choice. */
export { type Belief, type BenchTest, type BetaBelief, beliefFromCounts, type TwoStateBelief } from "./belief.ts";
export { type ActionComparison, compareActions, type DecisionRequest } from "./compare-actions.ts";
export type { Flip, FlipInput } from "./flips.ts";
export type { Action, Prices } from "./losses.ts";
export * from "./problems.ts";
export type { Stretch } from "./strip.ts";
export * from "./thresholds.ts";
export * from "./value-of-sampling.ts";
export * from "./winter-loss.ts";
