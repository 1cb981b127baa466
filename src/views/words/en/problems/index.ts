/** A sentence for every code of trouble: what is wrong, what is expected, what to do. */
import { accessProblems } from "./access.ts";
import { regionProblems } from "./colonies-and-regions.ts";
import { comparisonProblems } from "./comparison.ts";
import { controlProblems } from "./control.ts";
import { countProblems } from "./counts.ts";
import { evidenceProblems } from "./evidence.ts";
import { formProblems } from "./form.ts";
import { caseProblems } from "./reasoning.ts";
import { importProblems, recordProblems } from "./records.ts";
import { seasonProblems } from "./season.ts";
import { seasonChoiceProblems } from "./season-choices.ts";
import { surveyProblems } from "./surveys.ts";

/** What a sentence may need: the slots of the problem. */
export type Slots = Readonly<Record<string, string | number>>;

/** By `Problem.code`. */
export const problems: Readonly<Record<string, (slots: Slots) => string>> = {
  ...formProblems,
  ...accessProblems,
  ...importProblems,
  ...recordProblems,
  ...caseProblems,
  ...evidenceProblems,
  ...countProblems,
  ...surveyProblems,
  ...regionProblems,
  ...comparisonProblems,
  ...controlProblems,
  ...seasonProblems,
  ...seasonChoiceProblems,
};
