/** How unevenly mites sit on bees: dispersion, and the aggregation k by three methods, each refused where there is none. */
import { chiSquare, root } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { prevalenceOfAbundance } from "./abundance-prevalence.ts";
import {
  type CountsOfMean,
  informationOnK,
  negativeBinomialLogLikelihood,
  poissonLogLikelihood,
  slopeInK,
} from "./negative-binomial.ts";
import { benchProblem } from "./problems.ts";

export interface CountSummary {
  /** Bees. */
  readonly n: number;
  /** Mites per bee. */
  readonly mean: number;
  /** With n − 1. */
  readonly variance: number;
  /** Index of dispersion (n − 1)s²/m and the chance of one as large if mites sat on bees at random. */
  readonly dispersion: { readonly statistic: number; readonly pValue: number };
  readonly shareWithout: number;
  readonly prevalence: number;
  /** Mites per infested bee. */
  readonly intensity: number;
  readonly logLikelihoodPoisson: number;
  /** k = m²/(s² − m). */
  readonly kByMoments: Result<number>;
  /** k that fits the share of bees without mites. */
  readonly kByZeros: Result<number>;
  readonly fit: Result<NegativeBinomialFit>;
}

export interface NegativeBinomialFit {
  /** Aggregation k by maximum likelihood: the smaller, the fewer bees carry the mites. */
  readonly k: number;
  readonly standardErrorOfK: number;
  /** Of the mean, √(m(1 + m/k)/n). */
  readonly standardErrorOfMean: number;
  readonly logLikelihood: number;
  /** Share of infested bees that mean and k together give. */
  readonly prevalence: number;
}

/**
 * Mites per bee, summed up and fitted.
 *
 * The likelihood has a maximum only when the variance with n exceeds the mean (Levin & Reeds 1977); else the counts
 * are no more uneven than chance and Poisson serves. Every k is refused by itself where it does not exist.
 *
 * @returns CountSummary; or `nothing-examined`, `no-mites-counted`, `too-few-to-estimate`
 * @throws DomainError for counts or frequencies that are not whole numbers ≥ 0
 * @source Bliss & Fisher 1953, Biometrics 9:176; Levin & Reeds 1977
 *
 * @example
 * fitCounts({ counts: [0, 1, 2, 3, 4, 5, 6, 7], bees: [70, 38, 17, 10, 9, 3, 2, 1] }).value.fit.value.k  // → 1.02459239
 * fitCounts({ counts: [0, 1, 1, 2] }).value.fit.problems[0].code  // → no-more-uneven-than-chance
 */
export function fitCounts(given: {
  /** Mites in each bee; or each value that occurs, when `bees` tells how often. */
  readonly counts: readonly number[];
  readonly bees?: readonly number[];
}): Result<CountSummary> {
  const rows = rowsOf(given.counts, given.bees);
  const over = (term: (count: number) => number) => rows.reduce((sum, { count, bees }) => sum + bees * term(count), 0);
  const n = over(() => 1);
  if (n === 0) return blocked(benchProblem("nothing-examined", "blocked", "counts", {}));
  const mean = over((count) => count) / n;
  if (mean === 0) return blocked(benchProblem("no-mites-counted", "blocked", "counts", { bees: n }));
  if (n < 2) return blocked(benchProblem("too-few-to-estimate", "blocked", "counts", { bees: n }));
  const variance = over((count) => (count - mean) ** 2) / (n - 1);
  const without = over((count) => Number(count === 0)) / n;
  const statistic = ((n - 1) * variance) / mean;
  const counts: readonly CountsOfMean[] = rows.map((row) => ({ ...row, mean }));
  const even = blocked(benchProblem("no-more-uneven-than-chance", "unknown", "counts", { mean, variance }));
  return answered({
    n,
    mean,
    variance,
    dispersion: { statistic, pValue: chiSquare({ df: n - 1 }).sf(statistic) },
    shareWithout: without,
    prevalence: 1 - without,
    intensity: mean / (1 - without),
    logLikelihoodPoisson: poissonLogLikelihood(counts),
    kByMoments: isUneven(variance, mean) ? answered(mean ** 2 / (variance - mean)) : even,
    kByZeros: kByZeros(mean, without),
    fit: isUneven(((n - 1) / n) * variance, mean) ? answered(fitted({ counts, mean, n })) : even,
  });
}

/** Beyond this k the law is Poisson to nine digits: a variance that rounding alone lifts above the mean asks for more. */
const largestK = Math.exp(20);

const isUneven = (variance: number, mean: number): boolean => variance - mean > mean ** 2 / largestK;

function rowsOf(counts: readonly number[], bees?: readonly number[]) {
  ensure(bees === undefined || bees.length === counts.length, "bees", bees?.length, `as many as counts`);
  for (const each of counts) ensure(Number.isInteger(each) && each >= 0, "counts", each, "whole numbers ≥ 0");
  for (const each of bees ?? []) ensure(Number.isInteger(each) && each >= 0, "bees", each, "whole numbers ≥ 0");
  const often = new Map<number, number>();
  for (const [i, count] of counts.entries()) often.set(count, (often.get(count) ?? 0) + (bees?.[i] ?? 1));
  // In one order, whatever the order they were given in: sums then agree to the last bit.
  return [...often].map(([count, each]) => ({ count, bees: each })).sort((a, b) => a.count - b.count);
}

/** k from k·ln(1 + m/k) = −ln(share without): the left side rises from 0 to m, so fewer than e^−m without leave none. */
function kByZeros(mean: number, without: number): Result<number> {
  const target = -Math.log(without);
  if (!(target < mean)) {
    return blocked(benchProblem("too-few-without-mites", "unknown", "counts", { without, byChance: Math.exp(-mean) }));
  }
  if (without === 1) return blocked(benchProblem("no-mites-counted", "unknown", "counts", { bees: 0 }));
  return answered(Math.exp(rootInLogK((k) => k * Math.log1p(mean / k) - target)));
}

function fitted(given: {
  readonly counts: readonly CountsOfMean[];
  readonly mean: number;
  readonly n: number;
}): NegativeBinomialFit {
  const { counts, mean, n } = given;
  const k = Math.exp(rootInLogK((each) => slopeInK(counts, each)));
  return {
    k,
    standardErrorOfK: 1 / Math.sqrt(informationOnK(counts, k)),
    standardErrorOfMean: Math.sqrt((mean * (1 + mean / k)) / n),
    logLikelihood: negativeBinomialLogLikelihood(counts, k),
    prevalence: prevalenceOfAbundance({ mean, k }).prevalence,
  };
}

/** The ln k where f changes sign: outward from k = 1 in steps of e, then by halving. */
function rootInLogK(f: (k: number) => number): number {
  const at = (logK: number) => f(Math.exp(logK));
  const sign = Math.sign(at(0));
  for (let away = 1; away < 60; away++) {
    for (const logK of [-away, away]) {
      if (Math.sign(at(logK)) === sign) continue;
      const [low, high] = logK < 0 ? [logK, logK + 1] : [logK - 1, logK];
      return root({ f: at, low, high });
    }
  }
  throw new Error("no k between e^-60 and e^60 fits: the conditions for one were checked before");
}
