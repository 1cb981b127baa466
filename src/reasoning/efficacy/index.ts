/** Efficacy: what a treatment did, against a comparator or not at all. */
export * from "./abbott.ts";
export { type Share, shareWithout } from "./group.ts";
export * from "./group-size.ts";
export * from "./henderson-tilton.ts";
export * from "./other-formulas.ts";
export * from "./paired-tests.ts";
export * from "./problems.ts";
export * from "./share-difference.ts";
export * from "./share-ratio.ts";
export * from "./trial-outcome.ts";
export * from "./unconditional-tests.ts";
