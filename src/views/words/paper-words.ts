/** The sentences of papers beside the common ones: fetched with what draws them. */
import { paper } from "./en/paper.ts";
import { type Language, type Words, wordsOf } from "./languages.ts";

/** The common sentences and those of papers; they fit wherever the common ones do. */
export type PaperWords = Words & { readonly paper: typeof paper };

const all: Readonly<Record<Language, typeof paper>> = { en: paper };

/** What papers say in a language. */
export const paperWordsOf = (language: Language): PaperWords => ({ ...wordsOf(language), paper: all[language] });
