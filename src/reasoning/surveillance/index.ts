/** Surveillance: what rounds of none found say of a region, where to look next, and how shares lie over places and time. */
export * from "./clayton-kaldor.ts";
export * from "./freedom-series.ts";
export * from "./logistic-random-intercept.ts";
export * from "./marshall.ts";
export * from "./problems.ts";
export * from "./random-intercept-answers.ts";
export * from "./risk-allocation.ts";
export * from "./scenario-tree.ts";
export * from "./trend-test.ts";
export * from "./two-stage-finite.ts";
