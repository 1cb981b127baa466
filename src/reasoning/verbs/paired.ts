/** `paired`: the same colonies before and after, by three exact tests. */
import * as z from "zod";
import { answered, blocked, type Problem, type Result } from "../../units/index.ts";
import { type PairedTest, signFlipTest, signTest, wilcoxonTest } from "../efficacy/index.ts";
import { type Deep, verb } from "./verb.ts";

const measured = z.number().min(-1e9).max(1e9);

const input = z.strictObject({
  pairs: z
    .array(
      z.strictObject({
        before: measured.describe("The colony's number before."),
        after: measured.describe("The same colony's number after."),
      }),
    )
    .min(1)
    .max(300)
    .describe("One pair of numbers for each colony: mites, bees, combs."),
});

const output = z.strictObject({
  colonies: z.number().int(),
  fell: z.number().int().describe("colonies with less after than before"),
  rose: z.number().int(),
  tests: z
    .array(
      z.strictObject({
        test: z.enum(["sign", "wilcoxon", "sign-flip"]),
        statistic: z
          .number()
          .nullable()
          .describe("how many fell; the smaller sum of ranks; the mean change of the pairs that differ"),
        pValue: z.number().nullable().describe("two-sided; null where the test is refused"),
        rule: z.string(),
      }),
    )
    .describe("each exact, over the pairs that differ"),
  pairs: z.array(z.strictObject({ before: z.number(), after: z.number() })).describe("as given"),
  method: z.string(),
  rule: z.string(),
});

type Answer = Deep<z.output<typeof output>>;

export const paired = verb({
  name: "paired",
  family: "comparison",
  summary: "The same colonies before and after, against chance, by three exact tests.",
  assumptions: [
    "Each colony stands for itself, and one number does not tell the next.",
    "Without untreated colonies a change is no efficacy: it may have come anyway.",
    "Pairs that do not differ say nothing and are left out.",
  ],
  source: "Sign test: binomial law; Wilcoxon 1945, exact law of the ranks; flips of signs: Fisher 1935.",
  example: {
    pairs: [
      { before: 12, after: 3 },
      { before: 30, after: 12 },
      { before: 7, after: 9 },
      { before: 22, after: 5 },
      { before: 18, after: 10 },
      { before: 9, after: 3 },
      { before: 40, after: 16 },
      { before: 15, after: 14 },
    ],
  },
  input,
  output,
  refusals: ["no-pair-differs"],
  run: ({ pairs }): Result<Answer> => {
    const lists = { before: pairs.map(({ before }) => before), after: pairs.map(({ after }) => after) };
    const sign = signTest(lists);
    if (!sign.ok) return blocked(...sign.problems.map(atPairs));
    const others = [
      ["wilcoxon", wilcoxonTest(lists)],
      ["sign-flip", signFlipTest(lists)],
    ] as const;
    const { statistic: fell, differing } = sign.value;
    return answered(
      {
        colonies: pairs.length,
        fell,
        rose: differing - fell,
        tests: [rowOf("sign", sign), ...others.map(([test, result]) => rowOf(test, result))],
        pairs,
        method: "exact",
        rule: "EF203",
      },
      others.flatMap(([, { problems }]) => problems.map(atPairs)),
    );
  },
});

const rowOf = (test: Answer["tests"][number]["test"], result: Result<PairedTest>): Answer["tests"][number] => ({
  test,
  statistic: result.ok ? result.value.statistic : null,
  pValue: result.ok ? result.value.pValue : null,
  rule: "EF203",
});

/** A test that cannot be had stands in no other's way. */
const atPairs = (each: Problem): Problem => ({ ...each, field: "pairs", severity: "unknown" });
