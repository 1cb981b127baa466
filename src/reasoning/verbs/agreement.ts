/** `agreement`: how far two readers of the same bees agree, beyond chance, by every usual measure. */
import * as z from "zod";
import { answered, type Estimate, type Problem, type Result } from "../../units/index.ts";
import { agreementAc1, agreement as agreementOf, type KappaEstimate, type KappaWeights } from "../bench/index.ts";
import { count, estimate, level } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const input = z
  .strictObject({
    table: z
      .array(z.array(count).max(12))
      .max(12)
      .describe("Square table of bees: row the class by the first reader, column the class by the second."),
    ordered: z
      .boolean()
      .default(false)
      .describe("The classes have an order, such as none, few, many: near misses then count by half and more."),
    level: level.default(0.95).describe("Probability content of each interval."),
  })
  .refine(({ table }) => bees(table) !== 1, { message: "two bees or more", path: ["table"] });

const bees = (table: readonly (readonly number[])[]): number => table.flat().reduce((sum, each) => sum + each, 0);

const output = z.strictObject({
  bees: z.number().int(),
  observed: z.number().describe("share on which both agree"),
  byChance: z.number().describe("share on which they would agree if each called at random, with their own margins"),
  kappa: estimate.nullable().describe("Cohen's kappa, a near miss being a miss; null where only one class was used"),
  weighted: z.array(estimate).describe("kappa with near misses counted by distance and by its square"),
  pabak: estimate.nullable().describe("kappa as it would be if every class were as frequent and neither reader leaned"),
  ac1: estimate.describe("Gwet's AC1, which does not collapse when nearly all bees are of one class"),
  details: z
    .array(
      z.strictObject({
        measure: z.enum(["kappa", "kappa-linear", "kappa-quadratic", "ac1"]),
        observed: z.number(),
        expected: z.number(),
        standardError: z.number(),
        nullStandardError: z
          .number()
          .nullable()
          .describe("if there were no agreement beyond chance: for the test, never for the limits"),
        z: z.number().nullable(),
      }),
    )
    .describe("what stands behind each of them"),
  prevalenceIndex: z.number().nullable().describe("two classes: share both call the first, less both the second"),
  biasIndex: z.number().nullable().describe("two classes: what the first reader leans to the first class"),
  onFirst: z.number().nullable().describe("agreement on the first class; null where nobody used it"),
  onSecond: z.number().nullable(),
  method: z.string(),
  rule: z.string(),
});

type Answer = Deep<z.output<typeof output>>;

const weightings: readonly KappaWeights[] = ["none", "linear", "quadratic"];
const measures = { none: "kappa", linear: "kappa-linear", quadratic: "kappa-quadratic" } as const;

export const agreement = verb({
  name: "agreement",
  family: "readers",
  summary: "How far two readers of the same bees agree, and how far beyond chance.",
  assumptions: [
    "Both read the same bees, each without knowing the other's result.",
    "Kappa falls when nearly all bees are of one class, though the readers agree as often: look at the agreement and AC1 beside it.",
    "Agreement is not truth: two readers can be wrong together.",
  ],
  source:
    "Cohen 1960, 1968; Fleiss, Cohen & Everitt 1969 (standard errors); Byrt, Bishop & Carlin 1993 (PABAK, indices); Gwet 2008, Br. J. Math. Stat. Psychol. 61:29 (AC1).",
  example: {
    table: [
      [19, 10],
      [6, 256],
    ],
  },
  input,
  output,
  run: ({ table, ordered, level }): Result<Answer> => {
    const used = ordered && table.length > 2 ? weightings : (["none"] as const);
    const plain = agreementOf({ table, level });
    if (!plain.ok) return plain;
    const ac1 = agreementAc1({ table, level });
    if (!ac1.ok) return ac1;
    const kappas = used.flatMap((weights) => {
      const found = agreementOf({ table, weights, level });
      return found.ok ? [{ weights, ...found.value }] : [];
    });
    const { observed, expected, kappa, pabak, indices } = plain.value;
    const parts: readonly Result<unknown>[] = [
      kappa,
      ac1,
      ...(kappa.ok ? [kappa.value.z] : []),
      ...(indices ? [indices.onFirst, indices.onSecond] : []),
    ];
    return answered(
      {
        bees: bees(table),
        observed,
        byChance: expected,
        kappa: kappa.ok ? plainEstimate(kappa.value) : null,
        weighted: kappas.flatMap(({ weights, kappa: each }) =>
          weights !== "none" && each.ok ? [plainEstimate(each.value)] : [],
        ),
        pabak,
        ac1: plainEstimate(ac1.value),
        details: [
          ...kappas.flatMap(({ weights, kappa: each, ...shares }) =>
            each.ok ? [detailOf(weights, shares, each.value)] : [],
          ),
          {
            measure: "ac1",
            observed: ac1.value.observed,
            expected: ac1.value.expected,
            standardError: ac1.value.standardError,
            nullStandardError: null,
            z: null,
          },
        ],
        prevalenceIndex: indices?.prevalence ?? null,
        biasIndex: indices?.bias ?? null,
        onFirst: known(indices?.onFirst),
        onSecond: known(indices?.onSecond),
        method: "cohen-kappa",
        rule: "BE200",
      },
      once(parts.flatMap(({ problems }): readonly Problem[] => problems)),
    );
  },
});

/** What both kappa and AC1 report is told once; each class that nobody used by itself. */
const once = (problems: readonly Problem[]): readonly Problem[] =>
  problems.filter(
    (each, index) =>
      each.code !== "agreement-without-error" || problems.findIndex(({ code }) => code === each.code) === index,
  );

/** What every estimate has, without what is told apart. */
const plainEstimate = ({ value, low, high, level, interval, method, rule, n }: Estimate): Estimate => ({
  value,
  low,
  high,
  level,
  interval,
  method,
  rule,
  n,
});

const detailOf = (
  weights: KappaWeights,
  { observed, expected }: { readonly observed: number; readonly expected: number },
  { standardError, nullStandardError, z }: KappaEstimate,
): Answer["details"][number] => ({
  measure: measures[weights],
  observed,
  expected,
  standardError,
  nullStandardError,
  z: z.ok ? z.value : null,
});

const known = (result: Result<number> | undefined): number | null => (result?.ok ? result.value : null);
