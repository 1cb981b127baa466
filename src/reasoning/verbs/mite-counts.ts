/** `mite-counts`: mites in each bee: load, how unevenly mites sit, and the laws that could have given the counts. */
import * as z from "zod";
import { answered, type Result } from "../../units/index.ts";
import { abundance, type CountSummary, expectedCounts, fitCounts, intensity, prevalence } from "../bench/index.ts";
import { count, estimate, level } from "./fields.ts";
import { foundOf, noticesOf, underField } from "./part.ts";
import { type Deep, verb } from "./verb.ts";

/** Bees that are laid out one by one for the limits of the mean. */
const mostBees = 100_000;
/** Classes shown one by one; the last is open above. */
const mostClasses = 40;

const mites = count.max(10_000);

const input = z
  .strictObject({
    counts: z
      .array(z.strictObject({ mites, bees: count.max(mostBees).default(1).describe("bees with so many mites") }))
      .max(20_000)
      .exactOptional()
      .describe("One for each number of mites: mites in a bee, bees with so many. Clear bees are 0."),
    mitesPerBee: z
      .array(mites)
      .max(20_000)
      .exactOptional()
      .describe("Mites in each bee read, one number a bee, in place of counts. Clear bees are 0."),
    level: level.default(0.95).describe("Probability content of each interval."),
  })
  .refine(({ counts, mitesPerBee }) => (counts === undefined) !== (mitesPerBee === undefined), {
    message: "either counts or mitesPerBee",
    path: ["counts"],
  })
  .refine(({ counts = [] }) => counts.reduce((sum, { bees }) => sum + bees, 0) <= mostBees, {
    message: `no more than ${mostBees} bees in all`,
    path: ["counts"],
  });

const output = z.strictObject({
  bees: z.number().int(),
  mites: z.number().int(),
  prevalence: estimate.describe("share of bees with mites"),
  abundance: estimate.nullable().describe("mites per bee read; null where it has no limits"),
  intensity: estimate.nullable().describe("mites per bee with mites; null where it has no limits"),
  variance: z.number().describe("of mites between bees, with n − 1"),
  dispersion: z
    .strictObject({ statistic: z.number(), degrees: z.number().int(), pValue: z.number() })
    .describe("index of dispersion, and the chance of one as large if mites sat at random"),
  aggregation: z
    .strictObject({
      byLikelihood: z.number().nullable(),
      standardError: z.number().nullable(),
      byMoments: z.number().nullable(),
      byZeros: z.number().nullable().describe("from the bees without mites alone"),
    })
    .describe("k: the smaller, the fewer bees carry the mites; null where there is none"),
  fit: z
    .strictObject({
      logLikelihood: z.number(),
      logLikelihoodPoisson: z.number(),
      prevalence: z.number().describe("share of bees with mites that mean and k together give"),
      standardErrorOfMean: z.number(),
    })
    .nullable()
    .describe("negative binomial fit; null where mites sit no more unevenly than chance"),
  classes: z
    .array(
      z.strictObject({
        mites: z.number().int().describe("in a bee; of the last class, so many or more"),
        bees: z.number().int(),
        negativeBinomial: z.number().nullable(),
        poisson: z.number(),
      }),
    )
    .describe("bees counted, and bees that each law gives"),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;

export const miteCounts = verb({
  name: "mite-counts",
  family: "counts",
  summary: "Mites counted in each bee: load, how unevenly they sit, and a fitted law.",
  assumptions: [
    "Bees were drawn at random, and every mite in both trunks was counted.",
    "The negative binomial law: bees differ in how many mites they draw, and few carry most.",
    "Limits of means are approximate: with mites in few bees they miss the truth more often than they say.",
  ],
  source:
    "Bliss & Fisher 1953, Biometrics 9:176 (k by likelihood); Levin & Reeds 1977 (when it exists); Bush et al. 1997 (prevalence, abundance, intensity).",
  example: {
    counts: [62, 9, 7, 5, 4, 3, 3, 0, 3, 0, 0, 2, 0, 0, 0, 2].flatMap((bees, each) =>
      bees > 0 ? [{ mites: each, bees }] : [],
    ),
  },
  input,
  output,
  run: (given) => (given.mitesPerBee ? underField(run(given), "counts", "mitesPerBee") : run(given)),
});

function run({ counts, mitesPerBee, level }: Input): Result<Answer> {
  const rows = counts ?? (mitesPerBee ?? []).map((each) => ({ mites: each, bees: 1 }));
  const found = fitCounts({ counts: rows.map((each) => each.mites), bees: rows.map(({ bees }) => bees) });
  if (!found.ok) return found;
  const summary = found.value;
  const oneByOne = rows.flatMap((each) => Array.from({ length: each.bees }, () => each.mites));
  const infested = oneByOne.filter((each) => each > 0).length;
  const share = prevalence({ positive: infested, examined: summary.n, level });
  if (!share.ok) return share;
  const perBee = abundance({ mitesPerBee: oneByOne, level });
  const perInfested = underField(intensity({ mitesPerBee: oneByOne, level }), "mitesPerBee", "counts");
  const fit = foundOf(summary.fit);
  const problems = [summary.fit, summary.kByMoments, summary.kByZeros, perInfested].flatMap(noticesOf);
  return answered(
    {
      bees: summary.n,
      mites: oneByOne.reduce((sum, each) => sum + each, 0),
      prevalence: share.value,
      abundance: foundOf(perBee),
      intensity: foundOf(perInfested),
      variance: summary.variance,
      dispersion: { ...summary.dispersion, degrees: summary.n - 1 },
      aggregation: {
        byLikelihood: fit?.k ?? null,
        standardError: fit?.standardErrorOfK ?? null,
        byMoments: foundOf(summary.kByMoments),
        byZeros: foundOf(summary.kByZeros),
      },
      fit: fit && {
        logLikelihood: fit.logLikelihood,
        logLikelihoodPoisson: summary.logLikelihoodPoisson,
        prevalence: fit.prevalence,
        standardErrorOfMean: fit.standardErrorOfMean,
      },
      classes: classesOf(oneByOne, summary),
      method: fit ? "negative-binomial" : "poisson",
      rule: "BE206",
    },
    problems.filter((each, index) => problems.findIndex(({ code }) => code === each.code) === index),
  );
}

function classesOf(oneByOne: readonly number[], { n, mean, fit }: CountSummary): Answer["classes"] {
  const last = Math.min(mostClasses, 1 + oneByOne.reduce((most, each) => Math.max(most, each), 0));
  const seen = new Array<number>(last + 1).fill(0);
  for (const each of oneByOne) seen[Math.min(each, last)] = (seen[Math.min(each, last)] ?? 0) + 1;
  const law = (k: number | null) => expectedCounts({ mean, k, bees: n, last });
  const [negativeBinomial, poisson] = [fit.ok ? law(fit.value.k) : null, law(null)];
  return seen.map((bees, each) => ({
    mites: each,
    bees,
    negativeBinomial: negativeBinomial?.[each] ?? null,
    poisson: poisson[each] ?? 0,
  }));
}
