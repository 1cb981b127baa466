/** Sentences of `paired-readings`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const pairedReadings = {
  asks: "Does one reading of the same bees find more?",
  under: "Only the bees that the two readings call differently tell it. How far they agree is asked under agreement.",
  fields: {
    onlyFirst: { label: "Bees with mites by the first reading only" },
    onlySecond: { label: "Bees with mites by the second reading only" },
    level: { label: "Certainty of the range, of 100", per: 100 },
  },
  says: ({ differing, firstOfDiffering: { value, low, high }, exact }) => {
    const more = value === 0.5 ? "Neither finds more" : value > 0.5 ? "The first finds more" : "The second finds more";
    const beyond = low > 0.5 || high < 0.5 ? more : value === 0.5 ? more : `${more} here, and it may be chance`;
    return `**${beyond}.** Readings that find alike would split ${some(differing, "bee", "bees")} as far apart ${hundred(exact)} times in 100.`;
  },
  split: "Of the bees read differently, with mites by the first reading",
  row: "First reading",
  rows: "Reading",
  axis: "Of 100 bees read differently",
  half: "alike: 50",
  label: ({ value, low, high }: { readonly value: number; readonly low: number; readonly high: number }) =>
    `${hundred(value)} in 100, and it could be ${hundred(low)} to ${hundred(high)}; readings that find alike: 50`,
} satisfies MethodWords<Answers["paired-readings"]> & Record<string, unknown>;
