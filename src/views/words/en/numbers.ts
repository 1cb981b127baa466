/** How English writes days, times, amounts and shares. */
import type { Day } from "../../../units/index.ts";

const months = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

/** Names of the months, January first. */
export const monthNames: readonly string[] = months;

/**
 * A day in words.
 * @example
 * day("2026-03-09")  // → "9 March 2026"
 */
export const day = (iso: Day): string => `${dayAndMonth(iso)} ${iso.slice(0, 4)}`;

/**
 * A day of this year in words.
 * @example
 * dayAndMonth("2026-03-09")  // → "9 March"
 */
export const dayAndMonth = (iso: Day): string => `${Number(iso.slice(8, 10))} ${months[Number(iso.slice(5, 7)) - 1]}`;

/**
 * A number with its noun.
 * @example
 * some(1, "entry", "entries")  // → "1 entry"
 */
export const some = (count: number, one: string, many: string): string => `${whole(count)} ${count === 1 ? one : many}`;

/**
 * A whole number with thin groups from 10 000 on.
 * @example
 * whole(1500)  // → "1,500"
 */
export const whole = (count: number): string => String(Math.round(count)).replace(/\B(?=(\d{3})+(?!\d))/g, ",");

/**
 * Names in a row.
 * @example
 * list(["a", "b", "c"])  // → "a, b and c"
 */
export function list(names: readonly string[]): string {
  const last = names.at(-1) ?? "";
  return names.length < 2 ? last : `${names.slice(0, -1).join(", ")} and ${last}`;
}

/**
 * A share as so many in 10. What is below 1 in 10 is "under 1", so that 1 never stands for both sides of a word's bound.
 * @example
 * inTen(0.47)  // → "5"
 * inTen(0.08)  // → "under 1"
 */
export const inTen = (share: number): string =>
  share < 0.1 ? "under 1" : share >= 0.95 ? "over 9" : String(Math.round(share * 10));

/**
 * A share as so many in 100.
 * @example
 * inHundred(0.214)  // → "21"
 */
export const inHundred = (share: number): string =>
  share > 0 && share < 0.005 ? "under 1" : share < 1 && share > 0.995 ? "over 99" : String(Math.round(share * 100));

/**
 * The fixed scale of words for a probability (EFSA 2018 guidance on uncertainty, the bounds in per cent).
 * @example
 * likelihood(0.2)  // → "unlikely"
 */
export function likelihood(probability: number): string {
  const row = scale.find((each) => probability <= each.to) ?? scale[scale.length - 1];
  return row?.word ?? "";
}

/**
 * The word for a share as `inTen` shows it: one figure, one word. From 1 to 9 in 10 the word is that of the middle of
 * the shares that show the same figure; below 1 and over 9 it is that of the share itself.
 * @example
 * wordInTen(0.11)  // → "unlikely"
 * wordInTen(0.34)  // → "unlikely"
 * wordInTen(0.08)  // → "very unlikely"
 */
export function wordInTen(share: number): string {
  if (share < 0.1 || share >= 0.95) return likelihood(share);
  const tenths = Math.round(share * 10);
  return likelihood(tenths === 1 ? 0.125 : tenths / 10);
}

/** The fixed scale, least likely first: word and upper bound. */
export const scale: readonly { readonly word: string; readonly from: number; readonly to: number }[] = [
  { word: "almost impossible", from: 0, to: 0.01 },
  { word: "extremely unlikely", from: 0.01, to: 0.05 },
  { word: "very unlikely", from: 0.05, to: 0.1 },
  { word: "unlikely", from: 0.1, to: 0.33 },
  { word: "as likely as not", from: 0.33, to: 0.66 },
  { word: "likely", from: 0.66, to: 0.9 },
  { word: "very likely", from: 0.9, to: 0.95 },
  { word: "extremely likely", from: 0.95, to: 0.99 },
  { word: "almost certain", from: 0.99, to: 1 },
];

/** The text with its first letter large. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const names: readonly string[] = ["American", "European", "Varroa", "Tropilaelaps"];

/** A term within a sentence: its first letter small, unless it is a name or letters that stand for words. */
export function lower(term: string): string {
  const first = term.split(" ")[0] ?? "";
  const isName = names.includes(first) || /^K-|[A-Z].*[A-Z]/.test(first);
  return isName ? term : term.charAt(0).toLowerCase() + term.slice(1);
}

/** The text as a sentence: a question keeps its mark. */
export const ended = (text: string): string => (/[.!?]$/.test(text) ? text : `${text}.`);

/**
 * A temperature both ways, as thermometers differ.
 * @example
 * degrees(-1.5)  // → "−1.5 °C (29.3 °F)"
 */
export const degrees = (celsius: number): string =>
  `${Number(celsius.toFixed(1))} °C (${Number((celsius * 1.8 + 32).toFixed(1))} °F)`.replaceAll("-", "−");
