/** Sentences of `trend-in-groups`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { chanceTimes, hundred, mayBeChance } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["trend-in-groups"];

export const trendInGroups = {
  asks: "The same colonies again and again: does the share change?",
  under: "Counts of one colony are alike; this keeps that apart from the change over time.",
  fields: {
    counts: {
      label: "Counts",
      hint: "One line a colony and period: colony (1, 2, …), bees with mites, bees read, period. For apiaries: apiary, colonies with mites, colonies tested, period.",
    },
    shape: {
      label: "Change",
      choices: { steps: "Each period by itself", line: "Steady, the same with every period" },
    },
    level: { label: "Certainty of the ranges, of 100", per: 100 },
  },
  says: ({ shares, change, groups, groupsDiffer }: Answer) => {
    const [first, last] = [shares[0], shares.at(-1)];
    const ends =
      first && last
        ? `**In a typical colony or apiary: from ${hundred(first.value)} to ${hundred(last.value)} in 100.** `
        : "";
    return `${ends}If nothing changed, chance would give as much ${chanceTimes(change.pValue)}. The ${some(groups, "group differs", "groups differ")}${mayBeChance(groupsDiffer.pValue) ? " no more than chance may give" : ""}: chance alone gives as much ${chanceTimes(groupsDiffer.pValue)}.`;
  },
  ranges: "A typical colony or apiary, by period",
  rangesUnder: "Not the share over all: it lies nearer to one half where groups differ.",
  period: (period: number) => `Period ${period}`,
  periods: "Period",
  share: "Bees with mites, of 100",
  label: (rows: readonly { readonly name: string; readonly low: number; readonly high: number }[]) =>
    `Ranges in 100: ${rows.map(({ name, low, high }) => `${name}, ${hundred(low)} to ${hundred(high)}`).join("; ")}`,
} satisfies MethodWords<Answer> & Record<string, unknown>;
