/** `true-prevalence-trials`: the share truly infested when sensitivity and specificity come from trials of the test. */
import * as z from "zod";
import { answered, type Estimate } from "../../units/index.ts";
import { deltaPrevalence, type EstimatedPrevalence, langReiczigelPrevalence, shareOf } from "../bench/index.ts";
import { count, estimate, level } from "./fields.ts";
import { verb } from "./verb.ts";

const tried = count.min(1);

const input = z
  .strictObject({
    positive: count.describe("Positive by the test."),
    examined: tried.describe("All that were tested and could be read."),
    infestedFound: count.describe("Trial of the test: known to be infested, and positive."),
    infestedTried: tried.describe("Trial of the test: known to be infested."),
    cleanCleared: count.describe("Trial of the test: known to be clean, and negative."),
    cleanTried: tried.describe("Trial of the test: known to be clean."),
    level: level.default(0.95).describe("Probability content of the limits."),
  })
  .refine(({ positive, examined }) => positive <= examined, {
    message: "no more than were examined",
    path: ["positive"],
  })
  .refine(({ infestedFound, infestedTried }) => infestedFound <= infestedTried, {
    message: "no more than infested ones were tried",
    path: ["infestedFound"],
  })
  .refine(({ cleanCleared, cleanTried }) => cleanCleared <= cleanTried, {
    message: "no more than clean ones were tried",
    path: ["cleanCleared"],
  });

const output = z.strictObject({
  apparent: z.number().describe("share found positive"),
  sensitivity: z.number().describe("share found in the trial"),
  specificity: z.number().describe("share cleared in the trial"),
  raw: z.number().describe("the corrected share as the formula gives it; can lie below 0 or above 1"),
  value: z.number().describe("the same cut to 0–1"),
  estimates: z.array(estimate).describe("by Lang and Reiczigel, and by the delta method, cut to 0–1"),
  uncut: z
    .array(
      z.strictObject({
        method: z.string(),
        low: z.number(),
        high: z.number(),
        centre: z.number(),
        standardError: z.number(),
        level: z.number(),
      }),
    )
    .describe("the same limits as the formulas give them"),
  method: z.string(),
  rule: z.string(),
});

export const truePrevalenceTrials = verb({
  name: "true-prevalence-trials",
  family: "shares",
  summary: "The share truly infested, from a test known by its trials.",
  assumptions: [
    "The sample and both trials were drawn at random, each on its own; the test errs alike in all three.",
    "Lang and Reiczigel's limits were made for a test right at least half of the time on either side, and for levels of 0.9 to 0.99.",
    "The delta method is for large samples away from 0 and 1.",
  ],
  source:
    "Lang & Reiczigel 2014, with (1 − P)² where equation 4 is printed with (1 + P)²; Rogan & Gladen 1978 and Greiner & Gardner 2000 (delta method).",
  example: {
    positive: 51,
    examined: 509,
    infestedFound: 23,
    infestedTried: 41,
    cleanCleared: 187,
    cleanTried: 195,
  },
  input,
  output,
  run: ({ level, ...given }) => {
    const apparent = shareOf(given.positive, given.examined);
    const sensitivity = shareOf(given.infestedFound, given.infestedTried);
    const specificity = shareOf(given.cleanCleared, given.cleanTried);
    const request = { apparent, sensitivity, specificity, level };
    const moved = langReiczigelPrevalence(request);
    const plain = deltaPrevalence(request);
    if (!moved.ok) return moved;
    if (!plain.ok) return plain;
    const all = [
      { method: "lang-reiczigel", rule: "BE105", found: moved.value },
      { method: "delta", rule: "BE104", found: plain.value },
    ] as const;
    const { raw, value } = plain.value;
    const problems = [...plain.problems, ...moved.problems];
    const answer = {
      apparent: apparent.share,
      sensitivity: sensitivity.share,
      specificity: specificity.share,
      raw,
      value,
      estimates: all.map(({ method, rule, found }) => withName(found, { method, rule, n: given.examined })),
      uncut: all.map(({ method, found: { rawLimits, centre, standardError } }) => ({
        method,
        ...rawLimits,
        centre,
        standardError,
        level,
      })),
      method: "lang-reiczigel",
      rule: "BE105",
    };
    return answered(
      answer,
      problems.filter(({ code }, index) => problems.findIndex((each) => each.code === code) === index),
    );
  },
});

const withName = (
  { value, limits, level }: EstimatedPrevalence,
  name: Pick<Estimate, "method" | "rule" | "n">,
): Estimate => ({ value, ...limits, level, interval: "confidence", ...name });
