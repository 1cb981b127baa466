/** Sentences of `estimate`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { figure, hundred } from "./amounts.ts";
import { intervalNames } from "./intervals.ts";
import type { MethodWords } from "./method-words.ts";

export const estimate = {
  asks: "What does a count, or a wash, amount to?",
  under: "Either bees with mites of bees read, or mites of bees washed.",
  fields: {
    positive: { label: "Bees with mites" },
    examined: { label: "Bees read" },
    mites: { label: "Mites in the wash", hint: "In place of the two above." },
    bees: { label: "Bees in the wash" },
    recovery: { label: "Of 100 mites, washed off", hint: "Leave empty when it is not known.", per: 100 },
    sensitivity: { label: "Of 100 infested bees, found", hint: "Tells what the count could have missed.", per: 100 },
    stoppedEarly: { label: "Reading stopped because of what was found" },
    level: { label: "Certainty of the range, of 100", per: 100 },
    method: { label: "Range by", choices: intervalNames },
  },
  says: ({ quantity, estimate: { value, low, high, n } }) =>
    quantity === "mites-per-bee"
      ? `**${figure(100 * value)} mites per 100 bees,** and it could be ${figure(100 * low)} to ${figure(100 * high)}.`
      : value === 0
        ? `**None found in ${n}.** It could still be up to ${hundred(high)} in 100.`
        : `**${hundred(value)} in 100,** and it could be ${hundred(low)} to ${hundred(high)}.`,
  range: "What was found, and how sure that is",
  count: "Count",
  share: "Bees infested, of 100",
  mites: "Mites per 100 bees",
  rangeLabel: (found: string) => found.replaceAll("**", ""),
} satisfies MethodWords<Answers["estimate"]> & Record<string, unknown>;
