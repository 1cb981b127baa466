/** Sentences of what a season's forecast rests on: published figures beside the model's, and how often ranges hold. */
import { whole } from "./numbers.ts";

const one = (value: number | undefined): string => (value === undefined ? "" : value.toFixed(value < 1 ? 2 : 1));
const thousands = (value: number | undefined): string => whole(100 * Math.round((value ?? 0) / 100));

export const seasonTrust = {
  head: "How far to trust it",
  sentence:
    "**Most figures the model meets are figures it was tuned to.** One was not, and is met: formic acid two months later. One is met in part.",
  columns: {
    what: "What was measured",
    published: "Published",
    model: "The model",
    status: "How it was met",
    source: "Source",
  },
  status: {
    tuned: "tuned to it",
    "by-construction": "put in",
    prediction: "predicted",
    partial: "not used, met in part",
    "not-comparable": "cannot be compared",
  },
  noSource: "common practice, no source",
  direction: "direction only",
  what: {
    "summer-peak": "Bees at the summer peak",
    "late-winter": "Bees in late winter",
    "winter-rise": "Infested in 100, November and February",
    "summer-fall": "Infested in 100, early spring and late summer",
    "untreated-august": "Infested in 100 at the end of August, untreated",
    "menthol-may": "The same, with menthol from 17 May",
    "menthol-may-susceptible": "The same in a more susceptible stock, starts of 5, 10 and 20",
    "formic-kill": "Fewer infested of 100, three weeks after formic acid began",
    "formic-two-months": "Fewer infested of 100, about two months after",
    "menthol-late": "Infested in 100 on 1 December by the start of menthol: 15 August to 15 October, and without",
    "patty-all-year": "Highest infested in 100 with a patty all year, and without",
    "patty-twice": "Infested in 100 after two summer patties: 1 November and 1 April, each beside none",
    "patty-deaths": "Winter deaths in 100 with and without patties",
    "clean-loss": "Lost in 100 of clean colonies in winter",
  },
  published: (slots: { readonly low: number | null; readonly high: number | null; readonly unit: string }) => {
    const text = (value: number) => (slots.unit === "bees" ? whole(value) : String(value));
    if (slots.low === null) return `under ${text(slots.high ?? 0)}`;
    if (slots.high === null) return `above ${text(slots.low)}`;
    return slots.low === slots.high ? `about ${text(slots.low)}` : `${text(slots.low)} to ${text(slots.high)}`;
  },
  model: (slots: { readonly values: readonly number[]; readonly unit: string }) =>
    slots.values.length === 0
      ? "none: its own loss is 11"
      : slots.values.map(slots.unit === "bees" ? thousands : one).join(", "),
  rangesHead: "Do the ranges hold?",
  rangesUnder: (slots: { readonly colonies: number }) =>
    `${whole(slots.colonies)} colonies drawn from the model itself, counted on 1 September and 15 October, the share on 1 March against what became of them. It tells how nearly the program keeps the model's promises, and nothing of the field. Measured by the project's own bench.`,
  rangeColumns: {
    bees: "Bees in each count",
    within90: "90 % range holds, of 100",
    within50: "50 % range holds, of 100",
    ranks: "Ranks even: χ² on 19, p",
    width: "Width of the 90 % range, of 100",
    crps: "CRPS",
    middleOff: "Middle off by, of 100",
    lastCountOff: "Last count itself off by, of 100",
  },
  none: (slots: { readonly guess: number }) =>
    `none; in the last column the start’s guess, ${whole(100 * slots.guess)} of 100`,
  rangesNote:
    "Chance alone makes 0.95 and 1.6 of 100 in the two shares. Ranks are even within chance. Over 3,000 colonies with 200 bees, these among them, the ranges hold 89.7 and 49.5: within chance of what they say.",
  learnt: (slots: { readonly contactBefore: number; readonly contactAfter: number }) =>
    `What the counts here taught of the contact rate: its spread in logarithms was ${slots.contactBefore.toFixed(2)} before them and is ${slots.contactAfter.toFixed(2)} after.`,
  apart:
    "Contact, its decline with age and its loss by flow and flight cannot be told apart by counts alone: only their joint effect is learnt.",
} as const;
