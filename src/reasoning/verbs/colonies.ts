/** `colonies`: counts of several colonies, or apiaries: the share over all of them, and how far they differ. */
import * as z from "zod";
import { answered, type Result } from "../../units/index.ts";
import { betaBinomialFit, clusterPrevalence, intraclassCorrelation, prevalence, readColonies } from "../bench/index.ts";
import { count, estimate, level } from "./fields.ts";
import { foundOf, noticesOf } from "./part.ts";
import { type Deep, verb } from "./verb.ts";

const input = z.strictObject({
  colonies: z
    .array(
      z.strictObject({
        positive: count.max(20_000).describe("bees with mites"),
        examined: count.max(20_000).describe("bees read; a colony without any is left out"),
      }),
    )
    .max(2000)
    .describe("One for each colony: bees with mites, bees read. For apiaries: colonies with mites, colonies tested."),
  level: level.default(0.95).describe("Probability content of each interval."),
});

const output = z.strictObject({
  colonies: z.number().int().describe("colonies with bees read"),
  positive: z.number().int(),
  examined: z.number().int(),
  share: z.number().describe("bees with mites of all bees read"),
  intervals: z.array(estimate).describe("of the mean bee: every bee read counts the same; empty where none differ"),
  fitted: z
    .strictObject({
      mean: estimate.describe("profile limits"),
      meanByLogit: estimate.describe("limits by the normal curve on the logit scale"),
    })
    .nullable()
    .describe("mean share by the beta-binomial fit; null where it has no maximum"),
  meanColony: estimate.nullable().describe("another target: every colony counts the same; null where none differ"),
  none: z
    .strictObject({ colonies: estimate, bees: estimate })
    .nullable()
    .describe("exact limits where none, or all, have mites: of colonies, and of bees as if they were independent"),
  intraclass: z
    .strictObject({
      byLikelihood: z.number().nullable(),
      byVariance: z.number().describe("analysis of variance; may lie below 0"),
      byFleissCuzick: z.number(),
    })
    .nullable()
    .describe("how alike bees of one colony are, 0 to 1"),
  designEffect: z
    .strictObject({
      byRatio: z.number().nullable().describe("variance of the share over that of as many bees drawn singly"),
      byMeanBees: z.number().describe("1 + (mean bees − 1)·ICC"),
      byUnequalBees: z.number().describe("with the sum of squares for unequal samples"),
      effectiveBees: z.number().nullable().describe("bees drawn singly that would tell as much"),
    })
    .nullable(),
  noSpread: z
    .strictObject({
      likelihoodRatio: z.number().nullable(),
      pValue: z.number().nullable().describe("half of chi-square's, as the spread cannot lie below 0"),
      chiSquare: z.number().describe("Pearson's"),
      degrees: z.number().int(),
      heterogeneity: z.number().describe("chi-square over its degrees"),
    })
    .nullable()
    .describe("test that colonies differ by chance alone"),
  fit: z
    .strictObject({
      a: z.number().nullable(),
      b: z.number().nullable(),
      logLikelihood: z.number(),
      logLikelihoodBinomial: z.number(),
      logitMean: z.number(),
      seLogitMean: z.number(),
      logitIntraclass: z.number().nullable(),
      seLogitIntraclass: z.number().nullable(),
    })
    .nullable()
    .describe("shapes and likelihoods of the beta-binomial fit"),
  each: z.array(estimate).describe("every colony by itself, exact"),
  method: z.string(),
  rule: z.string(),
});

type Answer = Deep<z.output<typeof output>>;
type Input = z.output<typeof input>;

export const colonies = verb({
  name: "colonies",
  family: "clusters",
  summary: "The share over several colonies or apiaries, and how far they differ.",
  assumptions: [
    "Colonies were drawn at random from many, and their bees at random from each.",
    "Bees of one colony are alike; the ranges over colonies know it, those of each colony need not.",
    "The beta-binomial fit takes the colonies' true shares as beta distributed; the other ranges assume no shape.",
    "Two targets: the mean bee, to which a colony counts by its bees, and the mean colony, to which each counts the same.",
    "Student's limits on the share itself may reach below 0 or above 1; they are shown as they come.",
  ],
  source:
    "Cochran 1977 (ratio; from memory); Korn & Graubard 1998 (from memory); Skellam 1948 (beta-binomial); Self & Liang 1987 (half of chi-square; from memory); Fleiss & Cuzick 1979 and Donald & Donner 1987 (intraclass correlation; from memory); Clopper & Pearson 1934.",
  example: {
    colonies: [
      { positive: 1, examined: 20 },
      { positive: 9, examined: 20 },
      { positive: 4, examined: 25 },
      { positive: 0, examined: 18 },
      { positive: 12, examined: 30 },
      { positive: 2, examined: 22 },
    ],
  },
  input,
  output,
  run,
});

function run({ colonies: given, level }: Input): Result<Answer> {
  const counts = readColonies(given);
  if (!counts.ok) return counts;
  const { kept, positive, examined } = counts.value;
  const overall = clusterPrevalence(given, { level });
  const likeness = intraclassCorrelation(given);
  const fit = betaBinomialFit(given, { level });
  const [known, alike, fitted] = [foundOf(overall), foundOf(likeness), foundOf(fit)];
  const spread = fitted?.kind === "spread" ? fitted : null;
  const estimated = known?.kind === "estimated" ? known : null;
  const problems = [overall, likeness, fit].flatMap(noticesOf);
  return answered(
    {
      colonies: kept.length,
      positive,
      examined,
      share: positive / examined,
      intervals: estimated ? [estimated.byLogit, estimated.byKornGraubard, estimated.byWilson, estimated.byShare] : [],
      fitted: fitted && { mean: fitted.mean, meanByLogit: fitted.meanByLogit },
      meanColony: estimated?.meanColony ?? null,
      none: known && known.kind !== "estimated" ? { colonies: known.colonies, bees: known.bees } : null,
      intraclass: alike && {
        byLikelihood: fitted?.intraclass ?? null,
        byVariance: alike.byVariance,
        byFleissCuzick: alike.byFleissCuzick,
      },
      designEffect: alike && {
        byRatio: estimated?.designEffect ?? null,
        byMeanBees: alike.designEffect,
        byUnequalBees: alike.designEffectWeighted,
        effectiveBees: foundOf(alike.effectiveBees),
      },
      noSpread: alike && {
        likelihoodRatio: fitted?.likelihoodRatio ?? null,
        pValue: fitted?.pValue ?? null,
        chiSquare: alike.pearsonChiSquare,
        degrees: alike.degrees,
        heterogeneity: alike.heterogeneity,
      },
      fit: fitted && {
        a: spread?.a ?? null,
        b: spread?.b ?? null,
        logLikelihood: fitted.logLikelihood,
        logLikelihoodBinomial: fitted.logLikelihoodBinomial,
        logitMean: fitted.logitMean,
        seLogitMean: fitted.seLogitMean,
        logitIntraclass: spread?.logitIntraclass ?? null,
        seLogitIntraclass: spread?.seLogitIntraclass ?? null,
      },
      each: kept.flatMap((each) => foundOf(prevalence({ ...each, level })) ?? []),
      method: "ratio-and-beta-binomial",
      rule: known && known.kind !== "estimated" ? "BE157" : "BE155",
    },
    // The same reason stands in the way of more than one part, and is told once.
    problems.filter((each, index) => problems.findIndex(({ code }) => code === each.code) === index),
  );
}
