/** What the verbs of sequential reading share: the plan that is asked for, and the plan that is told. */
import * as z from "zod";
import { answered, type Result } from "../../units/index.ts";
import { fewestBeesPlan, type SequentialPlan, sequentialPlan } from "../sampling/index.ts";
import { count, openShare } from "./fields.ts";
import type { Progress } from "./verb.ts";

/** Nobody asks for a rarer error, and the search knows no lines that err far less. */
const error = openShare.min(1e-9);

/** How reading goes on, whatever is to be told apart. */
export const readingFields = {
  alpha: error.default(0.1).describe("Largest chance of calling high at the low share."),
  beta: error.default(0.1).describe("Largest chance of calling low at the high share."),
  maxBees: count.min(1).max(1000).describe("Bees at which reading ends whatever was found."),
  minBees: count.min(1).max(1000).default(1).describe("Bees read before the lines are first looked at."),
  batch: count.min(1).max(1000).default(1).describe("Bees read between two looks."),
};

/** A plan for one line between low and high. */
export const planFields = {
  lowPrevalence: openShare.min(1e-9).describe("A share of infested bees that should be called low."),
  highPrevalence: openShare.describe("A share of infested bees that should be called high."),
  ...readingFields,
  errors: z
    .enum(["actual", "nominal"])
    .default("actual")
    .describe(
      "actual: search the plan with the fewest bees whose exact errors, its end counted, are at most alpha and beta. nominal: Wald's lines for alpha and beta, whatever the errors then are.",
    ),
  atEnd: z
    .enum(["midline", "undecided"])
    .default("midline")
    .describe("What nominal lines say when the last bee is read and neither is crossed."),
  lowUpTo: count
    .exactOptional()
    .describe("In place of the midline: nominal lines say low at the last bee with so many infested or fewer."),
};

/** A cut of one's own belongs to lines of one's own. */
const ownEnd =
  "left out: a plan chosen for its exact errors ends in its own way; how the errors are kept must be nominal";

export const endIsForNominal = {
  fits: ({ errors, atEnd }: { readonly errors: string; readonly atEnd: string }): boolean =>
    errors === "nominal" || atEnd === "midline",
  told: { message: ownEnd, path: ["atEnd"] },
};

export const cutIsForNominal = {
  fits: ({ errors, lowUpTo }: { readonly errors: string; readonly lowUpTo?: number }): boolean =>
    errors === "nominal" || lowUpTo === undefined,
  told: { message: ownEnd, path: ["lowUpTo"] },
};

export interface AskedPlan {
  readonly lowPrevalence: number;
  readonly highPrevalence: number;
  readonly alpha: number;
  readonly beta: number;
  readonly maxBees: number;
  readonly minBees: number;
  readonly batch: number;
  readonly errors: "actual" | "nominal";
  readonly atEnd: "midline" | "undecided";
  readonly lowUpTo?: number;
}

/** The plan that is asked for: searched, or made from its lines. */
export function planAsked(asked: AskedPlan, progress: Progress): Result<SequentialPlan> {
  const { lowPrevalence, highPrevalence, alpha, beta, maxBees, minBees, batch, lowUpTo } = asked;
  const wanted = { lowPrevalence, highPrevalence, alpha, beta, maxBees, minBees, batch };
  if (asked.errors === "nominal")
    return sequentialPlan({ ...wanted, atEnd: lowUpTo === undefined ? asked.atEnd : { lowUpTo } });
  const found = fewestBeesPlan(wanted, progress);
  return found.ok ? answered(found.value.plan, found.problems) : found;
}

/** Refusals that are no fault of the question. */
export const planRefusals = ["sequential-plan-needs-more-bees", "sequential-plan-out-of-reach"] as const;

export const planShape = z.strictObject({
  lowPrevalence: z.number(),
  highPrevalence: z.number(),
  alpha: z.number().describe("nominal, for the lines"),
  beta: z.number().describe("nominal, for the lines"),
  minBees: z.number().int(),
  batch: z.number().int(),
  maxBees: z.number().int(),
  lowUpTo: z
    .number()
    .int()
    .nullable()
    .describe("at the last bee low with so many infested or fewer; null where undecided"),
});

/** The design of a plan with its end as a count. */
export function planTold({ design, lines }: SequentialPlan): z.output<typeof planShape> {
  const { lowPrevalence, highPrevalence, alpha, beta, minBees, batch, maxBees, atEnd } = design;
  const midline = Math.floor(lines.slope * maxBees + 1e-12);
  const lowUpTo = typeof atEnd === "object" ? atEnd.lowUpTo : atEnd === "midline" ? midline : null;
  return { lowPrevalence, highPrevalence, alpha, beta, minBees, batch, maxBees, lowUpTo };
}

export const linesShape = z.strictObject({
  slope: z.number(),
  lowIntercept: z.number().describe("low when infested ≤ this + slope·bees"),
  highIntercept: z.number().describe("high when infested ≥ this + slope·bees"),
  firstLow: z.number().int().describe("bees after which none infested first means low, no minimum thought of"),
  firstHigh: z.number().int().describe("bees after which all infested first means high, no minimum thought of"),
});

export const looks = z
  .array(
    z.strictObject({
      bees: z.number().int(),
      low: z.number().int().nullable().describe("low with so many infested or fewer; null while none is not yet low"),
      high: z.number().int().nullable().describe("high with so many infested or more; null while all is not yet high"),
    }),
  )
  .describe("the counts that stop the reading, one row for each number of bees at which one may stop");
