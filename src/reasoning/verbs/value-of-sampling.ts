/** `value-of-sampling`: what looking at so many bees is worth, and how many pay best. */
import * as z from "zod";
import { answered, type Problem } from "../../units/index.ts";
import { valueOfSampling as worthOf } from "../decision/index.ts";
import { positiveShare } from "./fields.ts";
import { verb } from "./verb.ts";

const price = z.number().min(0).max(1e9);
/** The work for an imperfect bench grows with the cube of the bees. */
const mostBees = 400;

const input = z
  .strictObject({
    a: z
      .number()
      .min(0.01)
      .max(1e5)
      .describe("Beta belief about the share infested, first number: as if so many infested bees had been seen."),
    b: z.number().min(0.01).max(1e5).describe("Beta belief, second number: as if so many clear bees had been seen."),
    lossAtFull: price.gt(0).describe("Loss of waiting when every bee is infested; with fewer it is in proportion."),
    actCost: price.describe("Cost of treating, in the same unit."),
    sizes: z
      .array(z.number().int().min(0).max(mostBees))
      .min(1)
      .max(60)
      .default([0, 5, 10, 15, 20, 30, 40, 50, 75, 100])
      .describe("Numbers of bees to weigh."),
    costPerBee: price.describe("Cost of looking at one bee, in the same unit."),
    fixedCost: price.describe("Cost of a sample whatever its size."),
    sensitivity: positiveShare.describe("Share of infested bees that the bench finds. It has no default."),
    specificity: positiveShare.default(1).describe("Share of clear bees that the bench calls clear."),
  })
  .refine(({ sensitivity, specificity }) => sensitivity + specificity > 1, {
    message: "with the specificity above 1: else a positive tells nothing",
    path: ["sensitivity"],
  });

const row = z.strictObject({
  bees: z.number().int(),
  evsi: z.number().describe("expected value of sample information: fall of the expected loss, before the cost"),
  net: z.number().describe("the same less the cost of the sample"),
  actFrom: z.number().int().nullable().describe("treat from this number of positive bees on; null for none"),
});

const output = z.strictObject({
  priorMean: z.number().describe("share infested that the belief expects"),
  lossNow: z.number().describe("expected loss of the better of waiting and treating, without a sample"),
  threshold: z.number().describe("share infested at which waiting and treating cost the same; above 1 as it comes"),
  evpi: z.number().describe("value of knowing the share exactly: no sample is worth more"),
  sizes: z.array(row).describe("one for each size, rising"),
  best: row.describe("of these sizes the one with the largest net worth; the smallest at a tie"),
  method: z.string(),
  rule: z.string(),
});

export const valueOfSampling = verb({
  name: "value-of-sampling",
  family: "decisions",
  summary: "What a sample of so many bees is worth, and how many pay best.",
  assumptions: [
    "Waiting loses in proportion to the share of infested bees; treating costs the same whatever the share.",
    "The belief before the sample is a beta distribution, and bees are drawn at random.",
    "Averages over many such colonies; every price is yours.",
  ],
  source: "Raiffa & Schlaifer 1961, Applied statistical decision theory; exact sums.",
  example: { a: 2, b: 18, lossAtFull: 300, actCost: 45, costPerBee: 0.02, fixedCost: 0.2, sensitivity: 1 },
  input,
  output,
  run: ({ a, b, sizes, ...given }, progress) => {
    const rising = [...new Set(sizes)].sort((one, other) => one - other);
    const done = (index: number) => (index + 1) / rising.length;
    const parts = rising.map((bees, index) => {
      const worth = worthOf({ belief: { a, b }, ...given, sizes: [bees] });
      progress(done(index) ** 3);
      return worth;
    });
    const rows = parts.flatMap((part) => part.rows);
    const shown = rows.map(({ bees, evsi, net, actFrom }) => ({ bees, evsi, net, actFrom }));
    const [first] = parts;
    const best = shown.reduce((top, each) => (each.net > top.net ? each : top));
    const never = rows.every(({ actFrom }) => actFrom === null) ? (rows.at(-1)?.neverActs ?? null) : null;
    const notices: readonly Problem[] = never === null ? [] : [never];
    return answered(
      {
        priorMean: first?.priorMean ?? a / (a + b),
        lossNow: first?.lossNow ?? 0,
        threshold: first?.threshold ?? 0,
        evpi: first?.evpi ?? 0,
        sizes: shown,
        best,
        method: "exact-sum",
        rule: "DE4",
      },
      notices,
    );
  },
});
