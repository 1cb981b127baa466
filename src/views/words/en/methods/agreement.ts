/** Sentences of `agreement`, and the names of its measures. */
import type { Answers } from "../../../../reasoning/index.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

const names: Readonly<Record<string, string>> = {
  "cohen-kappa": "Kappa",
  "cohen-kappa-linear": "Kappa, by distance",
  "cohen-kappa-quadratic": "Kappa, distance squared",
  "pabak-wilson": "Kappa if classes were even",
  "gwet-ac1-t-n-minus-1": "AC1",
};

export const agreement = {
  asks: "How far do two readers agree?",
  under: "A table of bees read by both: a row for each class of the first reader, a column for each of the second.",
  fields: {
    table: {
      label: "Bees by class",
      hint: "One row a line, such as 19 10. Both readers use the same classes in the same order.",
    },
    ordered: { label: "The classes have an order, so a near miss counts for something" },
    level: { label: "Certainty of the range, of 100", per: 100 },
  },
  says: ({ bees, observed, kappa, ac1, pabak }) => {
    const agreed = `They agree on ${hundred(observed)} in 100 of ${bees}.`;
    if (kappa === null) return `**${agreed}** Both used one class only, so agreement beyond chance cannot be told.`;
    if (kappa.low === kappa.high && pabak !== null)
      return `**${agreed}** Readers who differ on none, or on all, give kappa ${figure(kappa.value)} no range; were the classes even, it could be ${figure(pabak.low)} to ${figure(pabak.high)}.`;
    return `${agreed} **Beyond chance: kappa ${figure(kappa.value)}, and it could be ${figure(kappa.low)} to ${figure(kappa.high)}.** AC1, which does not fall when nearly all bees are of one class, is ${figure(ac1.value)}.`;
  },
  nameOf: (method: string) => names[method] ?? method,
  picture: "Agreement beyond chance, by each measure",
  pictureUnder: "0: no more than chance. 1: they agree on every bee.",
  measure: "Measure",
  axis: "Agreement beyond chance",
  chance: "chance",
  label: (
    rows: readonly { readonly name: string; readonly value: number; readonly low: number; readonly high: number }[],
  ) =>
    rows.map(({ name, value, low, high }) => `${name} ${figure(value)}, ${figure(low)} to ${figure(high)}`).join("; "),
} satisfies MethodWords<Answers["agreement"]> & Record<string, unknown>;
