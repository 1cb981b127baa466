/** What the journal amounts to: a pure fold, its states and selectors. */
export * from "./state.ts";
