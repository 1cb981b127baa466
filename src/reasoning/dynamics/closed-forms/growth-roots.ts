/** Daily growth of mites in two simple settings: tracheal mites in a broodless cluster, varroa beside sealed brood. */
import { root } from "../../../numerics/index.ts";
import { ensure } from "../../../units/index.ts";
import { latentStages } from "../layout.ts";
import type { DynamicsParameters } from "../parameters.ts";

/**
 * Factor by which the infested share of a broodless winter cluster grows in a day, while it is small and infested bees
 * die no faster than others.
 *
 * The largest root of (z − 1)(z − 1 + advance)^7 = contact rate · susceptibility of old bees · advance^7.
 *
 * @source derived from the equations of the daily model
 * @example
 * winterGrowth(specified)  // → 1.011585190772
 */
export function winterGrowth({ contactRate, oldSusceptibility, latentAdvance }: DynamicsParameters): number {
  const rate = contactRate * oldSusceptibility;
  ensure(rate > 0 && rate < Infinity, "contactRate", contactRate, "a finite number above 0");
  // Divided by advance^7, so that slow stages lose no digits.
  const f = (z: number) => (z - 1) * (1 + (z - 1) / latentAdvance) ** latentStages - rate;
  return root({ f, low: 1, high: 1 + rate });
}

export interface VarroaGrowth {
  /** Share of mites on bees that enter a cell each day. */
  readonly invasion: number;
  /** Mites that leave a cell for each that entered. */
  readonly gain: number;
  /** Share of mites on bees that live through a day. */
  readonly survival: number;
}

/** Days varroa is sealed in with worker brood; common practice, no source. */
const sealedDays = 12;

/**
 * Factor by which varroa grows in a day while there is brood: mites on bees enter cells and leave them, more, 12 days
 * later. A companion for comparison; its usual values of invasion and survival are from memory.
 *
 * The largest root of z − (1 − invasion)·survival = invasion·survival·gain·z⁻¹².
 *
 * @throws DomainError for a number outside its range, and where the mites would not grow
 * @source own derivation; gain 1.3–1.5 daughters a cycle in DeGrandi-Hoffman and others 2016
 * @example
 * varroaGrowth({ invasion: 1 / 7, gain: 1.5, survival: 0.994 })  // → 1.019982879
 */
export function varroaGrowth({ invasion, gain, survival }: VarroaGrowth): number {
  ensure(invasion > 0 && invasion <= 1, "invasion", invasion, "above 0, to 1");
  ensure(survival > 0 && survival <= 1, "survival", survival, "above 0, to 1");
  ensure(gain > 0 && gain < Infinity, "gain", gain, "a finite number above 0");
  const f = (z: number) => z - (1 - invasion) * survival - invasion * survival * gain * z ** -sealedDays;
  ensure(f(1) <= 0, "gain", gain, "large enough for the mites to grow");
  return root({ f, low: 1, high: 1 + gain });
}
