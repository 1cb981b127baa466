/** `margin`: how many bees to examine so that a share is known within a margin. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { marginSampleSize, wilsonHalfWidth } from "../sampling/index.ts";
import { level } from "./fields.ts";
import { verb } from "./verb.ts";

const expected = z.number().min(0.0001).max(0.9999);

const input = z.strictObject({
  expectedPrevalence: expected.describe("Share of infested bees that is expected. 0.5 asks for the most bees."),
  margin: z.number().min(0.001).lt(0.5).describe("Half the length of the range that is wanted."),
  level: level.min(0.5).max(0.9999).default(0.95).describe("Probability content of the range."),
  prevalences: z
    .array(expected)
    .max(200)
    .default([0.01, 0.05, 0.1, 0.2, 0.5])
    .describe("Shares for which to tell the same, should another one be found."),
});

const output = z.strictObject({
  bees: z.number().int().describe("the fewest whose range is no longer than twice the margin"),
  halfWidth: z.number().describe("half the length of the range with so many bees"),
  oneFewer: z.number().nullable().describe("the same with one bee fewer: too long; null where one bee is enough"),
  byPrevalence: z.array(
    z.strictObject({
      prevalence: z.number(),
      bees: z.number().int().describe("bees for the margin, were this the share found"),
      halfWidth: z.number().describe("half the length of the range, were it found with the number planned"),
    }),
  ),
  design: z.strictObject({ expectedPrevalence: z.number(), margin: z.number(), level: z.number() }),
  method: z.string(),
  rule: z.string(),
});

export const margin = verb({
  name: "margin",
  family: "designs",
  summary: "How many bees to examine so that a share is known within a margin.",
  assumptions: [
    "Bees are drawn at random from a large colony, each on its own; bees that cluster by age need more.",
    "The range is Wilson's, and the share found is the one expected.",
    "Nothing is corrected for what the bench misses.",
  ],
  source: "Wilson 1927; Pirk et al. 2013, BEEBOOK I, section 2.2.3 advises this range.",
  example: { expectedPrevalence: 0.2, margin: 0.1 },
  input,
  output,
  run: ({ expectedPrevalence, margin, level, prevalences }) => {
    const bees = marginSampleSize({ expectedPrevalence, margin, level });
    const half = (count: number, prevalence: number) =>
      wilsonHalfWidth({ bees: count, expectedPrevalence: prevalence, level });
    return answered({
      bees,
      halfWidth: half(bees, expectedPrevalence),
      oneFewer: bees > 1 ? half(bees - 1, expectedPrevalence) : null,
      byPrevalence: prevalences.map((prevalence) => ({
        prevalence,
        bees: marginSampleSize({ expectedPrevalence: prevalence, margin, level }),
        halfWidth: half(bees, prevalence),
      })),
      design: { expectedPrevalence, margin, level },
      method: "wilson",
      rule: "SD13",
    });
  },
});
