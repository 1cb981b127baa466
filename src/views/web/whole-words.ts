/** All sentences of the page, for those that need more than the common ones. */
import type { Problem } from "../../units/index.ts";
import { sentenceOf, type WholeWords, wholeWordsOf } from "../words/index.ts";

/** English is the only language there is; a second one is chosen here and in `words.ts`. */
export const words: WholeWords = wholeWordsOf("en");

/** The sentence of any problem. */
export const sentence = (problem: Problem): string => sentenceOf(problem, words);
