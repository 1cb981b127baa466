/** Sentences of `compare-shares`, and the names of its methods and tests. */
import type { Answers } from "../../../../reasoning/index.ts";
import { figure, hundred, signed } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

const names: Readonly<Record<string, string>> = {
  newcombe: "Newcombe",
  "miettinen-nurminen": "Miettinen and Nurminen",
  mee: "Mee",
  katz: "Ratio, Katz",
  "katz-half": "Ratio, Katz",
  koopman: "Ratio, Koopman",
  "woolf-log": "Odds ratio, Woolf",
  "woolf-log-half": "Odds ratio, Woolf",
  fisher: "Fisher",
  "fisher-mid-p": "Fisher, mid-P",
  barnard: "Barnard",
  boschloo: "Boschloo",
  pearson: "Chi-square",
  yates: "Chi-square, Yates",
};

const nameOf = (method: string): string => names[method] ?? method;

/** How far the first share lies from the second. */
const away = (share: number): string =>
  share === 0 ? "no higher" : `${hundred(Math.abs(share))} ${share < 0 ? "lower" : "higher"}`;

const beyond = {
  "two-sided": "as far apart",
  less: "with the first as far below",
  greater: "with the first as far above",
};

export const compareShares = {
  asks: "Do two groups differ?",
  under: "So many with the property, of so many, in each of two groups. Small groups take the exact tests.",
  fields: {
    "first.positive": { label: "First group: with the property" },
    "first.examined": { label: "First group: looked at" },
    "second.positive": { label: "Second group: with the property" },
    "second.examined": { label: "Second group: looked at" },
    alternative: {
      label: "Expected before looking",
      hint: "Either way, unless only one way was thought of beforehand.",
      choices: { "two-sided": "either way", less: "first share is lower", greater: "first share is higher" },
    },
    level: { label: "Certainty of the range, of 100", per: 100 },
  },
  says: ({ first, second, differences, tests, alternative }) => {
    const [apart] = differences;
    const fisher = tests.find(({ test }) => test === "fisher");
    if (apart === undefined || fisher === undefined) return "";
    const range = `${hundred(first.value)} against ${hundred(second.value)} in 100: **the first is ${away(apart.value)}, and it could be ${away(apart.low)} to ${away(apart.high)}.**`;
    const chance = `Groups that are alike would come out ${beyond[alternative]} ${hundred(fisher.pValue)} times in 100 (Fisher).`;
    return `${range} ${chance}`;
  },
  nameOf,
  differences: "First share less second share",
  method: "Method",
  difference: "Difference, in 100",
  none: "no difference",
  ratios: "First share over second share",
  ratio: "Ratio; 1 is no difference",
  tests: "Times in 100 that chance alone goes as far",
  testsUnder:
    "Every test on the same table. Barnard’s and Boschloo’s hold no margin fixed but the sizes of the groups.",
  test: "Test",
  chance: "P, in 100",
  label: (
    rows: readonly { readonly name: string; readonly value: number; readonly low: number; readonly high: number }[],
    per: 1 | 100,
  ) =>
    rows
      .map(({ name, value, low, high }) => {
        const said = per === 100 ? signed : figure;
        return `${name} ${said(value)}, ${said(low)} to ${said(high)}`;
      })
      .join("; "),
  testsLabel: (rows: readonly { readonly test: string; readonly pValue: number }[]) =>
    rows.map(({ test, pValue }) => `${nameOf(test)} ${hundred(pValue)}`).join("; "),
} satisfies MethodWords<Answers["compare-shares"]> & Record<string, unknown>;
