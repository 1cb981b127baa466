/** The sentence of a problem. */
import type { Problem } from "../../units/index.ts";
import type { Words } from "./languages.ts";

/** What the problem says to a person; its bare code where there is no sentence for it. */
export const sentenceOf = (problem: Problem, words: Words): string =>
  words.problems[problem.code]?.(problem.slots) ?? problem.code;
