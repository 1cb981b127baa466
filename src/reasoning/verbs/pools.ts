/** `pools`: the share of bees infested, from bees tested together, by every estimate and every limit. */
import * as z from "zod";
import { answered, blocked, type Estimate, type Problem, problem, type Result } from "../../units/index.ts";
import {
  burrowsPrevalence,
  equalPoolLimits,
  imperfectPools,
  oneSize,
  type PooledLimits,
  type PoolGroup,
  pooledCorrections,
  pooledLikelihoodLimits,
  pooledPrevalence,
  pooledScoreLimits,
  pooledSkewScoreLimits,
  poolTotals,
} from "../bench/index.ts";
import { upperLimitOfZero } from "../sampling/index.ts";
import { count, estimate, level, positiveShare } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const group = z
  .strictObject({
    positive: count.describe("Pools positive."),
    pools: count.min(1).max(100_000).describe("Pools tested."),
    size: count.min(1).max(10_000).describe("Bees in each of these pools."),
  })
  .refine(({ positive, pools }) => positive <= pools, {
    message: "no more than pools were tested",
    path: ["positive"],
  });

const input = z
  .strictObject({
    groups: z.array(group).min(1).max(50).describe("Pools by their size, one row for each size."),
    level: level.default(0.95).describe("Probability content of the limits."),
    sensitivity: positiveShare
      .exactOptional()
      .describe("Share of pools with an infested bee that test positive. Left out: the test of a pool does not err."),
    specificity: positiveShare
      .exactOptional()
      .describe("Share of pools without one that test negative; goes with the sensitivity."),
  })
  .refine(({ sensitivity, specificity }) => (sensitivity === undefined) === (specificity === undefined), {
    message: "both sensitivity and specificity, or neither",
    path: ["specificity"],
  });

const points = ["maximum-likelihood", "gart", "firth", "burrows"] as const;
const anySizes = ["skew-score", "score", "likelihood"] as const;
const oneSizeOnly = ["clopper-pearson", "blaker", "mid-p", "wilson", "jeffreys"] as const;

const output = z.strictObject({
  estimate: estimate
    .nullable()
    .describe(
      "to report: Firth's estimate with exact limits for pools of one size, else skew-corrected score or likelihood limits; null when every pool is positive",
    ),
  points: z
    .array(z.strictObject({ method: z.enum(points), value: z.number().nullable() }))
    .describe("the likeliest, and three with less bias; Burrows's for one size only; null where there is none"),
  standardError: z.number().nullable().describe("of the likeliest"),
  minimumInfectionRate: z.number().describe("positive pools per bee: counts one infested bee in each, so too small"),
  limits: z
    .array(z.strictObject({ method: z.string(), low: z.number().nullable(), high: z.number().nullable() }))
    .describe("by each method that these pools allow; null where it has none"),
  imperfect: z
    .strictObject({
      value: z.number(),
      low: z.number(),
      high: z.number(),
      level: z.number(),
      rawPoolShare: z.number().describe("share of pools truly positive before it is cut to 0–1"),
      method: z.string(),
      rule: z.string(),
    })
    .nullable()
    .describe(
      "corrected for a test of the pool that errs, pools of one size; null where it was not asked or cannot be",
    ),
  positive: z.number().int(),
  pools: z.number().int(),
  bees: z.number().int(),
  level: z.number(),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;
type Limits = Answer["limits"][number];

export const pools = verb({
  name: "pools",
  family: "pools",
  summary: "The share of bees infested, from bees tested together.",
  assumptions: [
    "Bees were drawn at random and put into pools at random.",
    "A pool is positive when at least one of its bees is infested; the test of a pool errs only as given, however many infested bees it holds.",
    "Every pool positive gives no estimate: shares above some bound fit alike.",
    "Firth's estimate is the one to report; the likeliest is too large on average.",
  ],
  source:
    "Farrington 1992 (likelihood); Gart 1991, Burrows 1987, Hepworth & Biggerstaff 2017 (less bias); Tebbs & Bilder 2004, Gart 1991, Hepworth 2005 (limits); Cowling, Gardner & Johnson 1999 (imperfect test).",
  example: { groups: [{ positive: 3, pools: 24, size: 7 }] },
  input,
  output,
  run,
});

function run({ groups, level, sensitivity, specificity }: Input): Result<Answer> {
  const likeliest = pooledPrevalence(groups);
  if (!likeliest.ok) return likeliest;
  const { maximumLikelihood, minimumInfectionRate } = likeliest.value;
  const totals = poolTotals(groups);
  const one = oneSize(groups);
  const corrections = pooledCorrections(groups);
  const burrows = burrowsPrevalence(groups);
  const values = {
    "maximum-likelihood": maximumLikelihood,
    gart: known(corrections)?.gart ?? null,
    firth: known(corrections)?.firth ?? null,
    burrows: known(burrows),
  };
  const zero =
    totals.positive === 0 ? upperLimitOfZero({ examined: totals.bees, level, sides: "two", sensitivity: 1 }) : null;
  const found = limitsOf(groups, { level, one: one.ok, zero: zero === null ? null : known(zero) });
  const errs =
    sensitivity === undefined || specificity === undefined
      ? null
      : one.ok
        ? imperfectPools({ ...one.value, sensitivity, specificity, level })
        : blocked(...one.problems);
  if (errs !== null && !errs.ok && one.ok) return blocked(...errs.problems);
  const corrected = errs === null ? null : known(errs);
  return answered(
    {
      estimate: zero === null ? reported(values.firth, found.limits, { level, n: totals.bees }) : known(zero),
      points: points.map((method) => ({ method, value: values[method] })),
      standardError: known(corrections)?.standardError ?? null,
      minimumInfectionRate,
      limits: found.limits,
      imperfect:
        corrected === null
          ? null
          : {
              value: corrected.value,
              ...corrected.limits,
              level,
              rawPoolShare: corrected.rawPoolShare,
              method: "rogan-gladen",
              rule: "BE114",
            },
      ...totals,
      level,
      method: "maximum-likelihood",
      rule: "BE108",
    },
    atGroups([...likeliest.problems, ...found.problems, ...(errs === null ? [] : errs.problems)]),
  );
}

/** Limits by every method that the sizes allow, and why an end is missing. */
function limitsOf(
  groups: readonly PoolGroup[],
  { level, one, zero }: { readonly level: number; readonly one: boolean; readonly zero: Estimate | null },
): { readonly limits: readonly Limits[]; readonly problems: readonly Problem[] } {
  const request = { groups, level };
  const exact = one
    ? oneSizeOnly.map((method): Limits => ({ method, ...(known(equalPoolLimits({ ...request, method })) ?? none) }))
    : [];
  const ends = { "skew-score": pooledSkewScoreLimits(request), score: pooledScoreLimits(request) };
  const byScore = { "skew-score": endsOf(ends["skew-score"]), score: endsOf(ends.score) };
  const likelihood = known(pooledLikelihoodLimits(request)) ?? none;
  const general = anySizes.map(
    (method): Limits => ({ method, ...(method === "likelihood" ? likelihood : byScore[method]) }),
  );
  const missing = Object.values(ends).flatMap((each) => (each.ok ? [each.value.low, each.value.high] : []));
  const beyond = missing.flatMap((each) => (each.ok ? [] : each.problems.slice(0, 1)));
  const atZero = zero === null ? [] : [{ method: zero.method, low: zero.low, high: zero.high }];
  return { limits: [...atZero, ...exact, ...general], problems: beyond.slice(0, 1) };
}

const none = { low: null, high: null } as const;

const endsOf = (found: Result<PooledLimits>): Omit<Limits, "method"> =>
  found.ok ? { low: known(found.value.low), high: known(found.value.high) } : none;

/** Firth's estimate with the first limits that have both ends, in the order of the methods; null where there is none. */
function reported(
  value: number | null,
  limits: readonly Limits[],
  { level, n }: { readonly level: number; readonly n: number },
): Estimate | null {
  const whole = limits.find(({ low, high }) => low !== null && high !== null);
  if (value === null || !whole || whole.low === null || whole.high === null) return null;
  const { method, low, high } = whole;
  return { value, low, high, level, interval: "confidence", method: `firth, ${method}`, rule: "BE108", n };
}

const known = <T>(result: Result<T>): T | null => (result.ok ? result.value : null);

/** The steps speak of a column; people know the rows. What was refused in part is no refusal of the whole. */
const atGroups = (problems: readonly Problem[]): readonly Problem[] =>
  problems.map(({ code, severity, slots }) =>
    problem(code, severity === "blocked" ? "unknown" : severity, "groups", { slots }),
  );
