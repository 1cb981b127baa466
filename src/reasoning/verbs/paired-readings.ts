/** `paired-readings`: two readings of the same bees, by those that only one of them called positive. */
import * as z from "zod";
import { answered, blocked } from "../../units/index.ts";
import { mcnemarTest, prevalence } from "../bench/index.ts";
import { count, estimate, level } from "./fields.ts";
import { verb } from "./verb.ts";

const input = z.strictObject({
  onlyFirst: count.max(1_000_000).describe("Bees that the first reading alone called positive."),
  onlySecond: count.max(1_000_000).describe("Bees that the second reading alone called positive."),
  level: level.default(0.95).describe("Probability content of the interval."),
});

const test = z.strictObject({ statistic: z.number(), pValue: z.number() });

const output = z.strictObject({
  differing: z.number().int().describe("bees that the two readings call differently"),
  firstOfDiffering: estimate.describe(
    "share of those that the first reading called positive; one half without a difference",
  ),
  exact: z.number().describe("exact two-sided P"),
  midP: z.number().describe("the same with the observed split counted by half"),
  chiSquare: test.describe("McNemar's chi-square, for many differing bees"),
  corrected: test.describe("the same with 1 taken off the difference"),
  method: z.string(),
  rule: z.string(),
});

export const pairedReadings = verb({
  name: "paired-readings",
  family: "comparison",
  summary: "Two readings, or two looks, at the same bees, and whether one finds more.",
  assumptions: [
    "Both readings are of the same bees, and neither reader knew the other's result.",
    "Bees on which both agree say nothing of which finds more; how far the readers agree is another question.",
  ],
  source:
    "McNemar 1947, exact binomial form; mid-P: Fagerland, Lydersen & Laake 2013, BMC Med. Res. Methodol. 13:91; limits by Clopper & Pearson 1934.",
  example: { onlyFirst: 1, onlySecond: 9 },
  input,
  output,
  refusals: ["no-bee-read-differently"],
  run: ({ onlyFirst, onlySecond, level }) => {
    const found = mcnemarTest(onlyFirst, onlySecond);
    if (!found.ok) return found;
    const differing = onlyFirst + onlySecond;
    const split = prevalence({ positive: onlyFirst, examined: differing, level });
    if (!split.ok) return blocked(...split.problems);
    return answered({
      differing,
      firstOfDiffering: split.value,
      ...found.value,
      method: "mcnemar-exact",
      rule: "BE205",
    });
  },
});
