/** `pool-retest`: the pool size that takes the fewest tests to tell every bee, pools first and the bees of positive ones after. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { dorfmanPools, dorfmanTests } from "../sampling/index.ts";
import { count } from "./fields.ts";
import { verb } from "./verb.ts";

const size = count.min(2).max(1_000);

const input = z.strictObject({
  prevalence: z.number().min(0.000001).max(0.999999).describe("Share of infested bees."),
  largest: size.default(200).describe("Largest pool to consider."),
  sizes: z
    .array(size)
    .max(200)
    .default([2, 3, 5, 10, 20, 50])
    .describe("Other sizes for which to tell the tests they take."),
});

const output = z.strictObject({
  size: z.number().int().describe("bees in a pool that take the fewest tests"),
  pooledTestsPerBee: z.number().describe("tests for each bee on average with such pools"),
  testsPerBee: z.number().describe("the same, or 1 where testing each bee by itself is no dearer"),
  bySize: z.array(z.strictObject({ size: z.number().int(), testsPerBee: z.number() })),
  prevalence: z.number(),
  method: z.string(),
  rule: z.string(),
});

export const poolRetest = verb({
  name: "pool-retest",
  family: "pools",
  summary: "The pool size that takes the fewest tests to tell every bee.",
  assumptions: [
    "Every bee of a positive pool is tested by itself after.",
    "Bees are put into pools at random, and neither test errs.",
  ],
  source: "Dorfman 1943, Annals of Mathematical Statistics 14:436–440.",
  example: { prevalence: 0.05 },
  input,
  output,
  run: ({ prevalence, largest, sizes }) => {
    const found = dorfmanPools({ prevalence, largest });
    if (!found.ok) return found;
    return answered(
      {
        ...found.value,
        bySize: sizes.map((each) => ({ size: each, testsPerBee: dorfmanTests({ prevalence, size: each }) })),
        prevalence,
        method: "two-stage-retest",
        rule: "SD110",
      },
      found.problems,
    );
  },
});
