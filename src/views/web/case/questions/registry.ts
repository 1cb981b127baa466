/** The pages of the six questions. To add one: a line here, and the page beside this file. */
import type { ComponentType } from "react";

/** What the page of a question gets; everything else it asks of the records. */
export interface QuestionProps {
  readonly caseId: string;
}

type Load = () => Promise<{ readonly default: ComponentType<QuestionProps> }>;

export const questionPages: ReadonlyMap<number, Load> = new Map<number, Load>([
  [1, () => import("./Seen.tsx")],
  [2, () => import("./Could.tsx")],
  [3, () => import("./Tell.tsx")],
  [4, () => import("./Found.tsx")],
  [5, () => import("./Done.tsx")],
  [6, () => import("./Worked.tsx")],
]);
