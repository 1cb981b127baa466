/** A sentence for every code of trouble: what is wrong, what is expected, what to do. */
import { accessProblems } from "./access.ts";
import { comparisonProblems } from "./comparison.ts";
import { controlProblems } from "./control.ts";
import { countProblems } from "./counts.ts";
import { evidenceProblems } from "./evidence.ts";
import { formProblems } from "./form.ts";
import { caseProblems } from "./reasoning.ts";
import { recordProblems } from "./records.ts";

/** What a sentence may need: the slots of the problem. */
export type Slots = Readonly<Record<string, string | number>>;

/** By `Problem.code`. */
export const problems: Readonly<Record<string, (slots: Slots) => string>> = {
  ...formProblems,
  ...accessProblems,
  ...recordProblems,
  ...caseProblems,
  ...evidenceProblems,
  ...countProblems,
  ...comparisonProblems,
  ...controlProblems,
};
