/** How many bees with 0, 1, 2, … mites a law gives, to be held against the bees counted. */
import { ensure } from "../../units/index.ts";
import { negativeBinomialLogLikelihood, poissonLogLikelihood } from "./negative-binomial.ts";

/**
 * Expected bees by mites in a bee: one number for each of 0 … last, and in place of the last one all with that many or more.
 *
 * @returns last + 1 numbers that add up to `bees`
 * @throws DomainError unless the mean is above 0, k above 0 or null, bees and last whole and ≥ 1
 * @source negative binomial law, Poisson law where k is null
 *
 * @example
 * expectedCounts({ mean: 1, k: 1, bees: 100, last: 2 })  // → [50, 25, 25]
 */
export function expectedCounts(given: {
  /** Mites per bee. */
  readonly mean: number;
  /** Aggregation; null for mites that sit at random. */
  readonly k: number | null;
  readonly bees: number;
  /** The last class, open above. */
  readonly last: number;
}): readonly number[] {
  const { mean, k, bees, last } = given;
  ensure(mean > 0 && Number.isFinite(mean), "mean", mean, "above 0");
  ensure(Number.isInteger(bees) && bees >= 1, "bees", bees, "a whole number ≥ 1");
  ensure(Number.isInteger(last) && last >= 1, "last", last, "a whole number ≥ 1");
  const chance = (count: number) => {
    const one = [{ count, mean, bees: 1 }];
    return Math.exp(k === null ? poissonLogLikelihood(one) : negativeBinomialLogLikelihood(one, k));
  };
  const below = Array.from({ length: last }, (_, count) => bees * chance(count));
  // Rounding alone can carry the sum above the bees there are.
  return [...below, Math.max(0, bees - below.reduce((sum, each) => sum + each, 0))];
}
