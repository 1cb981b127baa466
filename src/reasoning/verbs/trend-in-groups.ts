/** `trend-in-groups`: does a share change over periods, when the counts of one colony or apiary are alike? */
import * as z from "zod";
import { answered, type Estimate, type Result } from "../../units/index.ts";
import {
  type GroupedCount,
  logisticRandomIntercept,
  oddsRatio,
  type RandomInterceptFit,
  randomInterceptTests,
  typicalShare,
} from "../surveillance/index.ts";
import { count, level } from "./fields.ts";
import { underField } from "./part.ts";
import { type Deep, verb } from "./verb.ts";

const mostRows = 1000;
const mostPeriods = 20;

const input = z
  .strictObject({
    counts: z
      .array(
        z.strictObject({
          group: z.number().int().min(0).max(1_000_000).describe("number of the colony or apiary"),
          positive: count.max(100_000),
          examined: count.max(100_000),
          period: z.number().min(-1e4).max(1e4).describe("year, month or round"),
        }),
      )
      .max(mostRows)
      .describe("One for each colony and period: colony, bees with mites, bees read, period."),
    shape: z
      .enum(["steps", "line"])
      .default("steps")
      .describe(
        "steps: each period by itself, against the first; line: the same change of the odds with every period.",
      ),
    level: level.default(0.95).describe("Probability content of each interval."),
  })
  .refine(({ counts }) => counts.every(({ positive, examined }) => positive <= examined), {
    message: "no more positive than examined in any line",
    path: ["counts"],
  })
  .refine(({ counts }) => periodsOf(counts).length >= 2 && periodsOf(counts).length <= mostPeriods, {
    message: `2 to ${mostPeriods} periods`,
    path: ["counts"],
  });

type Counts = readonly {
  readonly group: number;
  readonly positive: number;
  readonly examined: number;
  readonly period: number;
}[];

/** Periods in which something was read, in order. */
const periodsOf = (counts: Counts): readonly number[] =>
  [...new Set(counts.filter(({ examined }) => examined > 0).map(({ period }) => period))].sort((a, b) => a - b);

const limits = { value: z.number(), low: z.number(), high: z.number() };

const output = z.strictObject({
  shares: z
    .array(z.strictObject({ period: z.number(), ...limits, found: z.number().describe("over all groups, as counted") }))
    .describe("share in a typical group, by period"),
  oddsRatios: z
    .array(z.strictObject({ period: z.number().nullable(), ...limits }))
    .describe("steps: against the first period; line: per unit of period, one row without a period"),
  change: z
    .strictObject({ statistic: z.number(), degrees: z.number().int(), pValue: z.number() })
    .describe("likelihood ratio of shares that change to shares that do not"),
  groupsDiffer: z
    .strictObject({ statistic: z.number(), pValue: z.number().describe("half of chi-square's") })
    .describe("the same of groups that differ"),
  sigma: z.number().describe("standard deviation between groups on the logit scale"),
  coefficients: z.array(z.strictObject({ estimate: z.number(), standardError: z.number() })).describe("logit scale"),
  logLikelihood: z.number(),
  groups: z.number().int(),
  level: z.number(),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;

export const trendInGroups = verb({
  name: "trend-in-groups",
  family: "places",
  summary: "Whether a share changes over periods in the same colonies or apiaries.",
  assumptions: [
    "Groups differ by a shift on the logit scale, drawn from a normal distribution; within a group the change is the same.",
    "Bees are independent given their group and period.",
    "Shares and odds ratios are those of a typical group, not the average over all.",
  ],
  source:
    "Adaptive Gauss–Hermite quadrature, 25 nodes: Pinheiro & Bates 1995 (from memory); Self & Liang 1987 for the test of the groups (from memory).",
  example: {
    counts: [
      [1, 2, 30, 1],
      [1, 5, 30, 2],
      [1, 6, 30, 3],
      [2, 9, 30, 1],
      [2, 12, 28, 2],
      [2, 15, 30, 3],
      [3, 1, 30, 1],
      [3, 1, 25, 2],
      [3, 4, 30, 3],
      [4, 4, 30, 1],
      [4, 9, 30, 2],
      [4, 8, 30, 3],
    ].map(([group = 0, positive = 0, examined = 0, period = 0]) => ({ group, positive, examined, period })),
  },
  input,
  output,
  refusals: ["groups-all-or-none", "covariates-separate"],
  run: (given, progress) => underField(run(given, progress), "rows", "counts"),
});

function run({ counts, shape, level }: Input, progress: (share: number) => void): Result<Answer> {
  const periods = periodsOf(counts);
  const fitOf = (columns: (period: number) => readonly number[]): Result<RandomInterceptFit> =>
    logisticRandomIntercept(
      counts.map((row): GroupedCount => ({ ...row, group: String(row.group), covariates: columns(row.period) })),
      { level },
    );
  /** The first column stands for the share at `origin`. */
  const from = (origin: number) => (period: number) =>
    shape === "line"
      ? [1, period - origin]
      : [1, ...periods.filter((each) => each !== origin).map((each) => Number(each === period))];
  const fit = fitOf(from(periods[0] ?? 0));
  if (!fit.ok) return fit;
  const part = fitOf(() => [1]);
  if (!part.ok) return part;
  const tests = randomInterceptTests(fit.value, part.value);
  const intercepts: Estimate[] = [];
  for (const [index, period] of periods.entries()) {
    const moved = index === 0 ? fit : fitOf(from(period));
    if (!moved.ok) return moved;
    intercepts.push(...moved.value.coefficients.slice(0, 1));
    progress((index + 1) / periods.length);
  }
  return answered(
    {
      shares: periods.flatMap((period, index) => {
        const intercept = intercepts[index];
        if (!intercept) return [];
        const { value, low, high } = typicalShare(intercept);
        return [{ period, value, low, high, found: shareFound(counts, period) }];
      }),
      oddsRatios: fit.value.coefficients.slice(1).map((each, index) => {
        const { value, low, high } = oddsRatio(each);
        return { period: shape === "line" ? null : (periods[index + 1] ?? null), value, low, high };
      }),
      change: tests.covariates,
      groupsDiffer: tests.groups,
      sigma: fit.value.sigma,
      coefficients: fit.value.coefficients.map((each, index) => ({
        estimate: each.value,
        standardError: fit.value.standardErrors[index] ?? 0,
      })),
      logLikelihood: fit.value.logLikelihood,
      groups: new Set(counts.filter(({ examined }) => examined > 0).map(({ group }) => group)).size,
      level,
      method: "logistic-random-intercept",
      rule: "SV166",
    },
    fit.problems,
  );
}

function shareFound(counts: Counts, period: number): number {
  const here = counts.filter((each) => each.period === period);
  const sum = (of: (each: Counts[number]) => number) => here.reduce((total, each) => total + of(each), 0);
  return sum(({ positive }) => positive) / sum(({ examined }) => examined);
}
