/** What the journal amounts to: a pure fold, its states and selectors. */
export * from "./case-list.ts";
export * from "./fold.ts";
export * from "./lookups.ts";
export * from "./order.ts";
export * from "./questions.ts";
export * from "./state.ts";
