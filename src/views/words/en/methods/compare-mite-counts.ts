/** Sentences of `compare-mite-counts`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { chanceTimes, figure } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["compare-mite-counts"];

export const compareMiteCounts = {
  asks: "Do some stocks carry more mites per bee than others?",
  under: "Groups can be stocks, apiaries or treatments. Of one colony a group, only colonies are compared.",
  fields: {
    counts: {
      label: "Bees by group and mites",
      hint: "One line: group (1, 2, …), mites in a bee, bees with so many. A line with two numbers is one bee.",
    },
    against: { label: "Held against group", hint: "Leave empty for the lowest number." },
    level: { label: "Certainty of the ranges, of 100", per: 100 },
  },
  says: ({ ratios, test, against }: Answer) =>
    ratios.length === 0 || test === null
      ? "**These groups cannot be compared by a fit.** Their means stand below."
      : `${ratios
          .map(
            ({ group, value, low, high }) =>
              `**Group ${group} has ${figure(value)} times** the mites per bee of group ${against}, and it could be ${figure(low)} to ${figure(high)} times.`,
          )
          .join(" ")} If none differed, chance would give such differences ${chanceTimes(test.pValue)}.`,
  means: "Mites per bee by group",
  ratios: (against: number) => `Times the mites per bee of group ${against}`,
  group: (group: number) => `Group ${group}`,
  theGroup: "Group",
  perBee: "Mites per bee",
  times: "Times as many",
  asMany: "as many",
  label: (rows: readonly { readonly name: string; readonly value: number }[]) =>
    rows.map(({ name, value }) => `${name}: ${figure(value)}`).join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
