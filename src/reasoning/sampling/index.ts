/** Sampling: how many bees, from where, and what that number could still miss. */
export * from "./approximations.ts";
export * from "./detection-sample-size.ts";
export * from "./finite-population.ts";
export * from "./missed-curve.ts";
export * from "./problems.ts";
export * from "./upper-limit-of-zero.ts";
