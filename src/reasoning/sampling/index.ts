/** Sampling: how many bees, from where, and what that number could still miss. */
export * from "./approximations.ts";
export * from "./colonies-for-precision.ts";
export * from "./detection-sample-size.ts";
export * from "./finite-population.ts";
export * from "./margin-sample-size.ts";
export * from "./missed-curve.ts";
export * from "./plan-sample.ts";
export * from "./problems.ts";
export * from "./reasons.ts";
export * from "./sequential-characteristics.ts";
export * from "./sequential-plan.ts";
export * from "./stopped-sample.ts";
export * from "./stopping-walk.ts";
export * from "./three-way-plan.ts";
export * from "./upper-limit-of-zero.ts";
export * from "./zero-found.ts";
