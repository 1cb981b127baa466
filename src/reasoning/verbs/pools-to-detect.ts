/** `pools-to-detect`: how many pools of bees to test so that an infestation is not missed. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { poolsToDetect as designed } from "../sampling/index.ts";
import { count, level } from "./fields.ts";
import { verb } from "./verb.ts";

const size = count.min(1).max(1_000);
const share = z.number().min(0.000001).max(1);

const input = z.strictObject({
  size: size.describe("Bees in a pool."),
  designPrevalence: share.describe("Smallest share of infested bees that must not be missed."),
  sensitivity: z
    .number()
    .min(0.001)
    .max(1)
    .describe("Share of pools with an infested bee that test positive. It has no default."),
  confidence: level.max(0.999999).default(0.95).describe("Wanted chance of at least one positive pool."),
  sizes: z.array(size).max(200).default([1, 2, 5, 10, 20]).describe("Other sizes for which to tell the same."),
});

const row = {
  pools: z.number().int().describe("the fewest pools that reach the wanted confidence"),
  bees: z.number().int().describe("bees in all"),
  reached: z.number().describe("chance of at least one positive pool among them"),
};

const output = z.strictObject({
  ...row,
  bySize: z.array(z.strictObject({ size: z.number().int(), ...row })),
  design: z.strictObject({
    size: z.number().int(),
    designPrevalence: z.number(),
    sensitivity: z.number(),
    confidence: z.number(),
  }),
  method: z.string(),
  rule: z.string(),
});

export const poolsToDetect = verb({
  name: "pools-to-detect",
  family: "pools",
  summary: "How many pools to test so that an infestation is not missed.",
  assumptions: [
    "Bees are drawn at random from a large colony, each for one pool.",
    "A pool is found with the sensitivity given, however many infested bees it holds: where a larger pool thins the signal, ask for the cheapest size.",
    "No false positives.",
  ],
  source: "Christensen & Gardner 2000, Preventive Veterinary Medicine 45:83–106.",
  example: { size: 5, designPrevalence: 0.01, sensitivity: 0.9 },
  input,
  output,
  run: ({ size, designPrevalence, sensitivity, confidence, sizes }) => {
    const at = (each: number) => {
      const found = designed({ size: each, prevalence: designPrevalence, sensitivity, confidence });
      return { ...found, bees: found.pools * each };
    };
    return answered({
      ...at(size),
      bySize: sizes.map((each) => ({ size: each, ...at(each) })),
      design: { size, designPrevalence, sensitivity, confidence },
      method: "binomial",
      rule: "SD109",
    });
  },
});
