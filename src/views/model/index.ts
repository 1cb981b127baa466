/** What the pages, the paper and the programs show: pure builders from casebook and reasoning to view data. */
export * from "./apiary-view.ts";
export * from "./bench/bench-drafts.ts";
export * from "./bench/keys.ts";
export * from "./bench/reading.ts";
export * from "./bench/worklist.ts";
export * from "./case-rows.ts";
export * from "./check-letter.ts";
export * from "./codes.ts";
export * from "./drafts.ts";
export * from "./findings-grid.ts";
export * from "./form.ts";
export * from "./forms/apiary-form.ts";
export * from "./forms/case-form.ts";
export * from "./forms/label-form.ts";
export * from "./paper.ts";
export * from "./red-flags.ts";
export * from "./spine.ts";
