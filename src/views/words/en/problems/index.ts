/** A sentence for every code of trouble: what is wrong, what is expected, what to do. */
import { formProblems } from "./form.ts";
import { caseProblems } from "./reasoning.ts";

/** What a sentence may need: the slots of the problem. */
export type Slots = Readonly<Record<string, string | number>>;

/** By `Problem.code`. */
export const problems: Readonly<Record<string, (slots: Slots) => string>> = { ...formProblems, ...caseProblems };
