/** What a number of bees could have missed, prevalence by prevalence. */
import { detectionProbability } from "./detection-sample-size.ts";

export interface CouldMiss {
  /** Share of infested bees, 0–1. */
  readonly prevalence: number;
  /** Share of such samples in which none would be found, 0–1. */
  readonly missed: number;
}

/**
 * For each prevalence the probability that `bees` examined hold no positive.
 *
 * Model: that of `detectionSampleSize`, a large colony and specificity 1.
 *
 * @returns one row per prevalence, in the order given
 * @throws DomainError when a prevalence lies outside [0, 1]
 * @source Pirk et al. 2013, BEEBOOK I, section 2.2
 *
 * @example
 * missedCurve({ bees: 2, sensitivity: 1, prevalences: [0.5] })  // → [{"prevalence":0.5,"missed":0.25}]
 */
export function missedCurve(design: {
  /** Bees examined, a whole number ≥ 0. */
  readonly bees: number;
  /** Probability that an infested bee is found, 0 < Se ≤ 1. */
  readonly sensitivity: number;
  /** Shares of infested bees to look at, each 0–1. */
  readonly prevalences: readonly number[];
}): readonly CouldMiss[] {
  const { bees, sensitivity, prevalences } = design;
  return prevalences.map((prevalence) => ({
    prevalence,
    missed: 1 - detectionProbability({ bees, designPrevalence: prevalence, sensitivity }),
  }));
}
