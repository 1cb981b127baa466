/** The sentences of the page with those of papers. */
import { type PaperWords, paperWordsOf } from "../../words/index.ts";

/** English is the only language there is; a second one is chosen here and in `words.ts`. */
export const words: PaperWords = paperWordsOf("en");
