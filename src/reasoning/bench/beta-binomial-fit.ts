/** The mean share over colonies and how far colonies differ, by maximum likelihood. */
import { chiSquare, likelihoodRatioInterval, normalUpperQuantile, root } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import { betaBinomialLikelihood, type ColonyCount, type LikelihoodAt } from "./beta-binomial-likelihood.ts";
import { readColonies } from "./colony-counts.ts";
import { benchProblem } from "./problems.ts";

/** What every fit tells, whether or not colonies differ beyond chance. */
interface MeanOverColonies {
  /** Mean share with likelihood limits. */
  readonly mean: Estimate;
  /** The same with limits by the normal curve on the logit scale. */
  readonly meanByLogit: Estimate;
  /** Intraclass correlation ρ: 0 when colonies do not differ, 1 when each is all or none. */
  readonly intraclass: number;
  readonly logLikelihood: number;
  /** Log-likelihood of one share for all colonies. */
  readonly logLikelihoodBinomial: number;
  readonly logitMean: number;
  readonly seLogitMean: number;
  /** Twice the difference of the two log-likelihoods, and its p-value: half of chi-square's, as ρ cannot be below 0. */
  readonly likelihoodRatio: number;
  readonly pValue: number;
}

export type BetaBinomialFit =
  | (MeanOverColonies & {
      readonly kind: "spread";
      /** Shapes of the beta distribution of the colonies' shares. */
      readonly a: number;
      readonly b: number;
      readonly logitIntraclass: number;
      readonly seLogitIntraclass: number;
      /** Largest slope of the log-likelihood left at the maximum, on the logit scales. */
      readonly slopeLeft: number;
    })
  /** The spread is likeliest at 0: the figures are those of the binomial, and the spread has no standard error. */
  | (MeanOverColonies & { readonly kind: "no-spread"; readonly intraclass: 0 });

/** ln φ = logit ρ is looked for between these: beyond them ρ cannot be told from 0 or from 1. */
const spreadEnds = { least: -18, most: 12, step: 0.5 } as const;

/**
 * Beta-binomial fit to infested bees of bees read in several colonies.
 *
 * Model: each colony has its own share, drawn from a beta distribution; its bees are then independent. The target is the
 * mean colony weighted as the likelihood weighs it. Where colonies differ no more than chance the spread is likeliest at
 * 0: the answer is then the binomial of all bees as one sample, and a warning says so. It proves no likeness: few
 * colonies seldom show a spread.
 *
 * @returns the fit, with the warning `colonies-no-more-than-chance` where it is the binomial; or `too-few-colonies`,
 *   `all-colonies-clear`, `all-colonies-full`, `one-bee-a-colony`, `colonies-all-or-none`
 * @throws DomainError for counts that are not whole or a level outside (0, 1)
 * @source Skellam 1948, Journal of the Royal Statistical Society B 10:257–261; ½χ² for a parameter on its edge: Self & Liang 1987 (from memory)
 *
 * @example
 * betaBinomialFit([{ positive: 1, examined: 20 }, { positive: 9, examined: 20 }, { positive: 4, examined: 20 }]).value.mean.value  // → 0.23220175
 * betaBinomialFit([{ positive: 5, examined: 20 }, { positive: 5, examined: 20 }, { positive: 4, examined: 20 }]).value.intraclass  // → 0
 */
export function betaBinomialFit(
  colonies: readonly ColonyCount[],
  { level = 0.95 }: { readonly level?: number } = {},
): Result<BetaBinomialFit> {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const counts = readColonies(colonies);
  if (!counts.ok) return counts;
  const { kept, positive, examined } = counts.value;
  const share = positive / examined;
  if (positive === 0) return blocked(benchProblem("all-colonies-clear", "blocked", "colonies", { examined }));
  if (positive === examined) return blocked(benchProblem("all-colonies-full", "blocked", "colonies", { examined }));
  const k = kept.length;
  // With one bee from each the likelihood is the same at every spread.
  if (examined === k) return blocked(benchProblem("one-bee-a-colony", "blocked", "colonies", { colonies: k }));

  const likelihood = betaBinomialLikelihood(kept);
  const best = highest(likelihood, (spread) => bestMean(likelihood, { spread, start: share }));
  const slots = { colonies: k, examined };
  if (best.edge === "least") {
    const binomial = binomialFit({ positive, examined, level, logLikelihood: likelihood(share, 0).value });
    return answered(binomial, [benchProblem("colonies-no-more-than-chance", "warned", "colonies", slots)]);
  }
  if (best.edge === "most") return blocked(benchProblem("colonies-all-or-none", "blocked", "colonies", slots));

  const spread = Math.exp(best.logSpread);
  const mean = best.mean;
  const at = likelihood(mean, spread);
  const width = mean * (1 - mean);
  const [mm, mv, vv] = [-at.byMeanTwice * width ** 2, -at.byBoth * width * spread, -at.bySpreadTwice * spread ** 2];
  const determinant = mm * vv - mv * mv;
  const seLogitMean = Math.sqrt(vv / determinant);
  const logitMean = Math.log(mean / (1 - mean));
  const reach = normalUpperQuantile((1 - level) / 2) * seLogitMean;
  const binomialValue = likelihood(share, 0).value;
  const likelihoodRatio = Math.max(0, 2 * (at.value - binomialValue));
  const shared = { value: mean, level, interval: "confidence", rule: "BE151", n: examined } as const;
  const limits = profileLimits({ likelihood, mean, top: at.value, seLogitMean, level });
  return answered({
    kind: "spread",
    mean: { ...shared, ...limits, method: "beta-binomial-profile" },
    meanByLogit: {
      ...shared,
      low: logistic(logitMean - reach),
      high: logistic(logitMean + reach),
      method: "beta-binomial-logit",
    },
    intraclass: spread / (1 + spread),
    a: mean / spread,
    b: (1 - mean) / spread,
    logLikelihood: at.value,
    logLikelihoodBinomial: binomialValue,
    logitMean,
    seLogitMean,
    logitIntraclass: best.logSpread,
    seLogitIntraclass: Math.sqrt(mm / determinant),
    likelihoodRatio,
    pValue: 0.5 * chiSquare({ df: 1 }).sf(likelihoodRatio),
    slopeLeft: Math.max(Math.abs(at.byMean * width), Math.abs(at.bySpread * spread)),
  });
}

/** The fit at its edge, no spread: all bees as one sample. */
function binomialFit(counts: {
  readonly positive: number;
  readonly examined: number;
  readonly level: number;
  readonly logLikelihood: number;
}): BetaBinomialFit {
  const { positive, examined, level, logLikelihood } = counts;
  const share = positive / examined;
  const logitMean = Math.log(positive / (examined - positive));
  const seLogitMean = Math.sqrt(1 / positive + 1 / (examined - positive));
  const reach = normalUpperQuantile((1 - level) / 2) * seLogitMean;
  const shared = { value: share, level, interval: "confidence", rule: "BE158", n: examined } as const;
  const { low, high } = likelihoodRatioInterval({ x: positive, n: examined, level });
  return {
    kind: "no-spread",
    mean: { ...shared, low, high, method: "binomial-likelihood-ratio" },
    meanByLogit: {
      ...shared,
      low: logistic(logitMean - reach),
      high: logistic(logitMean + reach),
      method: "binomial-logit",
    },
    intraclass: 0,
    logLikelihood,
    logLikelihoodBinomial: logLikelihood,
    logitMean,
    seLogitMean,
    likelihoodRatio: 0,
    pValue: 1,
  };
}

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

/** The mean share that is likeliest at a spread: the log-likelihood is concave in it. */
function bestMean(
  likelihood: LikelihoodAt,
  { spread, start }: { readonly spread: number; readonly start: number },
): number {
  const slope = (mean: number) => likelihood.byMean(mean, spread);
  if (slope(start) === 0) return start;
  const edge = 1e-12;
  return root({ f: slope, low: Math.min(edge, start / 2), high: Math.max(1 - edge, (1 + start) / 2) });
}

interface Highest {
  readonly logSpread: number;
  readonly mean: number;
  readonly value: number;
  readonly edge: "least" | "most" | null;
}

/** The likeliest spread, each with the mean that goes with it: a scan first, as there may be more than one hill. */
function highest(likelihood: LikelihoodAt, meanAt: (spread: number) => number): Highest {
  const { least, most, step } = spreadEnds;
  const point = (logSpread: number) => {
    const mean = meanAt(Math.exp(logSpread));
    return { logSpread, mean, value: likelihood(mean, Math.exp(logSpread)).value };
  };
  const slope = (logSpread: number) => {
    const spread = Math.exp(logSpread);
    return likelihood.bySpread(meanAt(spread), spread) * spread;
  };
  const hills: Highest[] = [];
  let before = slope(least);
  if (before <= 0) hills.push({ ...point(least), edge: "least" });
  for (let right = least + step; right <= most; right += step) {
    const after = slope(right);
    if (before > 0 && after <= 0) {
      const logSpread = root({ f: slope, low: right - step, high: right, tolerance: 1e-11 });
      hills.push({ ...point(logSpread), edge: null });
    }
    before = after;
  }
  if (before > 0) hills.push({ ...point(most), edge: "most" });
  return hills.reduce((top, each) => (each.value > top.value ? each : top));
}

/** The mean shares at which twice the fall of the profile likelihood is the quantile of chi-square with 1 degree. */
function profileLimits(fit: {
  readonly likelihood: LikelihoodAt;
  readonly mean: number;
  readonly top: number;
  readonly seLogitMean: number;
  readonly level: number;
}): { readonly low: number; readonly high: number } {
  const { likelihood, mean, top, seLogitMean, level } = fit;
  const fall = chiSquare({ df: 1 }).upperQuantile(1 - level);
  const centre = Math.log(mean / (1 - mean));
  const excess = (logit: number) => 2 * (top - highest(likelihood, () => logistic(logit)).value) - fall;
  const limit = (direction: -1 | 1): number => {
    let far = centre + 2 * direction * seLogitMean;
    while (excess(far) < 0) far += 2 * direction * seLogitMean;
    return logistic(root({ f: excess, low: Math.min(far, centre), high: Math.max(far, centre), tolerance: 1e-10 }));
  };
  return { low: limit(-1), high: limit(1) };
}
