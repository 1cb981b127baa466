/** `pool-size`: the cheapest number of bees in a pool when a bigger pool thins the signal. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { poolDilution } from "../sampling/index.ts";
import { count, level } from "./fields.ts";
import { verb } from "./verb.ts";

const cost = z.number().min(0).max(1_000_000_000);

const input = z.strictObject({
  designPrevalence: z.number().min(0.00001).max(1).describe("Smallest share of infested bees that must not be missed."),
  signal: z
    .number()
    .min(0.01)
    .max(100_000)
    .describe("How strongly a pool of infested bees alone reacts: the mean number of copies seen. It has no default."),
  confidence: level.max(0.999999).default(0.95).describe("Wanted chance of at least one positive pool."),
  costPerPool: cost.describe("Cost of testing one pool, in any unit."),
  costPerBee: cost.describe("Cost of taking one bee, in the same unit."),
  largest: count.min(1).max(500).default(100).describe("Largest pool to consider."),
});

const diluted = z.strictObject({
  size: z.number().int(),
  reacts: z.number().describe("chance that a pool of this size reacts"),
  pools: z.number().int(),
  cost: z.number(),
});

const output = z.strictObject({
  best: diluted,
  bees: z.number().int().describe("bees in all for the cheapest"),
  limit: z.number().describe("chance that an endlessly large pool reacts: what no size exceeds"),
  sizes: z.array(diluted).describe("every size looked at"),
  confidence: z.number(),
  method: z.string(),
  rule: z.string(),
});

export const poolSize = verb({
  name: "pool-size",
  family: "pools",
  summary: "The cheapest number of bees in a pool, when a pool thins the signal.",
  assumptions: [
    "Our own model, not checked against a bench: a pool of k with j infested bees reacts with 1 − exp(−signal·j/k).",
    "By this model a bigger pool never loses, pool by pool; only cost speaks against it.",
    "Bees are drawn at random from a large colony; no false positives.",
    "Equal costs go to the smaller pool.",
  ],
  source: "own model; no published figure.",
  example: { designPrevalence: 0.02, signal: 20, costPerPool: 12, costPerBee: 0.25 },
  input,
  output,
  run: ({ designPrevalence, ...given }) => {
    const { best, limit, sizes } = poolDilution({ prevalence: designPrevalence, ...given });
    return answered({
      best,
      bees: best.size * best.pools,
      limit,
      sizes,
      confidence: given.confidence,
      method: "thinned-signal",
      rule: "SD112",
    });
  },
});
