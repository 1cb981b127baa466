/** In and out: tables somebody else made, tables for others, a plan as a calendar. */

export * from "./agree.ts";
export { looksLikeFormula } from "./cells.ts";
export * from "./copy-file.ts";
export * from "./csv.ts";
export * from "./data-package.ts";
export * from "./dry-run.ts";
export * from "./fresh-drafts.ts";
export { mostMegabytes, type Reading, readGiven } from "./given-file.ts";
export { importId } from "./import-id.ts";
export type { ImportAnswer, ImportProblem, Mend } from "./import-problem.ts";
export { type Mapping, mappingShape, readMapping } from "./mapping.ts";
export * from "./plan-calendar.ts";
export type { PlannedImport } from "./planned-import.ts";
export type { TransferProblems } from "./problems.ts";
export * from "./suggest.ts";
export { type Delimiter, delimiters, readTable, type Table, type TableRow } from "./table.ts";
export * from "./tables/index.ts";
