/** The share of infested bees over several colonies, with limits that know that bees of one colony are alike. */
import {
  clopperPearsonInterval,
  effectiveClopperPearsonInterval,
  effectiveWilsonInterval,
  type Interval,
  studentT,
} from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import type { ColonyCount } from "./beta-binomial-likelihood.ts";
import { type ReadColonies, readColonies } from "./colony-counts.ts";
import { benchProblem } from "./problems.ts";

export type ClusterPrevalence =
  | {
      readonly kind: "estimated";
      /** Infested bees of all bees read, the mean bee: limits by t on the share. The low one may lie below 0, as it comes. */
      readonly byShare: Estimate;
      /** The same on the logit scale: always inside 0 to 1. */
      readonly byLogit: Estimate;
      /** Wilson's interval of the effective number of bees. */
      readonly byWilson: Estimate;
      /** Clopper and Pearson's interval of the effective number of bees, made smaller for few colonies. */
      readonly byKornGraubard: Estimate;
      /** The mean colony, another target: unweighted mean of the colonies' shares. */
      readonly meanColony: Estimate;
      readonly standardError: number;
      /** Variance of the share over that of a simple sample of as many bees. */
      readonly designEffect: number;
      readonly kornGraubardBees: number;
    }
  | {
      /** Nothing differs, so no design effect: exact limits, of colonies and, as if bees were independent, of bees. */
      readonly kind: "none-positive" | "all-positive";
      readonly colonies: Estimate;
      readonly bees: Estimate;
    };

/**
 * Share of infested bees from samples of several colonies.
 *
 * Model: colonies drawn at random from many; nothing is assumed of how they differ. The variance of the ratio of sums
 * is linearised, k/(k − 1)·Σ(x − p·n)²/N², and t has k − 1 degrees of freedom.
 *
 * @returns estimates by five methods, or exact limits where none or all are infested, or `too-few-colonies`, `colonies-all-alike`
 * @throws DomainError for counts that are not whole or a level outside (0, 1)
 * @source Cochran 1977, Sampling Techniques, chapter 6 (ratio); Korn & Graubard 1998, Survey Methodology 24:193–201 (both from memory)
 *
 * @example
 * clusterPrevalence([{ positive: 1, examined: 20 }, { positive: 9, examined: 20 }, { positive: 4, examined: 20 }]).value.designEffect  // → 4.565217391
 */
export function clusterPrevalence(
  colonies: readonly ColonyCount[],
  { level = 0.95 }: { readonly level?: number } = {},
): Result<ClusterPrevalence> {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const counts = readColonies(colonies);
  if (!counts.ok) return counts;
  const { kept, positive, examined } = counts.value;
  if (positive === 0 || positive === examined) return answered(exactEnds(counts.value, level));

  const k = kept.length;
  const share = positive / examined;
  const residuals = kept.reduce((sum, each) => sum + (each.positive - share * each.examined) ** 2, 0);
  const variance = ((k / (k - 1)) * residuals) / examined ** 2;
  const standardError = Math.sqrt(variance);
  const simpleVariance = (share * (1 - share)) / examined;
  const designEffect = variance / simpleVariance;
  if (designEffect < leastDesignEffect) {
    return blocked(benchProblem("colonies-all-alike", "blocked", "colonies", { colonies: k, share }));
  }
  const outside = (1 - level) / 2;
  const t = studentT({ df: k - 1 }).upperQuantile(outside);
  const effective = examined / designEffect;
  const kornGraubardBees = Math.min(
    examined,
    effective * (studentT({ df: examined - 1 }).upperQuantile(outside) / t) ** 2,
  );
  const logit = Math.log(share / (1 - share));
  const logitReach = (t * standardError) / (share * (1 - share));
  const limits = (value: number, reach: number): Interval => ({ low: value - reach, high: value + reach });
  const estimate = (method: string, value: number, { low, high }: Interval): Estimate => ({
    value,
    low,
    high,
    level,
    interval: "confidence",
    method,
    rule: "BE155",
    n: examined,
  });
  const counted = (n: number) => ({ x: share * n, n, level });
  const shares = kept.map((each) => each.positive / each.examined);
  const mean = shares.reduce((sum, each) => sum + each, 0) / k;
  const meanError = Math.sqrt(shares.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (k - 1) / k);
  return answered({
    kind: "estimated",
    byShare: estimate("ratio-t", share, limits(share, t * standardError)),
    byLogit: estimate("ratio-logit-t", share, {
      low: logistic(logit - logitReach),
      high: logistic(logit + logitReach),
    }),
    byWilson: estimate("wilson-effective", share, effectiveWilsonInterval(counted(effective))),
    byKornGraubard: estimate("korn-graubard", share, effectiveClopperPearsonInterval(counted(kornGraubardBees))),
    meanColony: { ...estimate("mean-colony-t", mean, limits(mean, t * meanError)), n: k },
    standardError,
    designEffect,
    kornGraubardBees,
  });
}

/** Below this the colonies' shares differ by rounding alone. */
const leastDesignEffect = 1e-20;

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

function exactEnds({ kept, positive, examined }: ReadColonies, level: number): ClusterPrevalence {
  const exact = (n: number): Estimate => {
    const x = positive === 0 ? 0 : n;
    const { low, high } = clopperPearsonInterval({ x, n, level });
    return {
      value: x / n,
      low,
      high,
      level,
      interval: "confidence",
      method: "clopper-pearson",
      rule: "BE157",
      n,
    };
  };
  return {
    kind: positive === 0 ? "none-positive" : "all-positive",
    colonies: exact(kept.length),
    bees: exact(examined),
  };
}
