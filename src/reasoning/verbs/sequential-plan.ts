/** `sequential-plan`: bees read one after another until what was found is enough; what such a plan really does. */
import * as z from "zod";
import { answered, type Result } from "../../units/index.ts";
import { fixedPlanLow, judgedPlan, sequentialCharacteristics, waldCurve } from "../sampling/index.ts";
import { prevalences } from "./fields.ts";
import {
  cutIsForNominal,
  endIsForNominal,
  linesShape,
  looks,
  planAsked,
  planFields,
  planRefusals,
  planShape,
  planTold,
} from "./sequential-fields.ts";
import { verb } from "./verb.ts";

const input = z
  .strictObject({
    ...planFields,
    prevalences: prevalences.describe("Shares of infested bees at which to tell what the plan does."),
    exponents: z
      .array(z.number().min(-20).max(20))
      .max(200)
      .default([-2, -1, -0.5, 0, 0.5, 1, 2])
      .describe("Wald's parameter h for his approximations: 1 at the low share of the lines, −1 at the high one."),
  })
  .refine(endIsForNominal.fits, endIsForNominal.told)
  .refine(cutIsForNominal.fits, cutIsForNominal.told);

const row = z.strictObject({
  prevalence: z.number().describe("true share of infested bees"),
  low: z.number().describe("chance of low"),
  high: z.number().describe("chance of high"),
  undecided: z.number(),
  averageBees: z.number(),
  sdBees: z.number().describe("standard deviation of the bees read"),
  reachesEnd: z.number().describe("chance that the last bee is read and neither line is crossed"),
  fixedLow: z.number().nullable().describe("chance of low by the fixed number of bees"),
});

const output = z.strictObject({
  plan: planShape,
  alpha: z.number().describe("exact chance of calling high at the low share"),
  beta: z.number().describe("exact chance of calling low at the high share"),
  lines: linesShape,
  looks,
  atLow: row,
  atHigh: row,
  atWorst: row.describe("where most bees are read on average, to the nearest 0.001"),
  fixed: z
    .strictObject({ bees: z.number().int(), most: z.number().int(), alpha: z.number(), beta: z.number() })
    .nullable()
    .describe(
      "the smallest fixed number with the errors asked for, low up to `most` infested; null where 10 000 do not do",
    ),
  saved: z
    .strictObject({ atLow: z.number(), atHigh: z.number(), atWorst: z.number() })
    .nullable()
    .describe("bees saved on average against the fixed number"),
  characteristics: z.array(row).describe("exact, at the shares asked for"),
  wald: z
    .array(z.strictObject({ h: z.number(), prevalence: z.number(), low: z.number(), averageBees: z.number() }))
    .describe("Wald's approximations for the same lines, which know no first look, no batches and no end"),
  method: z.string(),
  rule: z.string(),
});

export const sequentialPlan = verb({
  name: "sequential-plan",
  family: "sequential",
  summary: "When reading may stop, how often that errs, and how many bees it takes.",
  assumptions: [
    "Bees are drawn at random and read one after another; bees that cluster make every error likelier.",
    "The bench finds every infested bee it reads.",
    "Chances and averages are exact, by recursion over bees read and bees found; Wald's approximations stand beside them.",
    "The plan searched for is the best of all pairs of lines with Wald's slope, all ends and all cuts; by fewest bees on average at the share, low or high, where more are read.",
  ],
  source:
    "Wald 1947, Sequential Analysis, chapters 3 to 5; Wald & Wolfowitz 1948 (fewest bees at both shares); all from memory. Exact recursion.",
  example: { lowPrevalence: 0.05, highPrevalence: 0.2, alpha: 0.1, beta: 0.1, maxBees: 50 },
  input,
  output,
  refusals: planRefusals,
  run: (asked, progress): Result<z.output<typeof output>> => {
    const made = planAsked(asked, progress);
    if (!made.ok) return made;
    const plan = made.value;
    const { atLow, atHigh, atWorst, fixed, saved } = judgedPlan(plan, asked);
    const told = (rows: Rows) => besideFixed(rows, fixed);
    const wald = waldCurve(plan.design, asked.exponents);
    if (!wald.ok) return wald;
    const [low, high, worst] = told([atLow, atHigh, atWorst]);
    if (!low || !high || !worst) throw new Error("three rows give three rows");
    return answered({
      plan: planTold(plan),
      alpha: atLow.high,
      beta: atHigh.low,
      lines: { ...plan.lines },
      looks: [...plan.looks],
      atLow: low,
      atHigh: high,
      atWorst: worst,
      fixed,
      saved,
      characteristics: told(sequentialCharacteristics(plan, asked.prevalences)),
      wald: [...wald.value],
      method: asked.errors === "actual" ? "fewest-bees" : "wald-lines",
      rule: asked.errors === "actual" ? "SD251" : "SD152",
    });
  },
});

type Rows = ReturnType<typeof sequentialCharacteristics>;

function besideFixed(rows: Rows, fixed: { readonly bees: number; readonly most: number } | null) {
  const fixedLow = fixed && fixedPlanLow({ ...fixed, prevalences: rows.map(({ prevalence }) => prevalence) });
  return rows.map((each, index) => ({ ...each, fixedLow: fixedLow?.[index] ?? null }));
}
