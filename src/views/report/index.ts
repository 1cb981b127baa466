/** Papers to print: labels, kit card, report. */
import type { DrawCode } from "./paper.ts";

export { reportPaper } from "./diagnostic-report.ts";
export { kitCardPaper } from "./kit-card.ts";
export { labelPaper } from "./labels.ts";
export type { DrawCode, Drawing, Paper } from "./paper.ts";

/** Brings what draws 2-D codes; apart from the papers, since it weighs more than they do. */
export const loadCodes = (): Promise<DrawCode> =>
  import("./mark.ts").then(
    ({ matrixCode }) =>
      (text) =>
        matrixCode(text),
  );
