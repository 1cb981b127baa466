/** `scores`: chances that were stated, against what came of them. */
import * as z from "zod";
import { answered, type Problem, type Result } from "../../units/index.ts";
import { calibration } from "../differential/index.ts";
import { level, share } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const input = z.strictObject({
  cases: z
    .array(
      z.strictObject({
        stated: share.describe("Chance that was stated beforehand."),
        cameTrue: z.number().int().min(0).max(1).describe("1 when it came true, 0 when not."),
      }),
    )
    .min(1)
    .max(5000)
    .describe("One for each statement whose truth became known."),
  bins: z.number().int().min(1).max(50).default(10).describe("Number of bins in which said and seen are compared."),
  level: level.default(0.95).describe("Probability content of the interval of each bin."),
});

const output = z.strictObject({
  cases: z.number().int(),
  cameTrue: z.number().int(),
  brier: z
    .number()
    .describe("mean square of stated less what came: 0 is perfect, 0.25 is what always saying one half earns"),
  brierSkill: z.number().nullable().describe("1 − brier over that of always saying the overall share"),
  logLoss: z.number().describe("mean of −ln of the chance given to what came"),
  held: z.number().int().describe("cases whose 0 or 1 was held inside 1e-15 of it for the logarithm"),
  expectedError: z.number().describe("mean distance of said and seen, bins of equal width"),
  expectedErrorEqualMass: z.number().describe("the same, bins with equal numbers of cases"),
  largestError: z.number().describe("largest distance in one bin of equal width"),
  reliability: z.number().describe("Murphy's part for said against seen: smaller is better"),
  resolution: z.number().describe("Murphy's part for telling cases apart: larger is better"),
  uncertainty: z.number().describe("Murphy's part of the cases themselves"),
  areaUnderCurve: z
    .number()
    .nullable()
    .describe("chance that a case that came true was given more than one that did not"),
  slope: z.number().nullable().describe("of the logit; below 1: stated too boldly"),
  intercept: z.number().nullable().describe("of the logit, beside the slope; above 0: stated too low"),
  inTheLarge: z.number().nullable().describe("shift of the logit at slope 1"),
  bins: z.array(
    z.strictObject({
      from: z.number(),
      to: z.number(),
      cases: z.number().int(),
      meanStated: z.number(),
      observed: z.number().describe("share that came true"),
      low: z.number(),
      high: z.number(),
      level: z.number(),
      method: z.string(),
    }),
  ),
  method: z.string(),
  rule: z.string(),
});

type Answer = Deep<z.output<typeof output>>;

export const scores = verb({
  name: "scores",
  family: "readers",
  summary: "Chances stated beforehand against what came true.",
  assumptions: [
    "Each statement was made before its truth was known, and all that became known are in the list.",
    "With few cases in a bin, said and seen differ by chance alone: the range of the bin shows how far.",
    "A score of one list says nothing of other cases.",
  ],
  source:
    "Brier 1950; Murphy 1973; Cox 1958 (slope and intercept); Hanley & McNeil 1982 (area by ranks); Clopper & Pearson 1934 (bins).",
  example: {
    cases: (
      [
        [0.03, 0],
        [0.05, 0],
        [0.08, 0],
        [0.1, 1],
        [0.12, 0],
        [0.18, 0],
        [0.22, 0],
        [0.25, 0],
        [0.3, 1],
        [0.35, 0],
        [0.38, 0],
        [0.4, 1],
        [0.45, 0],
        [0.48, 1],
        [0.5, 0],
        [0.55, 1],
        [0.6, 1],
        [0.62, 0],
        [0.7, 1],
        [0.75, 1],
        [0.8, 0],
        [0.85, 1],
        [0.9, 1],
        [0.95, 1],
      ] as const
    ).map(([stated, cameTrue]) => ({ stated, cameTrue })),
    bins: 5,
  },
  input,
  output,
  run: ({ cases, bins, level }): Result<Answer> => {
    const outcomes = cases.map(({ cameTrue }) => cameTrue === 1);
    const found = calibration({ stated: cases.map(({ stated }) => stated), outcomes, bins, level });
    if (!found.ok) return found;
    const { murphy, recalibration, brierSkill, areaUnderCurve, inTheLarge, bins: filled, ...plain } = found.value;
    const parts: readonly Result<unknown>[] = [brierSkill, areaUnderCurve, inTheLarge, recalibration];
    return answered(
      {
        cases: cases.length,
        cameTrue: outcomes.filter(Boolean).length,
        ...plain,
        ...murphy,
        brierSkill: known(brierSkill),
        areaUnderCurve: known(areaUnderCurve),
        slope: recalibration.ok ? recalibration.value.slope : null,
        intercept: recalibration.ok ? recalibration.value.intercept : null,
        inTheLarge: known(inTheLarge),
        bins: filled.map(({ bin, n, meanStated, observed: { value, low, high, level: content, method } }) => ({
          from: bin / bins,
          to: (bin + 1) / bins,
          cases: n,
          meanStated,
          observed: value,
          low,
          high,
          level: content,
          method,
        })),
        method: "brier-murphy",
        rule: "DX203",
      },
      once(parts.flatMap(({ problems }) => problems)),
    );
  },
});

const known = (result: Result<number>): number | null => (result.ok ? result.value : null);

/** One trouble of several parts is told once, at the list that was given. */
const once = (problems: readonly Problem[]): readonly Problem[] =>
  problems
    .filter((each, index) => problems.findIndex(({ code }) => code === each.code) === index)
    .map((each) => ({ ...each, field: "cases" }));
