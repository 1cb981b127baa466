/** The sentences of the page, in the language of the reader. */
import { type Words, wordsOf } from "../words/index.ts";

/** English is the only language there is; a second one is chosen here. */
export const words: Words = wordsOf("en");
