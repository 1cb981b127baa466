/** The sentence of a problem for a program that answers in a language. */
import type { Problem } from "../../units/index.ts";
import type { Language } from "./languages.ts";
import { wholeWordsOf } from "./whole-words.ts";

/** What the problem says to a person; null where there is no sentence for its code. */
export const problemSentence = (problem: Problem, language: Language = "en"): string | null => {
  const { problems } = wholeWordsOf(language);
  return Object.hasOwn(problems, problem.code) ? (problems[problem.code]?.(problem.slots) ?? null) : null;
};
