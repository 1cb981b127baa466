/** McNemar's test with all its P values: two readers, or two looks, at the same bees. */
import { binomial, chiSquare } from "../../numerics/index.ts";
import { answered, blocked, type Result } from "../../units/index.ts";
import { mcnemarExact } from "./compare-readings.ts";
import { benchProblem } from "./problems.ts";

export interface McNemarTest {
  /** Exact two-sided P. */
  readonly exact: number;
  /** Exact P with the observed split counted by half: closer to its level on average, no longer sure. */
  readonly midP: number;
  /** Chi-square (b − c)²/(b + c) and its P, 1 degree of freedom: for many differing pairs. */
  readonly chiSquare: { readonly statistic: number; readonly pValue: number };
  /** The same statistic with 1 taken off the difference. */
  readonly corrected: { readonly statistic: number; readonly pValue: number };
}

/**
 * McNemar's test on the bees that two readings call differently.
 *
 * @returns McNemarTest, or `no-bee-read-differently`
 * @throws DomainError for counts that are not whole numbers ≥ 0
 * @source McNemar 1947; mid-P: Fagerland, Lydersen & Laake 2013, BMC Medical Research Methodology 13:91
 *
 * @example
 * mcnemarTest(1, 9).value.midP  // → 0.01171875
 */
export function mcnemarTest(onlyFirst: number, onlySecond: number): Result<McNemarTest> {
  const exact = mcnemarExact(onlyFirst, onlySecond);
  const n = onlyFirst + onlySecond;
  if (n === 0) return blocked(benchProblem("no-bee-read-differently", "blocked", null, {}));
  const observed = binomial({ n, p: 0.5 }).pmf(onlyFirst);
  const apart = Math.abs(onlyFirst - onlySecond);
  const test = (distance: number) => {
    const statistic = distance ** 2 / n;
    return { statistic, pValue: chiSquare({ df: 1 }).sf(statistic) };
  };
  return answered({
    exact,
    // At an even split the exact P is cut at 1, and the observed split lies in both tails at once.
    midP: apart === 0 ? 1 - observed / 2 : exact - observed,
    chiSquare: test(apart),
    corrected: test(Math.max(0, apart - 1)),
  });
}
