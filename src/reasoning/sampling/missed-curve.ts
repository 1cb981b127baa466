/** What a number of bees could have missed, prevalence by prevalence. */
import { answered, type Result } from "../../units/index.ts";
import { detectionProbability } from "./detection-sample-size.ts";
import { finiteDetectionProbability } from "./finite-population.ts";

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

/**
 * The same for a group that is counted, drawn without replacement: each share is made up by the smallest whole number
 * that reaches it.
 *
 * @returns one row per prevalence, in the order given; or `examined-exceed-population`
 * @throws DomainError as `finiteDetectionProbability`
 * @source Cannon & Roe 1982 (exact form); Cameron & Baldock 1998, Prev Vet Med 34:1–17 (imperfect test)
 *
 * @example
 * finiteMissedCurve({ population: 100, examined: 95, sensitivity: 1, prevalences: [0.01] }).value  // → [{"prevalence":0.01,"missed":0.05}]
 */
export function finiteMissedCurve(design: {
  readonly population: number;
  readonly examined: number;
  readonly sensitivity: number;
  readonly prevalences: readonly number[];
}): Result<readonly CouldMiss[]> {
  const { population, examined, sensitivity, prevalences } = design;
  const rows: CouldMiss[] = [];
  for (const prevalence of prevalences) {
    const infested = wholeShare(prevalence, population);
    const found = finiteDetectionProbability({ population, infested, examined, sensitivity });
    if (!found.ok) return found;
    rows.push({ prevalence, missed: 1 - found.value });
  }
  return answered(rows);
}

/**
 * The smallest whole number that makes up at least this share; a product off by rounding alone costs no bee.
 *
 * @example
 * wholeShare(0.05, 101)  // → 6
 */
export const wholeShare = (share: number, population: number): number => Math.ceil(share * population * (1 - 1e-12));
