/** Sentences of `group-size`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some, whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const groupSize = {
  asks: "How many in each group to show a difference?",
  under: "For a trial of two groups. The smaller the difference that counts, the more it takes.",
  fields: {
    firstShare: { label: "Expected in the first group, of 100", per: 100 },
    secondShare: { label: "Expected in the second group, of 100", per: 100 },
    power: { label: "Difference shown, times of 100", per: 100 },
    alpha: { label: "False alarm allowed, times of 100", per: 100 },
    perColony: {
      label: "Bees looked at in each colony",
      hint: "Only where whole colonies are treated; empty when each bee, or each colony, counts by itself.",
    },
    intraclassCorrelation: { label: "Likeness of bees of one colony", hint: "Intraclass correlation, 0 to 1." },
    sizes: { label: "Group sizes to try", hint: "Tells their power; several with blanks between." },
  },
  says: ({ perGroup, perGroupCorrected, coloniesPerGroup, coloniesPerGroupPlusOne, designEffect, power, wanted }) => {
    const times = `${hundred(wanted.power)} times in 100`;
    if (coloniesPerGroup !== null && coloniesPerGroupPlusOne !== null && designEffect !== null)
      return `**${some(coloniesPerGroupPlusOne, "colony", "colonies")} in each group** show the difference ${times}: ${whole(coloniesPerGroup)} by the design effect of ${figure(designEffect)}, and one more for so few.`;
    const exact = power.find((each) => each.perGroup === perGroupCorrected);
    const shown = exact === undefined ? `about ${times}` : `${hundred(exact.fisher)} times in 100`;
    return `**${whole(perGroupCorrected)} in each group** show the difference ${shown} by Fisher’s exact test. The plain formula says ${whole(perGroup)}, which is short for it.`;
  },
  power: "What a group of this size shows",
  powerUnder: "Exact sums over every pair of counts.",
  size: "In each group",
  shown: "Difference shown, times in 100",
  fisher: "Fisher’s test",
  wanted: (power: number) => `wanted: ${hundred(power)}`,
  needed: (size: number) => `${whole(size)} in each`,
  label: (rows: readonly { readonly perGroup: number; readonly fisher: number }[]) =>
    `Shown by Fisher’s test: ${rows.map(({ perGroup, fisher }) => `${perGroup} in each group ${hundred(fisher)} times in 100`).join("; ")}`,
} satisfies MethodWords<Answers["group-size"]> & Record<string, unknown>;
