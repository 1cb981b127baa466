/** Every sentence a person reads, by language and key. Values come in as slots; nothing is glued outside this folder. */
export { type Language, languages, type Words, wordsOf } from "./languages.ts";
export * from "./paper.ts";
