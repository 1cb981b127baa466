/** Sentences of `intervals`, and the names of the methods. */
import type { Answers } from "../../../../reasoning/index.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

/** What the methods of an interval are called. */
export const intervalNames: Readonly<Record<string, string>> = {
  "clopper-pearson": "Exact (Clopper and Pearson)",
  blaker: "Exact (Blaker)",
  "mid-p": "Mid-P",
  wilson: "Score (Wilson)",
  "wilson-corrected": "Score with continuity (Wilson)",
  "agresti-coull": "Agresti and Coull",
  "likelihood-ratio": "Likelihood ratio",
  jeffreys: "Jeffreys, credible",
  "lang-reiczigel": "Lang and Reiczigel",
  delta: "Delta method",
};

const side = {
  above: (line: string) => `All of the range lies above ${line}.`,
  below: (line: string) => `All of the range lies below ${line}.`,
  across: (line: string) => `The range crosses ${line}: this count cannot say on which side it is.`,
};

export const intervals = {
  asks: "From a count to a range, by every method",
  under: "So many with mites, of so many read. The exact ranges keep their level whatever the truth.",
  fields: {
    positive: { label: "Bees with mites" },
    examined: { label: "Bees read" },
    level: { label: "Certainty of the range, of 100", per: 100 },
    line: { label: "A line to read it against, of 100", hint: "Leave empty for none.", per: 100 },
  },
  says: ({ share, intervals: all, against }) => {
    const exact = all[0];
    if (exact === undefined) return "";
    const found =
      share === 0
        ? `**None found in ${exact.n}.** It could still be up to ${hundred(exact.high)} in 100, by the exact two-sided method; a one-sided limit is lower (“None found”).`
        : `**${hundred(share)} in 100,** and it could be ${hundred(exact.low)} to ${hundred(exact.high)}, by the exact method.`;
    return against === null ? found : `${found} ${side[against.side](hundred(against.line))}`;
  },
  names: intervalNames,
  ranges: "The range by each method",
  method: "Method",
  share: "Bees infested, of 100",
  coverage: "How often each range would hold the truth",
  coverageUnder:
    "Exact sums over every count that so many bees can give. A method that dips below the line promises more than it keeps there.",
  truth: "True share, of 100",
  holds: "Holds it, times in 100",
  wanted: (level: number) => `wanted: ${hundred(level)}`,
  line: (line: number) => `the line, ${hundred(line)}`,
  rangesLabel: (rows: readonly { readonly name: string; readonly low: number; readonly high: number }[]) =>
    `Ranges in 100: ${rows.map(({ name, low, high }) => `${name} ${hundred(low)} to ${hundred(high)}`).join("; ")}`,
  coverageLabel: (lowest: readonly { readonly name: string; readonly holds: number }[]) =>
    `Least often over the shares shown: ${lowest.map(({ name, holds }) => `${name} ${hundred(holds)} times in 100`).join("; ")}`,
} satisfies MethodWords<Answers["intervals"]> & Record<string, unknown>;
