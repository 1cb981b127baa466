/** The hypergeometric distribution: marked ones among those drawn without putting back. */
import { ensure } from "../units/index.ts";
import { logCountsWidth, saddlePair } from "./binomial.ts";
import { countDistribution, type DiscreteDistribution } from "./distribution.ts";
import { complement, sumRatios } from "./ratio-sum.ts";

export interface HypergeometricDesign {
  /** How many there are. Whole, ≥ 0. */
  readonly population: number;
  /** How many of them are marked. Whole, ≤ population. */
  readonly marked: number;
  /** How many are drawn, without putting back. Whole, ≤ population. */
  readonly drawn: number;
}

/**
 * The number of marked ones among those drawn without putting back.
 *
 * @throws DomainError unless all three are whole numbers, population up to 9e7, marked and drawn at most population
 * @source Loader 2000, Fast and accurate computation of binomial probabilities; tails by summing from the outside in
 * @example
 * hypergeometric({ population: 60, marked: 6, drawn: 20 }).pmf(0)  // → 0.0766696774879
 */
export function hypergeometric({ population, marked, drawn }: HypergeometricDesign): DiscreteDistribution {
  ensure(whole(population) && population <= 9e7, "population", population, "a whole number from 0 to 9e7");
  ensure(whole(marked) && marked <= population, "marked", marked, "a whole number from 0 to population");
  ensure(whole(drawn) && drawn <= population, "drawn", drawn, "a whole number from 0 to population");
  const unmarked = population - marked;
  const mean = population === 0 ? 0 : (marked * drawn) / population;
  const low = Math.max(0, drawn - unmarked);
  const high = Math.min(marked, drawn);
  const share = population === 0 ? 0 : drawn / population;
  const rest = population === 0 ? 1 : (population - drawn) / population;
  const logPmf = (k: number): number => {
    // All products of counts are below 2^53, so the lead over the mean is exact but for one division.
    const ahead = population === 0 ? 0 : (k * population - marked * drawn) / population;
    return (
      logCountsWidth(k, marked) +
      logCountsWidth(drawn - k, unmarked) -
      logCountsWidth(drawn, population) +
      saddlePair({ successes: k, failures: marked - k, p: share, q: rest, ahead }) +
      saddlePair({ successes: drawn - k, failures: unmarked - drawn + k, p: share, q: rest, ahead: -ahead })
    );
  };
  const lower = (k: number) =>
    Math.exp(logPmf(k)) *
    sumRatios(k - low, (i) => {
      const from = k - i;
      return (from / (marked - from + 1)) * ((unmarked - drawn + from) / (drawn - from + 1));
    });
  const upper = (k: number) =>
    Math.exp(logPmf(k + 1)) *
    sumRatios(high - k - 1, (i) => {
      const from = k + 1 + i;
      return ((marked - from) / (from + 1)) * ((drawn - from) / (unmarked - drawn + from + 1));
    });
  return countDistribution({
    support: { low, high },
    mean,
    variance: population < 2 ? 0 : mean * (unmarked / population) * ((population - drawn) / (population - 1)),
    logPmf,
    cdf: (k) => (k < mean ? lower(k) : complement(upper(k), () => lower(k))),
    sf: (k) => (k < mean ? complement(lower(k), () => upper(k)) : upper(k)),
  });
}

const whole = (n: number) => Number.isInteger(n) && n >= 0;
