/** What people do to a colony, day by day: less contact, mites killed, no laying, another stock. */
import { ensure } from "../../units/index.ts";

/** One number a day of the run, from its first day. */
export interface Measures {
  /** Factor on contact between bees, 0–1; 1 without an oil patty. */
  readonly contact: Float64Array;
  /** Hazard of the mites in infested bees, per day; 0 without a vapour. */
  readonly clearing: Float64Array;
  /** Factor on laying, 0–1; 0 without a laying queen. */
  readonly laying: Float64Array;
  /** Susceptibility of the bees that emerge. */
  readonly emerging: Float64Array;
}

/**
 * Nothing done for so many days, with a stock of the given susceptibility (1 as specified).
 *
 * @throws DomainError unless days is whole and ≥ 0 and the susceptibility finite and ≥ 0
 * @example
 * noMeasures(2).contact[1]  // → 1
 */
export function noMeasures(days: number, stockSusceptibility = 1): Measures {
  ensure(Number.isInteger(days) && days >= 0, "days", days, "a whole number of 0 or more");
  ensure(
    stockSusceptibility >= 0 && stockSusceptibility < Infinity,
    "stockSusceptibility",
    stockSusceptibility,
    "a finite number of 0 or more",
  );
  return {
    contact: new Float64Array(days).fill(1),
    clearing: new Float64Array(days),
    laying: new Float64Array(days).fill(1),
    emerging: new Float64Array(days).fill(stockSusceptibility),
  };
}
