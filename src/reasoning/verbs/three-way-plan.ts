/** `three-way-plan`: light, moderate or severe, told by two sequential plans over the same bees. */
import * as z from "zod";
import { answered, type Problem, type Result } from "../../units/index.ts";
import { threeWayPlan as planOf, threeWayCharacteristics } from "../sampling/index.ts";
import { openShare, prevalences } from "./fields.ts";
import { linesShape, readingFields } from "./sequential-fields.ts";
import { verb } from "./verb.ts";

const input = z
  .strictObject({
    lightShare: openShare.describe("A share of infested bees that should be called light."),
    moderateFrom: openShare.describe("The smallest share that should be called moderate."),
    moderateTo: openShare.describe("The largest share that should be called moderate."),
    severeShare: openShare.describe("A share that should be called severe."),
    ...readingFields,
    alpha: openShare.default(0.1).describe("Nominal chance that a line calls the higher answer at its lower share."),
    beta: openShare.default(0.1).describe("Nominal chance that a line calls the lower answer at its higher share."),
    atEnd: z
      .enum(["midline", "undecided"])
      .default("midline")
      .describe("What a line still open says when the last bee is read."),
    prevalences: prevalences.describe("Shares of infested bees at which to tell what the plan does."),
  })
  .refine(({ lightShare, moderateFrom }) => lightShare < moderateFrom, {
    message: "above the share called light",
    path: ["moderateFrom"],
  })
  .refine(({ moderateTo, severeShare }) => moderateTo < severeShare, {
    message: "above the largest share called moderate",
    path: ["severeShare"],
  });

const row = z.strictObject({
  prevalence: z.number().describe("true share of infested bees"),
  light: z.number(),
  moderate: z.number(),
  severe: z.number(),
  contradictory: z.number().describe("chance that the two plans contradict each other"),
  undecided: z.number(),
  averageBees: z.number(),
  reachesEnd: z.number().describe("chance that the last bee is read with a plan still open"),
});

const output = z.strictObject({
  lower: linesShape.describe("the lines between light and moderate"),
  upper: linesShape.describe("the lines between moderate and severe"),
  looks: z
    .array(
      z.strictObject({
        bees: z.number().int(),
        light: z.number().int().nullable().describe("light with so many infested or fewer"),
        notLight: z.number().int().nullable().describe("moderate or severe with so many or more"),
        notSevere: z.number().int().nullable().describe("light or moderate with so many or fewer"),
        severe: z.number().int().nullable().describe("severe with so many or more"),
      }),
    )
    .describe(
      "the counts at which each plan speaks; it keeps what it said first, and reading ends when both have spoken",
    ),
  atShares: z.array(row).describe("exact, at the four shares of the question"),
  atWorst: row.describe("where most bees are read on average, to the nearest 0.01"),
  characteristics: z.array(row).describe("exact, at the shares asked for"),
  method: z.string(),
  rule: z.string(),
});

export const threeWayPlan = verb({
  name: "three-way-plan",
  family: "sequential",
  summary: "Light, moderate or severe: two plans read side by side over the same bees.",
  assumptions: [
    "Each plan keeps what it said first; reading ends when both have spoken or at the last bee.",
    "The chances of error asked for are nominal; what the plans really do is told exactly.",
    "Bees are drawn independently, and the bench finds every infested bee it reads.",
  ],
  source: "Wald 1947; Armitage 1950 (three answers by two tests); both from memory. Exact recursion.",
  example: { lightShare: 0.05, moderateFrom: 0.15, moderateTo: 0.25, severeShare: 0.4, maxBees: 100 },
  input,
  output,
  run: (asked, progress): Result<z.output<typeof output>> => {
    const { lightShare, moderateFrom, moderateTo, severeShare, alpha, beta } = asked;
    const { maxBees, minBees, batch, atEnd } = asked;
    const made = planOf({
      lower: { lowPrevalence: lightShare, highPrevalence: moderateFrom, alpha, beta },
      upper: { lowPrevalence: moderateTo, highPrevalence: severeShare, alpha, beta },
      maxBees,
      minBees,
      batch,
      atEnd,
    });
    if (!made.ok) return { ok: false, problems: made.problems.map(atField) };
    const { lower, upper } = made.value;
    const count = hundredths.length + 4 + asked.prevalences.length;
    let done = 0;
    const rows = (shares: readonly number[]) =>
      shares.flatMap((each) => {
        progress(done / count);
        done += 1;
        return threeWayCharacteristics(made.value, [each]);
      });
    const atShares = rows([lightShare, moderateFrom, moderateTo, severeShare]);
    return answered({
      lower: { ...lower.lines },
      upper: { ...upper.lines },
      looks: lower.looks.map(({ bees, low, high }, index) => ({
        bees,
        light: low,
        notLight: high,
        notSevere: upper.looks[index]?.low ?? null,
        severe: upper.looks[index]?.high ?? null,
      })),
      atShares,
      atWorst: [...rows(hundredths), ...atShares].reduce((most, each) =>
        each.averageBees > most.averageBees ? each : most,
      ),
      characteristics: rows(asked.prevalences),
      method: "two-plans",
      rule: "SD154",
    });
  },
});

const hundredths = Array.from({ length: 99 }, (_, index) => (index + 1) / 100);

/** The upper pair of shares is two fields here. */
const atField = (each: Problem): Problem => (each.field === "upper" ? { ...each, field: "moderateTo" } : each);
