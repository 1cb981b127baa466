/** The languages there are. A further one is a folder that fits `Words`; the compiler then names every sentence it lacks. */
import { en } from "./en/index.ts";

/** The shape of a language: the same keys, the same slots. */
export type Words = typeof en;

/** Language tags (BCP 47) there are sentences for. */
export const languages = ["en"] as const;
export type Language = (typeof languages)[number];

const all: Readonly<Record<Language, Words>> = { en };

/** The sentences of a language. */
export const wordsOf = (language: Language): Words => all[language];
