/** `intervals`: one count by every method, and how often each method's interval holds the truth. */
import * as z from "zod";
import { agrestiCoullInterval, intervalCoverage, type ProportionData } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, type Result } from "../../units/index.ts";
import { type PrevalenceMethod, prevalence, prevalenceMethods, shareLimits } from "../bench/index.ts";
import { count, estimate, level, share } from "./fields.ts";
import { verb } from "./verb.ts";

const input = z.strictObject({
  positive: count.describe("Bees, colonies or pools with the property."),
  examined: count.min(1).max(100_000).describe("All that were looked at and could be read."),
  level: level.default(0.95).describe("Probability content of each interval."),
  line: share.exactOptional().describe("A share to read the exact interval against."),
  coverageAt: z
    .array(share)
    .max(400)
    .default([0.01, 0.02, 0.05, 0.1, 0.2, 0.5])
    .describe(
      "True shares at which to tell how often each interval would hold the truth. Summed for up to 200 looked at.",
    ),
});

const output = z.strictObject({
  share: z.number().describe("share found"),
  intervals: z.array(estimate).describe("one for each method"),
  against: z
    .strictObject({ line: z.number(), side: z.enum(["above", "below", "across"]) })
    .nullable()
    .describe("where the exact interval lies against the line; null without one"),
  agrestiCoullUncut: z
    .strictObject({ low: z.number(), high: z.number() })
    .describe("Agresti and Coull's limits before they are cut to 0 and 1"),
  coverage: z
    .array(
      z.strictObject({
        method: z.enum(prevalenceMethods),
        truth: z.number().describe("true share"),
        holds: z.number().describe("chance that the interval holds it"),
      }),
    )
    .describe("exact sums over every outcome; empty above 200 looked at"),
  method: z.string().describe("how the coverage was reckoned"),
  rule: z.string(),
});

/** Sums over every outcome for every truth stay quick up to here. */
const mostForCoverage = 200;

export const intervals = verb({
  name: "intervals",
  family: "shares",
  summary: "A share from a count, by every interval, and how often each holds the truth.",
  assumptions: [
    "Those looked at were drawn at random, each on its own, from a large group.",
    "Clopper and Pearson's and Blaker's intervals hold at least their level whatever the truth; the others hold it on average, and fall short for some shares.",
    "Nothing is corrected for what the bench misses.",
  ],
  source:
    "Clopper & Pearson 1934; Blaker 2000; Wilson 1927; Newcombe 1998 (with continuity, mid-P, likelihood ratio); Brown, Cai & DasGupta 2001 (Jeffreys, Agresti–Coull, coverage).",
  example: { positive: 3, examined: 50 },
  input,
  output,
  run: ({ positive, examined, level, line, coverageAt }, progress) => {
    const found = prevalenceMethods.map((method) => prevalence({ positive, examined, level, method }));
    const refused = found.find((each) => !each.ok);
    if (refused && !refused.ok) return blocked(...refused.problems);
    const truths = examined <= mostForCoverage ? coverageAt : [];
    const { rawLow, rawHigh } = agrestiCoullInterval({ x: positive, n: examined, level });
    return answered({
      share: positive / examined,
      intervals: found.flatMap((each) => (each.ok ? [each.value] : [])),
      against: line === undefined ? null : { line, side: sideOf(found[0], line) },
      agrestiCoullUncut: { low: rawLow, high: rawHigh },
      coverage: prevalenceMethods.flatMap((method, index) => {
        progress(index / prevalenceMethods.length);
        return coverageOf(method, { n: examined, level, truths });
      }),
      method: "exact-sum",
      rule: "BE5",
    });
  },
});

/** An interval that begins at the line lies above it, as a count at a threshold has reached it. */
function sideOf(exact: Result<Estimate> | undefined, line: number): "above" | "below" | "across" {
  if (!exact?.ok) return "across";
  return exact.value.low >= line ? "above" : exact.value.high < line ? "below" : "across";
}

/** Every outcome's interval is made once, not once a truth. */
function coverageOf(
  method: PrevalenceMethod,
  { n, level, truths }: { readonly n: number; readonly level: number; readonly truths: readonly number[] },
) {
  if (truths.length === 0) return [];
  const made = Array.from({ length: n + 1 }, (_, x) => shareLimits[method].limits({ x, n, level }));
  const interval = ({ x }: ProportionData) => made[x] ?? { low: 0, high: 1 };
  return truths.map((truth) => ({ method, truth, holds: intervalCoverage({ interval, n, p: truth, level }) }));
}
