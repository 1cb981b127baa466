/** `abundance`: from mites per bee to the share of infested bees, and back, for a known aggregation. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { abundanceOfPrevalence, prevalenceOfAbundance } from "../bench/index.ts";
import { verb } from "./verb.ts";

const mean = z.number().min(1e-6).max(1e6);

const input = z
  .strictObject({
    mean: mean.exactOptional().describe("Mites per bee, clear bees counted."),
    prevalence: z
      .number()
      .gt(0)
      .max(0.999)
      .exactOptional()
      .describe("Share of infested bees, in place of mites per bee."),
    k: z
      .number()
      .min(0.05)
      .max(1e6)
      .exactOptional()
      .describe("Aggregation: the smaller, the fewer bees carry the mites. Left out: mites sit at random."),
    means: z
      .array(mean)
      .max(200)
      .default([0.1, 0.2, 0.5, 1, 2, 5])
      .describe("Mites per bee for which to tell the share of infested bees."),
  })
  .refine((given) => (given.mean === undefined) !== (given.prevalence === undefined), {
    message: "either mites per bee or the share of infested bees",
    path: ["mean"],
  });

const output = z.strictObject({
  mean: z.number().describe("mites per bee"),
  prevalence: z.number().describe("share of infested bees"),
  intensity: z.number().describe("mites per infested bee"),
  prevalenceAtRandom: z.number().describe("share of infested bees if mites sat at random: the most the mean allows"),
  k: z.number().nullable().describe("aggregation; null for mites at random"),
  curve: z.array(z.strictObject({ mean: z.number(), prevalence: z.number(), prevalenceAtRandom: z.number() })),
  method: z.string(),
  rule: z.string(),
});

export const abundance = verb({
  name: "abundance",
  family: "counts",
  summary: "From mites per bee to the share of infested bees, and back.",
  assumptions: [
    "Mites per bee follow the negative binomial law with the aggregation given, or the Poisson law without one.",
    "The aggregation is known from elsewhere; it differs between colonies and seasons.",
  ],
  source: "Negative binomial law; Bliss & Fisher 1953.",
  example: { mean: 0.5, k: 0.3 },
  input,
  output,
  run: ({ mean: perBee, prevalence = 0, k = null, means }) => {
    const average = perBee ?? abundanceOfPrevalence({ prevalence, k });
    const { prevalence: share, ...rest } = prevalenceOfAbundance({ mean: average, k });
    return answered({
      mean: average,
      prevalence: share,
      ...rest,
      k,
      curve: means.map((each) => {
        const at = prevalenceOfAbundance({ mean: each, k });
        return { mean: each, prevalence: at.prevalence, prevalenceAtRandom: at.prevalenceAtRandom };
      }),
      method: k === null ? "poisson" : "negative-binomial",
      rule: "BE207",
    });
  },
});
