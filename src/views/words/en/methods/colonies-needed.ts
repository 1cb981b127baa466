/** Sentences of `colonies-needed`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some, whole } from "../numbers.ts";
import { figure } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["colonies-needed"];

export const coloniesNeeded = {
  asks: "How many colonies, for a share over all within a margin?",
  under: "More bees of the same colonies help little where bees of one colony are alike.",
  fields: {
    expectedPrevalence: { label: "Bees with mites expected, of 100", per: 100 },
    margin: { label: "Right to within, of 100", hint: "5: from 5 below to 5 above.", per: 100 },
    intraclass: {
      label: "Likeness within a colony",
      hint: "Intraclass correlation, 0 to 1; the method for several colonies tells it from an earlier round.",
    },
    beesPerColony: { label: "Bees from each colony" },
    level: { label: "Certainty of the range, of 100", per: 100 },
  },
  says: ({ colonies, bees, designEffect, simpleBees }: Answer) =>
    `**${some(colonies, "colony", "colonies")}, ${some(bees, "bee", "bees")} in all.** Drawn singly, ${whole(Math.ceil(simpleBees - 1e-12))} bees would do: likeness within colonies makes it ${figure(designEffect)} times as many.`,
  curve: "Colonies by the bees taken from each",
  curveUnder: "Where the line turns flat, more bees from a colony save no colony.",
  beesFromEach: "Bees from each colony",
  colonies: "Colonies",
  here: (colonies: number) => some(colonies, "colony", "colonies"),
  label: (points: readonly { readonly beesPerColony: number; readonly colonies: number }[]) =>
    points
      .map(
        ({ beesPerColony, colonies }) =>
          `${whole(beesPerColony)} bees from each: ${some(colonies, "colony", "colonies")}`,
      )
      .join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
