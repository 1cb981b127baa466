/** `true-prevalence-belief`: what to believe about the share infested, from beta priors and a test that errs. */
import * as z from "zod";
import { answered, blocked, problem } from "../../units/index.ts";
import { prevalencePosterior } from "../bench/index.ts";
import { count, estimate, level, positiveShare, share } from "./fields.ts";
import { verb } from "./verb.ts";

const shape = z.number().min(0.05).max(1_000_000);
const beta = z.strictObject({
  a: shape.describe("First shape: as if a − 1 had been positive."),
  b: shape.describe("Second shape: as if b − 1 had been negative."),
});

const input = z
  .strictObject({
    positive: count.describe("Positive by the test."),
    examined: count.min(1).max(100_000).describe("All that were tested and could be read."),
    prior: beta.default({ a: 1, b: 1 }).describe("Beta prior of the share infested. Flat when left out."),
    sensitivity: positiveShare.exactOptional().describe("Share of infested ones that test positive, when it is known."),
    sensitivityPrior: beta.exactOptional().describe("Beta prior of the sensitivity, in place of a known one."),
    specificity: positiveShare.exactOptional().describe("Share of clean ones that test negative, when it is known."),
    specificityPrior: beta.exactOptional().describe("Beta prior of the specificity, in place of a known one."),
    level: level.default(0.95).describe("Probability content of the credible interval, equal tails."),
    line: share.exactOptional().describe("A share for which to tell the chance that the truth lies above."),
    lines: z
      .array(share)
      .max(200)
      .default([0.05, 0.1, 0.2, 0.5])
      .describe("Shares for which to tell the same, for a curve or a table."),
  })
  .refine(({ sensitivity, sensitivityPrior }) => (sensitivity === undefined) !== (sensitivityPrior === undefined), {
    message: "one of: a known sensitivity, a prior of it",
    path: ["sensitivity"],
  })
  .refine(({ specificity, specificityPrior }) => (specificity === undefined) !== (specificityPrior === undefined), {
    message: "one of: a known specificity, a prior of it",
    path: ["specificity"],
  });

const above = z.strictObject({ line: z.number(), chance: z.number().describe("chance that the share lies above") });

const output = z.strictObject({
  estimate: estimate.describe("the mean of what is believed, with an equal-tailed credible interval"),
  median: z.number(),
  standardDeviation: z.number(),
  aboveLine: above.nullable().describe("for the line asked; null without one"),
  above: z.array(above).describe("for each of the lines"),
  nodes: z.number().int().describe("points of the sum over each error of the test that is not known"),
  method: z.string(),
  rule: z.string(),
});

export const truePrevalenceBelief = verb({
  name: "true-prevalence-belief",
  family: "shares",
  summary: "What to believe about the share infested, from priors and a count.",
  assumptions: [
    "Those tested were drawn at random from a large group.",
    "Share, sensitivity and specificity are believed in independently of one another.",
    "The answer holds for whoever holds the priors; a vague prior of the specificity with few positives leaves the prior of the share in charge.",
    "Integrated, not drawn: every figure is settled to 1e-7, or none is given.",
  ],
  source: "Joseph, Gyorkos & Coupal 1995 (model); own integration by Gauss rules.",
  example: {
    positive: 45,
    examined: 150,
    prior: { a: 1, b: 1 },
    sensitivityPrior: { a: 96, b: 4 },
    specificityPrior: { a: 89, b: 11 },
  },
  input,
  output,
  run: (given) => {
    const { positive, examined, prior, level, line, lines } = given;
    const sensitivity = given.sensitivity ?? given.sensitivityPrior;
    const specificity = given.specificity ?? given.specificityPrior;
    if (sensitivity === undefined || specificity === undefined)
      return blocked(problem("field-missing", "blocked", "sensitivity", { expected: "a share or a prior of it" }));
    const thresholds = line === undefined ? lines : [line, ...lines];
    const found = prevalencePosterior({
      positive,
      examined,
      prevalence: prior,
      sensitivity,
      specificity,
      level,
      thresholds,
    });
    if (!found.ok) return found;
    const { mean, low, high, median, standardDeviation, nodes } = found.value;
    const above = found.value.above.map(({ threshold, probability }) => ({ line: threshold, chance: probability }));
    const named = { method: "beta-priors-integrated", rule: "BE106" };
    return answered({
      estimate: { value: mean, low, high, level, interval: "credible" as const, ...named, n: examined },
      median,
      standardDeviation,
      aboveLine: line === undefined ? null : (above[0] ?? null),
      above: line === undefined ? above : above.slice(1),
      nodes,
      ...named,
    });
  },
});
