/** `compare-mite-counts`: mites per bee of several stocks, apiaries or treatments: how many times as many, and is it chance? */
import * as z from "zod";
import { answered, type Problem, type Result } from "../../units/index.ts";
import { type CountFit, compareCountFits, fitCountRegression, rateRatios } from "../bench/index.ts";
import { count, estimate, level } from "./fields.ts";
import { foundOf, noticesOf } from "./part.ts";
import { type Deep, verb } from "./verb.ts";

const mostBees = 5000;
const mostGroups = 20;

const group = z.number().int().min(0).max(999);

const input = z
  .strictObject({
    counts: z
      .array(
        z.strictObject({
          group: group.describe("number of the stock, apiary or treatment"),
          mites: count.max(10_000),
          bees: count.max(mostBees).default(1).describe("bees of the group with so many mites"),
        }),
      )
      .max(mostBees)
      .describe("One for each bee, or each number of mites: group, mites in a bee, bees with so many."),
    against: group.exactOptional().describe("Group that the others are held against. Left out: the lowest number."),
    level: level.default(0.95).describe("Probability content of each interval."),
  })
  .refine(({ counts }) => counts.reduce((sum, { bees }) => sum + bees, 0) <= mostBees, {
    message: `no more than ${mostBees} bees in all`,
    path: ["counts"],
  })
  .refine(({ counts }) => between(groupsIn(counts).length, 2, mostGroups), {
    message: `bees of 2 to ${mostGroups} groups`,
    path: ["counts"],
  })
  .refine(({ counts, against }) => against === undefined || groupsIn(counts).includes(against), {
    message: "the number of one of the groups",
    path: ["against"],
  });

const between = (value: number, low: number, high: number): boolean => value >= low && value <= high;

type Rows = readonly { readonly group: number; readonly mites: number; readonly bees: number }[];

/** Numbers of the groups that have bees, lowest first. */
const groupsIn = (counts: Rows): readonly number[] =>
  [...new Set(counts.filter(({ bees }) => bees > 0).map((each) => each.group))].sort((a, b) => a - b);

/** Bees of one group with as many mites as one row, in one order; rows without bees are none. */
function alikeTogether(counts: Rows): Rows {
  const together = new Map<string, Rows[number]>();
  for (const each of counts) {
    if (each.bees === 0) continue;
    const key = `${each.group} ${each.mites}`;
    together.set(key, { ...each, bees: each.bees + (together.get(key)?.bees ?? 0) });
  }
  return [...together.values()].sort((a, b) => a.group - b.group || a.mites - b.mites);
}

const output = z.strictObject({
  groups: z
    .array(
      z.strictObject({
        group: z.number().int(),
        bees: z.number().int(),
        mites: z.number().int(),
        mean: z.number().describe("mites per bee"),
        low: z.number().nullable(),
        high: z.number().nullable(),
      }),
    )
    .describe("limits by the fit; null where there is none"),
  against: z.number().int(),
  ratios: z
    .array(z.strictObject({ group: z.number().int(), value: z.number(), low: z.number(), high: z.number() }))
    .describe("how many times as many mites per bee as the group held against; empty without a fit"),
  test: z
    .strictObject({ statistic: z.number(), degrees: z.number().int(), pValue: z.number() })
    .nullable()
    .describe("likelihood ratio of groups that differ to groups that do not"),
  fit: z
    .strictObject({
      aggregation: z.number().describe("one for all groups"),
      coefficients: z.array(z.number()).describe("log mean of the group held against, then log ratios"),
      standardErrors: z.array(z.number()),
      logLikelihood: z.number(),
      logLikelihoodPoisson: z.number(),
    })
    .nullable()
    .describe("null where it has no maximum"),
  ranges: estimate.nullable().describe("mean of the group held against, with the method of all limits here"),
  level: z.number(),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;

const example: z.input<typeof input> = {
  counts: [
    [1, 0, 11],
    [1, 1, 4],
    [1, 2, 2],
    [1, 3, 1],
    [1, 4, 1],
    [1, 5, 1],
    [2, 0, 6],
    [2, 1, 3],
    [2, 2, 2],
    [2, 3, 2],
    [2, 6, 4],
    [2, 12, 3],
  ].map(([of = 0, mites = 0, bees = 0]) => ({ group: of, mites, bees })),
};

export const compareMiteCounts = verb({
  name: "compare-mite-counts",
  family: "counts",
  summary: "Mites per bee compared between stocks, apiaries or treatments.",
  assumptions: [
    "Bees are independent of each other: where a group is one colony, the difference is that of two colonies, not of two stocks.",
    "Negative binomial law with one aggregation for all groups.",
    "Limits are Wald's on the logarithm and take the aggregation as known.",
  ],
  source: "Lawless 1987, Canadian Journal of Statistics 15:209 (regression); Wilks 1938 (likelihood-ratio test).",
  example,
  input,
  output,
  run,
});

function run({ counts, against, level }: Input): Result<Answer> {
  const groups = groupsIn(counts);
  const first = against ?? groups[0] ?? 0;
  const others = groups.filter((each) => each !== first);
  const rows = alikeTogether(counts);
  const fitOf = (columns: (group: number) => readonly number[]): Result<CountFit> =>
    fitCountRegression({
      counts: rows.map((each) => each.mites),
      design: rows.map((each) => columns(each.group)),
      bees: rows.map((each) => each.bees),
    });
  const differing = fitOf((of) => [1, ...others.map((each) => Number(each === of))]);
  const stops = differing.problems.filter(({ code }) => code === "no-mites-counted" || code === "nothing-examined");
  if (stops.length > 0) return { ok: false, problems: stops };
  const fit = foundOf(differing);
  const ratios = fit ? rateRatios(fit, level) : [];
  // The same fit with a mean for each group in place of ratios, for the limits of the means.
  const means = fit ? foundOf(fitOf((of) => groups.map((each) => Number(each === of)))) : null;
  const limits = means ? rateRatios(means, level) : [];
  const alike = fitOf(() => [1]);
  const same = foundOf(alike);
  return answered(
    {
      groups: groups.map((each, index) => {
        const own = rows.filter((row) => row.group === each);
        const bees = own.reduce((total, row) => total + row.bees, 0);
        const mites = own.reduce((total, row) => total + row.bees * row.mites, 0);
        const { low = null, high = null } = limits[index] ?? {};
        return { group: each, bees, mites, mean: mites / bees, low, high };
      }),
      against: first,
      ratios: others.flatMap((each, index) => {
        const ratio = ratios[index + 1];
        return ratio ? [{ group: each, value: ratio.value, low: ratio.low, high: ratio.high }] : [];
      }),
      test: fit && same && testOf(fit, same),
      fit: fit && {
        aggregation: fit.theta,
        coefficients: fit.coefficients,
        standardErrors: fit.standardErrors,
        logLikelihood: fit.logLikelihood,
        logLikelihoodPoisson: fit.logLikelihoodPoisson,
      },
      ranges: ratios[0] ?? null,
      level,
      method: "nb2-regression",
      rule: "BE208",
    },
    noticesOf(differing).map((each): Problem => ({ ...each, field: "counts" })),
  );
}

function testOf(larger: CountFit, part: CountFit) {
  const { statistic, df, pValue } = compareCountFits(larger, part);
  return { statistic, degrees: df, pValue };
}
