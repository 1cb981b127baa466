/** Two textbook shortcuts for small groups, kept because printed tables rest on them. */
import { ensure } from "../../units/index.ts";
import { tieSlack } from "./detection-sample-size.ts";

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

/**
 * Cannon & Roe's shortcut the other way: how many infested a zero leaves possible, (1 − (1 − c)^(1/n))·(N − (n − 1)/2).
 *
 * An approximation of `finiteUpperLimitOfZero`. Show it as such.
 *
 * @returns number infested, not whole
 * @throws DomainError when n is not 1 … N or the level not in (0, 1)
 * @source Cannon & Roe 1982
 *
 * @example
 * cannonRoeLimitOfZero({ population: 60, examined: 20, level: 0.95 })  // → 7.0249712037
 */
export function cannonRoeLimitOfZero(zero: {
  readonly population: number;
  readonly examined: number;
  readonly level: number;
}): number {
  const { population, examined, level } = zero;
  const inside = Number.isInteger(examined) && examined >= 1 && examined <= population;
  ensure(inside, "examined", examined, "a whole number from 1 to the population");
  // The formula is the same with n and D changed about.
  return cannonRoeSize({ population, infested: examined, confidence: level });
}

/** The two shortcuts rounded up to whole ones, at most all there are. */
export interface ShortcutSizes {
  readonly cannonRoe: number;
  readonly macDiarmid: number;
}

/**
 * Both shortcuts as numbers to examine. Cannon & Roe's takes no notice of the sensitivity.
 *
 * @throws DomainError as `macDiarmidSize`
 * @source Cannon & Roe 1982; MacDiarmid 1988
 *
 * @example
 * shortcutSizes({ population: 1000, infested: 50, confidence: 0.95, sensitivity: 0.9 })  // → {"cannonRoe":57,"macDiarmid":65}
 */
export function shortcutSizes(design: Parameters<typeof macDiarmidSize>[0]): ShortcutSizes {
  const whole = (size: number) => Math.min(design.population, Math.ceil(size - tieSlack));
  return { cannonRoe: whole(cannonRoeSize(design)), macDiarmid: whole(macDiarmidSize(design)) };
}

function check(design: { readonly population: number; readonly infested: number; readonly confidence: number }): void {
  const { population, infested, confidence } = design;
  ensure(Number.isInteger(population) && population >= 1, "population", population, "a whole number ≥ 1");
  const inside = Number.isInteger(infested) && infested >= 1 && infested <= population;
  ensure(inside, "infested", infested, "a whole number from 1 to the population");
  ensure(confidence > 0 && confidence < 1, "confidence", confidence, "in (0, 1)");
}
