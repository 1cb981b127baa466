/** All sentences of a language: for programs, and for the pages that need more than the common ones. */
import { whole } from "./en/whole.ts";
import type { Language } from "./languages.ts";

/** The shape of a whole language; it fits wherever the common words do. */
export type WholeWords = typeof whole;

const all: Readonly<Record<Language, WholeWords>> = { en: whole };

/** All sentences of a language. */
export const wholeWordsOf = (language: Language): WholeWords => all[language];
