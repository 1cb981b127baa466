/** Sampling: how many bees, from where, and what that number could still miss. */
export * from "./approximations.ts";
export * from "./colonies-for-precision.ts";
export * from "./detection-sample-size.ts";
export * from "./fewest-bees-plan.ts";
export * from "./finite-population.ts";
export * from "./fixed-plan.ts";
export * from "./judged-plan.ts";
export * from "./limits-of-zero.ts";
export * from "./margin-sample-size.ts";
export * from "./missed-curve.ts";
export * from "./past-stop.ts";
export * from "./plan-sample.ts";
export * from "./pools.ts";
export * from "./problems.ts";
export * from "./reasons.ts";
export * from "./running-path.ts";
export * from "./sequential-characteristics.ts";
export {
  type AtEnd,
  lineSlack,
  type SequentialDesign,
  type SequentialLines,
  type SequentialLook,
  type SequentialPlan,
  type SequentialTest,
  sequentialLines,
  sequentialPlan,
} from "./sequential-plan.ts";
export * from "./stopped-sample.ts";
export * from "./stopping-walk.ts";
export * from "./survey.ts";
export * from "./three-way-plan.ts";
export * from "./two-stage.ts";
export * from "./upper-limit-of-zero.ts";
export * from "./zero-found.ts";
