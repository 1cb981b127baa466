/** Two textbook shortcuts for small groups, kept because printed tables rest on them. */
import { ensure } from "../../units/index.ts";

/**
 * Cannon & Roe's shortcut, (1 − (1 − c)^(1/D))·(N − (D − 1)/2), not rounded.
 *
 * An approximation: rounded up it can differ from the exact size by one. Show it as such and
 * plan with `finiteDetectionSampleSize`.
 *
 * @returns number to examine, not whole
 * @throws DomainError when D is not 1 … N or the confidence not in (0, 1)
 * @source Cannon & Roe 1982
 *
 * @example
 * cannonRoeSize({ population: 1600, infested: 16, confidence: 0.99 })  // → 398.2934716
 */
export function cannonRoeSize(design: {
  readonly population: number;
  readonly infested: number;
  readonly confidence: number;
}): number {
  const { population, infested, confidence } = design;
  check(design);
  return -Math.expm1(Math.log1p(-confidence) / infested) * (population - (infested - 1) / 2);
}

/**
 * MacDiarmid's shortcut for a test that misses some, (N/Se)·(1 − (1 − c)^(1/D)), not rounded.
 *
 * Farther from the exact size than Cannon & Roe's. Show it as an approximation.
 *
 * @returns number to examine, not whole
 * @throws DomainError when D is not 1 … N, the confidence not in (0, 1) or the sensitivity not in (0, 1]
 * @source MacDiarmid 1988
 *
 * @example
 * Math.ceil(macDiarmidSize({ population: 1000, infested: 50, confidence: 0.95, sensitivity: 0.9 }))  // → 65
 */
export function macDiarmidSize(design: {
  readonly population: number;
  readonly infested: number;
  readonly confidence: number;
  readonly sensitivity: number;
}): number {
  const { population, infested, confidence, sensitivity } = design;
  check(design);
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  return (population / sensitivity) * -Math.expm1(Math.log1p(-confidence) / infested);
}

function check(design: { readonly population: number; readonly infested: number; readonly confidence: number }): void {
  const { population, infested, confidence } = design;
  ensure(Number.isInteger(population) && population >= 1, "population", population, "a whole number ≥ 1");
  const inside = Number.isInteger(infested) && infested >= 1 && infested <= population;
  ensure(inside, "infested", infested, "a whole number from 1 to the population");
  ensure(confidence > 0 && confidence < 1, "confidence", confidence, "in (0, 1)");
}
