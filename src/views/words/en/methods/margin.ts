/** Sentences of `margin`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const margin = {
  asks: "How many bees, to know the share within a margin?",
  under: "Tells how many in 100. To find whether there is any at all, fewer bees do.",
  fields: {
    expectedPrevalence: {
      label: "Bees infested, of 100, as expected",
      hint: "When nothing is known: 50 asks for the most bees.",
      per: 100,
    },
    margin: { label: "Known within, of 100", hint: "10: from 10 less to 10 more.", per: 100 },
    level: { label: "Certainty of the range, of 100", per: 100 },
  },
  says: ({ bees, halfWidth, design }) =>
    `**${some(bees, "bee", "bees")}** tell a share of ${hundred(design.expectedPrevalence)} in 100 to within ${hundred(halfWidth)}.`,
  needed: "How many bees the margin takes",
  neededUnder: "By the share that is found in the end.",
  found: "Bees infested, of 100",
  bees: "Bees",
  beesLabel: (points: readonly { readonly prevalence: number; readonly bees: number }[]) =>
    points.map(({ prevalence, bees }) => `at ${hundred(prevalence)} in 100, ${some(bees, "bee", "bees")}`).join("; "),
  planned: (bees: number) => some(bees, "bee", "bees"),
  known: (bees: number) => `What ${some(bees, "bee", "bees")} would tell, should another share be found`,
  halfWidth: "Known within, of 100",
  halfLabel: (points: readonly { readonly prevalence: number; readonly halfWidth: number }[]) =>
    points
      .map(({ prevalence, halfWidth }) => `at ${hundred(prevalence)} in 100, within ${hundred(halfWidth)}`)
      .join("; "),
  wanted: (share: number) => `wanted: ${hundred(share)}`,
} satisfies MethodWords<Answers["margin"]> & Record<string, unknown>;
