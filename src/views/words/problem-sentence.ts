/** The sentence of a problem, for views that print one and nothing beside it. */
import type { Problem } from "../../units/index.ts";
import { type Language, wordsOf } from "./languages.ts";

/** What the problem says to a person; null where there is no sentence for its code. */
export const problemSentence = (problem: Problem, language: Language = "en"): string | null => {
  const { problems } = wordsOf(language);
  return Object.hasOwn(problems, problem.code) ? (problems[problem.code]?.(problem.slots) ?? null) : null;
};
