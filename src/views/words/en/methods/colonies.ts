/** Sentences of `colonies`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some, whole } from "../numbers.ts";
import { chanceTimes, hundred, mayBeChance } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["colonies"];

/** What the ranges over colonies are called. */
const rangeNames: Readonly<Record<string, string>> = {
  "ratio-logit-t": "Ratio, logit scale (t)",
  "korn-graubard": "Effective bees, exact",
  "wilson-effective": "Effective bees, score",
  "ratio-t": "Ratio (t)",
  "beta-binomial-profile": "Beta-binomial, profile",
  "beta-binomial-logit": "Beta-binomial, logit scale",
  "mean-colony-t": "The mean colony (t)",
};

export const colonies = {
  asks: "Several colonies: what share of all, and how far do they differ?",
  under: "Bees of one colony are alike, so a hundred bees of five colonies tell less than a hundred drawn singly.",
  fields: {
    colonies: {
      label: "Colonies",
      hint: "One line a colony: bees with mites, bees read. 3 of 24 will do. For apiaries: colonies with mites, colonies tested.",
    },
    level: { label: "Certainty of the ranges, of 100", per: 100 },
  },
  says: (answer: Answer) => [overall(answer), differ(answer)].filter((part) => part !== "").join(" "),
  names: rangeNames,
  over: "The share over all colonies",
  overUnder:
    "The ranges of the ratio and of effective bees are of the mean bee, to which a colony counts by its bees; the fit weighs colonies by its likelihood; the mean colony counts every colony the same.",
  range: "Range by",
  each: "Each colony by itself",
  eachUnder: "Exact ranges of the bees read; the line is the share of all.",
  colony: (number: number) => `Colony ${number}`,
  theColony: "Colony",
  all: (share: number) => `all: ${hundred(share)}`,
  noneOf: { colonies: "Of colonies, exact", bees: "Of bees, as if independent" },
  share: "Bees with mites, of 100",
  rangesLabel: (rows: readonly { readonly name: string; readonly low: number; readonly high: number }[]) =>
    `Ranges in 100: ${rows.map(({ name, low, high }) => `${name} ${hundred(low)} to ${hundred(high)}`).join("; ")}`,
} satisfies MethodWords<Answer> & Record<string, unknown>;

function overall({ share, examined, colonies: count, intervals, none }: Answer): string {
  const of = `${some(examined, "bee", "bees")} of ${some(count, "colony", "colonies")}`;
  const [first] = intervals;
  if (none) {
    return share === 0
      ? `**None found in ${of}.** Up to ${hundred(none.colonies.high)} in 100 such colonies could still show mites in as many bees.`
      : `**All of ${of} have mites.** At least ${hundred(none.colonies.low)} in 100 such colonies have.`;
  }
  if (first === undefined) return `**${hundred(share)} in 100 in every one of ${whole(count)} colonies.**`;
  return `**${hundred(share)} in 100 over ${some(count, "colony", "colonies")},** and it could be ${hundred(first.low)} to ${hundred(first.high)}.`;
}

function differ({ designEffect, examined, noSpread, fit }: Answer): string {
  if (designEffect === null) return "";
  const effect = designEffect.byRatio;
  const tells =
    effect === null || effect <= 1
      ? ""
      : ` The ${whole(examined)} bees tell as much as ${whole(examined / effect)} drawn singly.`;
  if (fit === null || fit.a === null || noSpread?.pValue == null)
    return `The colonies do not differ more than chance gives.${tells}`;
  const chance = noSpread.pValue;
  const differs = mayBeChance(chance) ? "The colonies differ here, and it may be chance" : "The colonies differ";
  return `${differs}: chance alone gives as much ${chanceTimes(chance)}.${tells}`;
}
