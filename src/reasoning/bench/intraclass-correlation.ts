/** How alike the bees of one colony are, and what that costs a sample: closed formulas. */
import { answered, blocked, type Result } from "../../units/index.ts";
import type { ColonyCount } from "./beta-binomial-likelihood.ts";
import { readColonies } from "./colony-counts.ts";
import { benchProblem } from "./problems.ts";

export interface IntraclassCorrelation {
  /** Infested bees of all bees read. */
  readonly share: number;
  readonly meanSquareBetween: number;
  readonly meanSquareWithin: number;
  /** Bees a colony, as the analysis of variance weighs them. */
  readonly typicalBees: number;
  /** By analysis of variance. May be below 0: then colonies differ less than chance. */
  readonly byVariance: number;
  /** Fleiss and Cuzick's estimate. */
  readonly byFleissCuzick: number;
  readonly pearsonChiSquare: number;
  readonly degrees: number;
  /** Pearson's chi-square over its degrees of freedom. */
  readonly heterogeneity: number;
  /** 1 + (mean bees − 1)·ICC, from `byVariance`. */
  readonly designEffect: number;
  /** The same with Σn²/N in place of the mean: colonies of unequal samples. */
  readonly designEffectWeighted: number;
  /** Bees of a simple sample that would tell as much: N over the weighted design effect, where that is above 0. */
  readonly effectiveBees: Result<number>;
}

/** A design effect below this is rounding: the colonies differ as little as can be. */
const leastEffect = 1e-12;

/**
 * Intraclass correlation of infestation within colonies and the design effect that follows.
 *
 * @returns figures, or `too-few-colonies`, `all-colonies-clear`, `all-colonies-full`, `one-bee-a-colony`
 * @throws DomainError for counts that are not whole
 * @source Fleiss & Cuzick 1979, Applied Psychological Measurement 3:537–542 (from memory); Donald & Donner 1987 for the analysis of variance (from memory)
 *
 * @example
 * intraclassCorrelation([{ positive: 1, examined: 20 }, { positive: 9, examined: 20 }, { positive: 4, examined: 20 }]).value.heterogeneity  // → 4.565217391
 */
export function intraclassCorrelation(colonies: readonly ColonyCount[]): Result<IntraclassCorrelation> {
  const counts = readColonies(colonies);
  if (!counts.ok) return counts;
  const { kept, positive, examined } = counts.value;
  const k = kept.length;
  if (positive === 0) return blocked(benchProblem("all-colonies-clear", "blocked", "colonies", { examined }));
  if (positive === examined) return blocked(benchProblem("all-colonies-full", "blocked", "colonies", { examined }));
  if (examined === k) return blocked(benchProblem("one-bee-a-colony", "blocked", "colonies", { colonies: k }));

  const share = positive / examined;
  const total = (f: (colony: ColonyCount) => number) => kept.reduce((sum, each) => sum + f(each), 0);
  const between = total((each) => each.examined * (each.positive / each.examined - share) ** 2);
  const within = total((each) => each.positive * (1 - each.positive / each.examined));
  const squares = total((each) => each.examined ** 2);
  const meanSquareBetween = between / (k - 1);
  const meanSquareWithin = within / (examined - k);
  const typicalBees = (examined - squares / examined) / (k - 1);
  const byVariance =
    (meanSquareBetween - meanSquareWithin) / (meanSquareBetween + (typicalBees - 1) * meanSquareWithin);
  const pearsonChiSquare = between / (share * (1 - share));
  const designEffectWeighted = 1 + (squares / examined - 1) * byVariance;
  return answered({
    share,
    meanSquareBetween,
    meanSquareWithin,
    typicalBees,
    byVariance,
    byFleissCuzick: 1 - within / ((examined - k) * share * (1 - share)),
    pearsonChiSquare,
    degrees: k - 1,
    heterogeneity: pearsonChiSquare / (k - 1),
    designEffect: 1 + (examined / k - 1) * byVariance,
    designEffectWeighted,
    effectiveBees:
      designEffectWeighted > leastEffect
        ? answered(examined / designEffectWeighted)
        : blocked(benchProblem("colonies-all-alike", "unknown", "colonies", { colonies: k, share })),
  });
}
