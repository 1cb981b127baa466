/** The sentence of a problem. */
import type { Problem } from "../../units/index.ts";
import { type Language, type Words, wordsOf } from "./languages.ts";

/** What the problem says to a person; null where there is no sentence for its code. */
export const problemSentence = (problem: Problem, language: Language = "en"): string | null => {
  const { problems } = wordsOf(language);
  return Object.hasOwn(problems, problem.code) ? (problems[problem.code]?.(problem.slots) ?? null) : null;
};

/** What the problem says to a person; its bare code where there is no sentence for it. */
export const sentenceOf = (problem: Problem, words: Words): string =>
  words.problems[problem.code]?.(problem.slots) ?? problem.code;
