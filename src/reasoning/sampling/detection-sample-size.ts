/** How many bees to examine so that an infestation is not missed, and what a number of bees promises. */
import { ensure } from "../../units/index.ts";

export interface DetectionDesign {
  /** Smallest share of infested bees that must not be missed. Proportion, 0 < p ≤ 1. */
  readonly designPrevalence: number;
  /** Wanted probability of at least one positive at `designPrevalence`. Proportion, 0 < c < 1. */
  readonly confidence: number;
  /** Probability that an infested bee is found positive on the bench. Proportion, 0 < Se ≤ 1. */
  readonly sensitivity: number;
}

/** Two products that are equal on paper may differ in the last bits; within this share they count as equal. */
export const tieSlack = 1e-12;

/**
 * Number of bees to examine, bees drawn independently from a large colony.
 *
 * Model: each bee is positive with probability Se·p, so the chance of seeing
 * none among n is (1 − Se·p)ⁿ. The smallest n that brings this to 1 − c or
 * less is ⌈ ln(1 − c) / ln(1 − Se·p) ⌉. Specificity is taken as 1: a mite seen
 * in a trachea is a mite.
 *
 * Not for small colonies (sampling without replacement needs fewer bees: see
 * `finiteDetectionSampleSize`) nor for bees that cluster by infestation (needs more).
 *
 * @returns bees, a whole number ≥ 1
 * @throws DomainError naming the parameter that lies outside its range
 * @source Pirk et al. 2013, BEEBOOK I, section 2.2
 *
 * @example
 * detectionSampleSize({ designPrevalence: 0.05, confidence: 0.95, sensitivity: 1 })  // → 59
 * detectionSampleSize({ designPrevalence: 0.05, confidence: 0.95, sensitivity: 0.8 })  // → 74
 */
export function detectionSampleSize({ designPrevalence, confidence, sensitivity }: DetectionDesign): number {
  const bees = Math.max(1, Math.ceil(unroundedDetectionSize({ designPrevalence, confidence, sensitivity })));
  ensure(
    bees < Infinity,
    "designPrevalence",
    designPrevalence,
    "large enough for a number of bees that can be counted",
  );
  // An exact tie, such as 2 bees for c = 0.19 at p = 0.1, must not cost a bee by rounding.
  const fewer = bees - 1;
  const none = Math.exp(fewer * Math.log1p(-sensitivity * designPrevalence));
  return fewer >= 1 && none <= (1 - confidence) * (1 + tieSlack) ? fewer : bees;
}

/**
 * The size of `detectionSampleSize` before it is rounded up to whole bees; 0 where one bee is certain.
 *
 * @throws DomainError naming the parameter that lies outside its range
 * @source Pirk et al. 2013, BEEBOOK I, section 2.2
 *
 * @example
 * unroundedDetectionSize({ designPrevalence: 0.05, confidence: 0.95, sensitivity: 1 })  // → 58.4039748143
 */
export function unroundedDetectionSize({ designPrevalence, confidence, sensitivity }: DetectionDesign): number {
  ensure(designPrevalence > 0 && designPrevalence <= 1, "designPrevalence", designPrevalence, "in (0, 1]");
  ensure(confidence > 0 && confidence < 1, "confidence", confidence, "in (0, 1)");
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  return Math.log1p(-confidence) / Math.log1p(-sensitivity * designPrevalence);
}

/**
 * Probability of at least one positive among `bees` examined, by the model of `detectionSampleSize`.
 *
 * @returns proportion 0–1; its complement is what the sample would miss
 * @throws DomainError naming the parameter that lies outside its range
 * @source Pirk et al. 2013, BEEBOOK I, section 2.2
 *
 * @example
 * detectionProbability({ bees: 50, designPrevalence: 0.02, sensitivity: 0.5 })  // → 0.3949939329
 */
export function detectionProbability(sample: {
  /** Bees examined, a whole number ≥ 0. */
  readonly bees: number;
  /** Share of infested bees, 0 ≤ p ≤ 1. */
  readonly designPrevalence: number;
  /** Probability that an infested bee is found, 0 < Se ≤ 1. */
  readonly sensitivity: number;
}): number {
  const { bees, designPrevalence, sensitivity } = sample;
  ensure(Number.isInteger(bees) && bees >= 0, "bees", bees, "a whole number, 0 or more");
  ensure(designPrevalence >= 0 && designPrevalence <= 1, "designPrevalence", designPrevalence, "in [0, 1]");
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  const positive = sensitivity * designPrevalence;
  if (bees === 0 || positive === 0) return 0;
  return -Math.expm1(bees * Math.log1p(-positive));
}
