/** `true-prevalence`: the share truly infested behind a count, when the test's sensitivity and specificity are known. */
import * as z from "zod";
import { answered, type Estimate } from "../../units/index.ts";
import { truePrevalence as corrected } from "../bench/index.ts";
import { count, estimate, level, positiveShare } from "./fields.ts";
import { verb } from "./verb.ts";

const input = z.strictObject({
  positive: count.describe("Positive by the test."),
  examined: count.min(1).max(100_000).describe("All that were tested and could be read."),
  sensitivity: positiveShare.describe("Share of infested ones that test positive. It has no default."),
  specificity: positiveShare.describe("Share of clean ones that test negative. It has no default."),
  level: level.default(0.95).describe("Probability content of the limits."),
});

const output = z.strictObject({
  apparent: z.number().describe("share found positive"),
  raw: z.number().describe("the corrected share as the formula gives it; can lie below 0 or above 1"),
  value: z.number().describe("the same cut to 0–1"),
  estimates: z
    .array(estimate)
    .describe(
      "by the limits of the apparent share: exact (Clopper and Pearson, Blaker) and by score (Wilson), cut to 0–1",
    ),
  wald: z
    .strictObject({ low: z.number(), high: z.number(), standardError: z.number(), level: z.number() })
    .describe("raw ± z standard errors, not cut: of use only far from 0 and 1"),
  method: z.string(),
  rule: z.string(),
});

const methods = [
  ["clopper-pearson", "clopperPearson"],
  ["blaker", "blaker"],
  ["wilson", "wilson"],
] as const;

export const truePrevalence = verb({
  name: "true-prevalence",
  family: "shares",
  summary: "The share truly infested, from a test that errs in a known way.",
  assumptions: [
    "Those tested were drawn at random from a large group.",
    "Sensitivity and specificity are known exactly and hold for these: where they come from small trials the range is too narrow.",
    "The exact limits hold at least their level whatever the truth.",
  ],
  source: "Rogan & Gladen 1978; Reiczigel, Földi & Ózsvári 2010 (limits).",
  example: { positive: 45, examined: 150, sensitivity: 0.96, specificity: 0.89 },
  input,
  output,
  run: (given) => {
    const found = corrected(given);
    if (!found.ok) return found;
    const { apparent, raw, value, wald, standardError, level } = found.value;
    const estimates = methods.map(
      ([method, name]): Estimate => ({
        value,
        ...found.value[name],
        level,
        interval: "confidence",
        method,
        rule: "BE100",
        n: given.examined,
      }),
    );
    return answered(
      {
        apparent,
        raw,
        value,
        estimates,
        wald: { ...wald, standardError, level },
        method: "rogan-gladen",
        rule: "BE100",
      },
      found.problems,
    );
  },
});
