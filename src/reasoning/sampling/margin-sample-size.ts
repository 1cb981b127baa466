/** How many bees to examine so that a share is known within a margin. */
import { normalUpperQuantile } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";

export interface MarginDesign {
  /** Share of infested bees expected, 0 < p < 1; 0.5 asks for the most bees. */
  readonly expectedPrevalence: number;
  /** Half the length of the interval wanted, 0 < m < 0.5. */
  readonly margin: number;
  readonly level: number;
}

/**
 * Half the length of Wilson's interval if the share found is the one expected.
 *
 * @returns proportion
 * @throws DomainError for a design outside its range
 * @source Wilson 1927
 *
 * @example
 * wilsonHalfWidth({ bees: 50, expectedPrevalence: 0.1, level: 0.95 })  // → 0.0850632747
 */
export function wilsonHalfWidth(design: {
  readonly bees: number;
  readonly expectedPrevalence: number;
  readonly level: number;
}): number {
  const { bees, expectedPrevalence: p, level } = design;
  ensure(Number.isInteger(bees) && bees >= 1, "bees", bees, "a whole number ≥ 1");
  ensure(p >= 0 && p <= 1, "expectedPrevalence", p, "in [0, 1]");
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const square = normalUpperQuantile((1 - level) / 2) ** 2;
  return Math.sqrt(square * ((p * (1 - p)) / bees + square / (4 * bees * bees))) / (1 + square / bees);
}

/**
 * Fewest bees whose Wilson interval is no longer than twice the margin, the share found being the one expected.
 *
 * Independent bees of a large colony; bees that cluster by age need more.
 *
 * @returns bees, a whole number ≥ 1
 * @throws DomainError for a design outside its range
 * @source Wilson 1927; Pirk et al. 2013, BEEBOOK I, section 2.2.3 advises this interval
 *
 * @example
 * marginSampleSize({ expectedPrevalence: 0.2, margin: 0.1, level: 0.95 })  // → 60
 */
export function marginSampleSize({ expectedPrevalence, margin, level }: MarginDesign): number {
  ensure(expectedPrevalence > 0 && expectedPrevalence < 1, "expectedPrevalence", expectedPrevalence, "in (0, 1)");
  ensure(margin > 0 && margin < 0.5, "margin", margin, "in (0, 0.5)");
  const fits = (bees: number) => wilsonHalfWidth({ bees, expectedPrevalence, level }) <= margin;
  let [tooFew, enough] = [0, 1];
  while (!fits(enough)) {
    // Beyond this, numbers of bees are no longer told apart and the search would not end.
    ensure(enough < 2 ** 50, "margin", margin, "wide enough for a number of bees that can be counted");
    [tooFew, enough] = [enough, 2 * enough];
  }
  while (enough - tooFew > 1) {
    const middle = Math.floor((tooFew + enough) / 2);
    if (fits(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}
