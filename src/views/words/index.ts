/** Every sentence a person reads, by language and key. Values come in as slots; nothing is glued outside this folder. */

export { accountWords } from "./en/account.ts";
export { apartWords } from "./en/apart.ts";
export { differences as differenceWords } from "./en/differences.ts";
export { drawings as drawingWords } from "./en/drawings.ts";
export { evidence as evidenceWords } from "./en/evidence.ts";
export { fileWords } from "./en/files.ts";
export {
  type FieldWords,
  familyNames,
  type MethodWords,
  methodPage,
  methodWords,
  stopsLabel,
  stopWords,
} from "./en/methods/index.ts";
export { paper as paperWords } from "./en/paper.ts";
export { refusalReasons, refusalShort } from "./en/problems/control.ts";
export { season as seasonWords } from "./en/season.ts";
export { seasonTrust as seasonTrustWords } from "./en/season-trust.ts";
export { table as tableWords } from "./en/table.ts";
export { type Language, languages, type Words, wordsOf } from "./languages.ts";
export { type PaperWords, paperWordsOf } from "./paper-words.ts";
export { sentenceOf } from "./problem-sentence.ts";
export { problemSentence } from "./told-problem.ts";
export { type WholeWords, wholeWordsOf } from "./whole-words.ts";
