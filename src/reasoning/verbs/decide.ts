/** `decide`: treat without testing, test first, or wait; and what would change the choice. */
import * as z from "zod";
import type { Result } from "../../units/index.ts";
import { type ActionComparison, type Belief, beliefFromCounts, compareActions } from "../decision/index.ts";
import { count, estimate, positiveShare, share } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const price = z.number().min(0).max(1e12);

const belief = z
  .strictObject({
    positive: count.exactOptional().describe("Bees found positive."),
    examined: count.exactOptional().describe("Bees that count."),
    a: z.number().gt(0).max(1e7).exactOptional().describe("Beta belief about the share infested, first number."),
    b: z.number().gt(0).max(1e7).exactOptional().describe("Beta belief, second number."),
    probability: share.exactOptional().describe("Probability that the colony is infested."),
    prevalence: positiveShare.exactOptional().describe("Share of infested bees if it is."),
  })
  .refine((given) => pairsIn(given).length === 1, {
    message: "one pair: positive and examined; a and b; or probability and prevalence",
  })
  .refine(({ positive = 0, examined = positive }) => positive <= examined, {
    message: "no more than examined",
    path: ["positive"],
  });

/** Complete pairs; a half one counts as two, so that it is told. */
function pairsIn(given: Readonly<Record<string, unknown>>): readonly string[] {
  const pairs = [
    ["positive", "examined"],
    ["a", "b"],
    ["probability", "prevalence"],
  ];
  return pairs.flatMap((pair) => {
    const there = pair.filter((name) => given[name] !== undefined);
    return there.length === 1 ? [...there, ...there] : there.slice(0, 1);
  });
}

const input = z.strictObject({
  belief: belief.describe("What is held of the share of infested bees."),
  prices: z
    .strictObject({
      colonyValue: price.describe("What is lost with the colony. It has no default."),
      actCost: price.describe("Cost of acting: material, work, honey forgone. It has no default."),
      testCost: price.describe("Cost of the test: bees, bench, post. It has no default."),
      residualShare: share.describe(
        "Share of the extra winter loss that remains in spite of acting. It has no default.",
      ),
    })
    .describe("Yours, all in one unit of money."),
  test: z
    .strictObject({
      bees: z.number().int().min(1).max(1000).describe("Bees to examine."),
      sensitivity: positiveShare.describe("Share of infested bees that the bench finds. It has no default."),
      specificity: positiveShare.default(1).describe("Share of clear bees that the bench calls clear."),
    })
    .describe("The test that may come first."),
  winterLossByPrevalence: z
    .array(z.strictObject({ prevalence: share, loss: share, source: z.string().min(1).default("given by the user") }))
    .min(1)
    .max(100)
    .exactOptional()
    .describe("Chance of winter death by share of infested bees. Left out: a judged curve, and it is said."),
  acceptance: z
    .enum(["accepted", "accepted-with-limits", "rejected"])
    .default("accepted")
    .describe("State of the sample behind the belief; anything but accepted withholds the choice."),
  decideAnyway: z.boolean().default(false).describe("Ask for the choice in spite of the sample."),
});

const action = z.enum(["wait", "test-first", "act-now"]);

const output = z.strictObject({
  wait: z.number().describe("expected loss of waiting, in the unit of the prices"),
  testFirst: z.number().describe("expected loss of testing first"),
  actNow: z.number().describe("expected loss of treating without testing"),
  best: action,
  margins: z
    .strictObject({ wait: z.number(), "test-first": z.number(), "act-now": z.number() })
    .describe("how much worse each action is than the best"),
  actFrom: z.number().nullable().describe("after testing: treat from this number of positive bees on"),
  valueOfTest: z.number().describe("worth of this test before its cost"),
  valueOfKnowing: z.number().describe("worth of knowing the share of infested bees exactly"),
  knownPrevalenceThreshold: z
    .number()
    .nullable()
    .describe("share infested at which treating and waiting cost the same, if it were known"),
  testingThreshold: z.number().nullable().describe("centre of belief from which waiting is no longer best"),
  testTreatmentThreshold: z.number().nullable().describe("centre of belief from which treating without a test is best"),
  strip: z
    .array(z.strictObject({ from: z.number(), to: z.number(), best: action }))
    .describe("best action along the belief"),
  stripOver: z.enum(["mean-prevalence", "probability"]),
  here: z
    .strictObject({ centre: z.number(), range: estimate.nullable() })
    .describe("where the belief stands on the strip"),
  flips: z
    .array(
      z.strictObject({
        input: z.enum(["colonyValue", "actCost", "testCost", "residualShare", "centre-of-belief", "sensitivity"]),
        given: z.number(),
        direction: z.enum(["up", "down"]),
        at: z.number(),
        becomes: action,
      }),
    )
    .describe("for each input the nearest value at which the best action changes"),
  readings: z
    .strictObject({ middle: action, cold: action, mild: action })
    .describe("best action under each reading of the literature"),
  rule: z.string(),
});

export const decide = verb({
  name: "decide",
  family: "case",
  summary: "Treat without testing, test first, or wait; and what would change the choice.",
  assumptions: [
    "One colony, one winter; nothing about neighbours, honey or resistance.",
    "Every price is yours. The curve of winter loss is a judged one unless you give your own.",
    "Counts become a belief by Jeffreys's prior.",
  ],
  source: "Pauker & Kassirer 1980 (three actions); Raiffa & Schlaifer 1961 (value of a sample).",
  example: {
    belief: { positive: 3, examined: 50 },
    prices: { colonyValue: 200, actCost: 20, testCost: 15, residualShare: 0.3 },
    test: { bees: 50, sensitivity: 0.9 },
  },
  input,
  output,
  refusals: ["decision-withheld"],
  run,
});

function run(given: z.output<typeof input>): Result<Deep<z.output<typeof output>> & ActionComparison> {
  const { belief: held, winterLossByPrevalence: curve, ...rest } = given;
  return compareActions({
    ...rest,
    belief: beliefOf(held),
    ...(curve ? { winterLossByPrevalence: curve.map((point) => ({ ...point, read: "user" as const })) } : {}),
  });
}

function beliefOf({ positive, examined, a, b, probability, prevalence }: z.output<typeof belief>): Belief {
  if (positive !== undefined && examined !== undefined) return beliefFromCounts({ positive, examined });
  if (a !== undefined && b !== undefined) return { a, b };
  return { probability: probability ?? 0, prevalence: prevalence ?? 1 };
}
