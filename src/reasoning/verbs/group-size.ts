/** `group-size`: how many bees or colonies a comparison of two shares needs, and what a given number can show. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { clustersPerGroup, fisherPower, groupSize as neededSize } from "../efficacy/index.ts";
import { count, openShare, share } from "./fields.ts";
import { type Progress, verb } from "./verb.ts";

/** Group size up to which power is summed over every pair of counts. */
const mostExact = 300;

const input = z
  .strictObject({
    firstShare: openShare.describe("Share expected in the first group, such as the untreated."),
    secondShare: openShare.describe("Share expected in the second group."),
    power: openShare.default(0.8).describe("Wanted chance that the test shows the difference."),
    alpha: openShare.default(0.05).describe("Chance of a difference where there is none, two-sided."),
    perColony: count
      .min(1)
      .max(1_000_000)
      .exactOptional()
      .describe("Bees looked at in each colony, where whole colonies are treated."),
    intraclassCorrelation: share
      .exactOptional()
      .describe("How alike bees of one colony are, 0 to 1. Needed with bees of whole colonies; it has no default."),
    sizes: z
      .array(count.min(1).max(mostExact))
      .max(60)
      .default([])
      .describe("Sizes of a group at which to tell the power of Fisher's test."),
  })
  .refine(({ firstShare, secondShare }) => firstShare === secondShare || Math.abs(firstShare - secondShare) >= 1e-6, {
    message: "a share that differs from the first by a millionth or more",
    path: ["secondShare"],
  })
  .refine(({ power, alpha }) => power > alpha / 2, {
    message: "more than half of alpha, which chance alone gives",
    path: ["power"],
  })
  .refine(({ perColony, intraclassCorrelation: icc }) => perColony === undefined || icc !== undefined, {
    message: "how alike bees of one colony are, 0 to 1",
    path: ["intraclassCorrelation"],
  })
  .refine(({ perColony, intraclassCorrelation: icc }) => icc === undefined || perColony !== undefined, {
    message: "bees looked at in each colony",
    path: ["perColony"],
  });

const output = z.strictObject({
  perGroup: z.number().int().describe("by the usual formula, variance pooled under no difference, rounded up"),
  perGroupCorrected: z
    .number()
    .int()
    .describe("with Fleiss's correction for continuity: near what Fisher's test needs"),
  pooled: z.number().describe("before rounding"),
  unpooled: z.number(),
  corrected: z.number(),
  designEffect: z.number().nullable().describe("1 + (m − 1)·ICC; null without colonies"),
  coloniesPerGroup: z.number().int().nullable(),
  coloniesPerGroupPlusOne: z
    .number()
    .int()
    .nullable()
    .describe("one more in each group, for what a comparison of few colonies loses"),
  power: z
    .array(
      z.strictObject({
        perGroup: z.number().int(),
        fisher: z.number().describe("chance that Fisher's two-sided test comes out at alpha or below"),
      }),
    )
    .describe(
      "exact sums for bees that fall alone, at the sizes asked for and around the corrected size; fewer where that is above 300",
    ),
  wanted: z.strictObject({ power: z.number(), alpha: z.number() }),
  method: z.string(),
  rule: z.string(),
});

export const groupSize = verb({
  name: "group-size",
  family: "comparison",
  summary: "How many bees or colonies in each group to tell two shares apart.",
  assumptions: [
    "Two groups of one size, each bee or colony drawn at random.",
    "Bees of one colony are alike: where whole colonies are treated, count colonies.",
    "The expected shares are yours: a smaller difference needs far more.",
  ],
  source:
    "Pooled normal approximation, standard texts; Fleiss, Tytun & Ury 1980 (continuity); Kish 1965 (design effect); one colony more: Snedecor & Cochran (from memory); exact power by definition.",
  example: { firstShare: 0.6, secondShare: 0.4 },
  input,
  output,
  run: ({ perColony, intraclassCorrelation: icc, sizes, ...wanted }, progress) => {
    const size = neededSize(wanted);
    if (!size.ok) return size;
    const colonies =
      perColony !== undefined && icc !== undefined
        ? clustersPerGroup({ individuals: size.value.pooled, perCluster: perColony, icc })
        : null;
    return answered({
      ...size.value,
      designEffect: colonies?.designEffect ?? null,
      coloniesPerGroup: colonies?.perGroup ?? null,
      coloniesPerGroupPlusOne: colonies?.perGroupPlusOne ?? null,
      power: powerAt([...sizes, ...sizesAround(size.value.perGroupCorrected)], wanted, progress),
      wanted: { power: wanted.power, alpha: wanted.alpha },
      method: colonies === null ? "pooled-normal" : "pooled-normal-design-effect",
      rule: "EF204",
    });
  },
});

/** The size itself, and smaller and larger groups. */
const sizesAround = (corrected: number): readonly number[] =>
  [0.25, 0.5, 0.75, 0.9, 1, 1.1, 1.25, 1.5]
    .map((part) => Math.round(part * corrected))
    .filter((each) => each >= 1 && each <= mostExact);

function powerAt(
  sizes: readonly number[],
  {
    firstShare,
    secondShare,
    alpha,
  }: { readonly firstShare: number; readonly secondShare: number; readonly alpha: number },
  progress: Progress,
) {
  const each = [...new Set(sizes)].sort((one, other) => one - other);
  // Larger groups take longer, about as the square of their size.
  const work = each.reduce((sum, size) => sum + size ** 2, 0);
  let done = 0;
  return each.map((perGroup) => {
    const fisher = fisherPower({ firstShare, secondShare, alpha, firstSize: perGroup, secondSize: perGroup });
    done += perGroup ** 2;
    progress(done / work);
    return { perGroup, fisher };
  });
}
