/** Papers to print: labels, kit card, report. */
export { reportPaper } from "./diagnostic-report.ts";
export { kitCardPaper } from "./kit-card.ts";
export { labelPaper } from "./labels.ts";
export type { Paper } from "./paper.ts";
