/** Sampling: how many bees, from where, and what that number could still miss. */
export * from "./approximations.ts";
export * from "./detection-sample-size.ts";
export * from "./finite-population.ts";
export * from "./limits-of-zero.ts";
export * from "./margin-sample-size.ts";
export * from "./missed-curve.ts";
export * from "./plan-sample.ts";
export * from "./pools.ts";
export * from "./problems.ts";
export * from "./reasons.ts";
export * from "./survey.ts";
export * from "./two-stage.ts";
export * from "./upper-limit-of-zero.ts";
export * from "./zero-found.ts";
