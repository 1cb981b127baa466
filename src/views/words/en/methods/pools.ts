/** Sentences of bees tested together: what pools amount to, how many find it, how large they should be. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some, whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import { intervalNames } from "./intervals.ts";
import type { MethodWords } from "./method-words.ts";

const each100 = (per: number): string => figure(100 * per);

export const pools = {
  asks: "Bees tested together: how many are infested?",
  under: "Pools of one size or of several, with those that were positive.",
  fields: {
    groups: {
      label: "Pools: positive, tested, bees in each",
      hint: "One line for each size: 3 of 24, 7.",
    },
    level: { label: "Certainty of the range, of 100", per: 100 },
    sensitivity: {
      label: "Of 100 pools with an infested bee, found",
      hint: "With the next one. Empty: the test of a pool does not err.",
      per: 100,
    },
    specificity: { label: "Of 100 clean pools, cleared", per: 100 },
  },
  says: ({ estimate, positive, pools, bees, limits, imperfect }) => {
    const seen = `${whole(positive)} of ${some(pools, "pool", "pools")} positive, ${some(bees, "bee", "bees")} in all.`;
    if (estimate === null) {
      const low = limits.find((each) => each.low !== null)?.low ?? null;
      const least = low === null ? "" : ` At least **${hundred(low)} in 100** are.`;
      return `${seen} **How many bees are infested cannot be said.**${least}`;
    }
    const { value, low, high } = estimate;
    const found =
      value === 0
        ? `**None found.** There could still be up to **${hundred(high)} in 100** infested bees.`
        : `**${hundred(value)} in 100 bees infested,** and it could be ${hundred(low)} to ${hundred(high)}.`;
    if (imperfect === null) return `${found} ${seen}`;
    return `${found} Corrected for the test of the pool: **${hundred(imperfect.value)}**, from ${hundred(imperfect.low)} to ${hundred(imperfect.high)}. ${seen}`;
  },
  names: {
    ...intervalNames,
    "skew-score": "Score, skewness corrected",
    score: "Score",
    likelihood: "Likelihood ratio",
    wilson: "Wilson, on pools",
    jeffreys: "Jeffreys, on pools",
    "exact-upper-of-zero": "Exact, of none found",
    "maximum-likelihood": "Likeliest",
    gart: "Gart’s",
    firth: "Firth’s",
    burrows: "Burrows’s",
  } as Readonly<Record<string, string>>,
  ranges: "The share of bees by each method",
  rangesUnder: "Each range with its method; below them the estimates, Firth’s being the one to report.",
  corrected: "Corrected for the test",
  method: "Method",
  share: "Bees infested, of 100",
  rangesLabel: (
    rows: readonly { readonly name: string; readonly low: number | null; readonly high: number | null }[],
  ) =>
    `Ranges in 100: ${rows
      .flatMap(({ name, low, high }) =>
        low === null && high === null
          ? []
          : [
              `${name} ${low === null ? "no lower limit" : hundred(low)} to ${high === null ? "no upper limit" : hundred(high)}`,
            ],
      )
      .join("; ")}`,
} satisfies MethodWords<Answers["pools"]> & Record<string, unknown>;

export const poolsToDetect = {
  asks: "How many pools, so that an infestation is not missed?",
  under: "A pool is found alike however many infested bees it holds.",
  fields: {
    size: { label: "Bees in a pool" },
    designPrevalence: { label: "Bees infested, of 100", hint: "The smallest share that must not be missed.", per: 100 },
    sensitivity: { label: "Of 100 pools with an infested bee, found", per: 100 },
    confidence: { label: "Found, times of 100", per: 100 },
  },
  says: ({ pools, bees, reached, design }) =>
    `**${some(pools, "pool", "pools")} of ${some(design.size, "bee", "bees")},** ${some(bees, "bee", "bees")} in all, find ${hundred(design.designPrevalence)} in 100 infested ${hundred(reached)} times in 100.`,
  needed: "How many pools each size takes",
  neededUnder: "Larger pools save tests as long as they do not thin the signal.",
  size: "Bees in a pool",
  pools: "Pools",
  planned: (pools: number) => some(pools, "pool", "pools"),
  neededLabel: (rows: readonly { readonly size: number; readonly pools: number; readonly bees: number }[]) =>
    rows
      .map(({ size, pools, bees }) => `${some(pools, "pool", "pools")} of ${whole(size)}: ${some(bees, "bee", "bees")}`)
      .join("; "),
} satisfies MethodWords<Answers["pools-to-detect"]> & Record<string, unknown>;

export const poolSize = {
  asks: "Which size of pool is cheapest, when a pool thins the signal?",
  under: "By a model of our own, not checked against a bench.",
  fields: {
    designPrevalence: { label: "Bees infested, of 100", hint: "The smallest share that must not be missed.", per: 100 },
    signal: {
      label: "Signal of infested bees alone",
      hint: "Mean number of copies seen; in a pool it is thinned by the clean bees.",
    },
    confidence: { label: "Found, times of 100", per: 100 },
    costPerPool: { label: "Cost of testing a pool", hint: "In any unit." },
    costPerBee: { label: "Cost of taking a bee", hint: "In the same unit." },
    largest: { label: "Largest pool to consider" },
  },
  says: ({ best, bees, limit }) =>
    `**${some(best.pools, "pool", "pools")} of ${some(best.size, "bee", "bees")},** ${some(bees, "bee", "bees")} in all, cost ${figure(best.cost)}. Such a pool reacts ${hundred(best.reacts)} times in 100; none, however large, more often than ${hundred(limit)}.`,
  costs: "What each size of pool would cost",
  costsUnder: "With the fewest pools that reach the certainty. Up to three times the least cost.",
  size: "Bees in a pool",
  cost: "Cost",
  least: ({ size, cost }: { readonly size: number; readonly cost: number }) =>
    `least: ${some(size, "bee", "bees")}, ${figure(cost)}`,
  costsLabel: (rows: readonly { readonly size: number; readonly cost: number }[]) =>
    `Cost by bees in a pool: ${rows.map(({ size, cost }) => `${whole(size)}: ${figure(cost)}`).join("; ")}`,
  reacting: "How often a pool of each size reacts",
  reacts: "Reacts, times in 100",
  limit: (share: number) => `no size more often than ${hundred(share)}`,
  reactsLabel: (rows: readonly { readonly size: number; readonly reacts: number }[]) =>
    `Times in 100 by bees in a pool: ${rows.map(({ size, reacts }) => `${whole(size)}: ${hundred(reacts)}`).join("; ")}`,
} satisfies MethodWords<Answers["pool-size"]> & Record<string, unknown>;

export const poolRetest = {
  asks: "Every bee must be told: which size of pool saves most tests?",
  under: "Pools first, then each bee of a positive pool by itself.",
  fields: {
    prevalence: { label: "Bees infested, of 100", per: 100 },
    largest: { label: "Largest pool to consider" },
  },
  says: ({ size, pooledTestsPerBee, testsPerBee }) =>
    pooledTestsPerBee < 1
      ? `**Pools of ${some(size, "bee", "bees")}** take ${each100(testsPerBee)} tests for 100 bees on average.`
      : `**No pool saves tests:** the best, of ${some(size, "bee", "bees")}, takes ${each100(pooledTestsPerBee)} for 100 bees. Test each by itself.`,
  tests: "How many tests each size of pool takes",
  size: "Bees in a pool",
  per100: "Tests for 100 bees",
  single: "each by itself",
  best: (size: number) => `pools of ${whole(size)}`,
  testsLabel: (rows: readonly { readonly size: number; readonly testsPerBee: number }[]) =>
    rows
      .map(({ size, testsPerBee }) => `pools of ${whole(size)}: ${each100(testsPerBee)} tests for 100 bees`)
      .join("; "),
} satisfies MethodWords<Answers["pool-retest"]> & Record<string, unknown>;
