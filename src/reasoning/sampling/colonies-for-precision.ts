/** How many colonies to sample so that the share of infested bees over all of them is known within a margin. */
import { normalUpperQuantile } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";

export interface PrecisionDesign {
  /** Share of infested bees expected, 0 < p < 1. */
  readonly expectedPrevalence: number;
  /** Half the length of the interval wanted, 0 < m < 1. */
  readonly margin: number;
  /** Intraclass correlation of bees within a colony, 0 ≤ ρ ≤ 1. */
  readonly intraclass: number;
  /** Bees read of each colony, a whole number ≥ 1. */
  readonly beesPerColony: number;
  readonly level: number;
}

export interface PrecisionSize {
  /** Bees of a simple sample; not whole. */
  readonly simpleBees: number;
  /** 1 + (bees − 1)·ρ. */
  readonly designEffect: number;
  /** Bees needed when they come from colonies; not whole. */
  readonly bees: number;
  /** Colonies to sample, a whole number ≥ 1. */
  readonly colonies: number;
}

/**
 * Colonies needed for a margin, the same number of bees from each.
 *
 * Model: normal approximation, z²·p·(1 − p)/m² bees times the design effect; many colonies to draw from.
 *
 * @throws DomainError for a design outside its range
 * @source Bennett, Woods, Liyanage & Smith 1991, World Health Statistics Quarterly 44:98–106, p. 102 (as quoted in a software manual)
 *
 * @example
 * coloniesForPrecision({ expectedPrevalence: 0.2, margin: 0.05, intraclass: 0.02, beesPerColony: 20, level: 0.95 }).colonies  // → 17
 */
export function coloniesForPrecision(design: PrecisionDesign): PrecisionSize {
  const { expectedPrevalence: p, margin, intraclass, beesPerColony, level } = design;
  ensure(p > 0 && p < 1, "expectedPrevalence", p, "in (0, 1)");
  ensure(margin > 0 && margin < 1, "margin", margin, "in (0, 1)");
  ensure(intraclass >= 0 && intraclass <= 1, "intraclass", intraclass, "in [0, 1]");
  ensure(Number.isInteger(beesPerColony) && beesPerColony >= 1, "beesPerColony", beesPerColony, "a whole number ≥ 1");
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const simpleBees = (normalUpperQuantile((1 - level) / 2) ** 2 * p * (1 - p)) / margin ** 2;
  const designEffect = 1 + (beesPerColony - 1) * intraclass;
  const bees = simpleBees * designEffect;
  ensure(Number.isFinite(bees), "margin", margin, "wide enough for a number of bees that can be counted");
  // A whole number of colonies on paper must not cost one more by rounding.
  return { simpleBees, designEffect, bees, colonies: Math.ceil(bees / beesPerColony - 1e-12) };
}
