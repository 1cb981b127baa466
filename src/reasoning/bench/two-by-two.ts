/** Two groups, two outcomes: chi-square, Fisher's test, odds ratio and relative risk. */
import { normalSf, normalUpperQuantile } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { checkCounts, type FisherTest, fisherTest, type TwoByTwo } from "./fisher-test.ts";
import { benchProblem } from "./problems.ts";

export interface Association {
  /** Share with the outcome in the first and in the second group. */
  readonly shares: readonly [number, number];
  readonly oddsRatio: Estimate;
  readonly relativeRisk: Estimate;
  /** Pearson's chi-square without correction, 1 degree of freedom. */
  readonly chiSquare: { readonly statistic: number; readonly pValue: number };
  /** The same with Yates's correction. */
  readonly yates: { readonly statistic: number; readonly pValue: number };
  readonly fisher: FisherTest;
}

/**
 * How strongly group and outcome go together, by the usual measures side by side.
 *
 * Odds ratio with Woolf's and relative risk with Katz's limits on the logarithmic scale; when a cell is 0, half is
 * added to every cell for the limits and a warning says so. Association is no cause: nothing is adjusted.
 *
 * @returns Association, or `table-has-empty-margin` when a group or an outcome never occurs
 * @throws DomainError for counts that are not whole numbers ≥ 0 or a level outside (0, 1)
 * @source Pearson 1900; Woolf 1955; Katz et al. 1978; Fisher 1935
 *
 * @example
 * association({ a: 12, b: 13, c: 99, d: 284 }).value.oddsRatio.value  // → 2.648018648
 */
export function association(table: TwoByTwo, level = 0.95): Result<Association> {
  checkCounts(table);
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const { a, b, c, d } = table;
  if ((a + b) * (c + d) * (a + c) * (b + d) === 0) {
    return blocked(benchProblem("table-has-empty-margin", "blocked", null, { a, b, c, d }));
  }
  const n = a + b + c + d;
  const problems: Problem[] = [];
  const empty = Math.min(a, b, c, d) === 0;
  if (empty) problems.push(benchProblem("half-added-to-cells", "noted", null, { a, b, c, d }));
  const smallestExpected = (Math.min(a + b, c + d) * Math.min(a + c, b + d)) / n;
  if (smallestExpected < 5) problems.push(benchProblem("chi-square-thin", "warned", null, { smallestExpected }));
  const [e, f, g, h] = empty ? [a + 0.5, b + 0.5, c + 0.5, d + 0.5] : [a, b, c, d];
  const margins = (a + b) * (c + d) * (a + c) * (b + d);
  const cross = Math.abs(a * d - b * c);
  const statistic = (n * cross ** 2) / margins;
  const corrected = (n * Math.max(0, cross - n / 2) ** 2) / margins;
  const ratio = (value: number, logVariance: number, method: string): Estimate => {
    const width = normalUpperQuantile((1 - level) / 2) * Math.sqrt(logVariance);
    const [low, high] = [value * Math.exp(-width), value * Math.exp(width)];
    return { value, low, high, level, interval: "confidence", method, rule: "BE10", n };
  };
  return answered(
    {
      shares: [a / (a + b), c / (c + d)],
      oddsRatio: ratio((e * h) / (f * g), 1 / e + 1 / f + 1 / g + 1 / h, empty ? "woolf-log-half" : "woolf-log"),
      relativeRisk: ratio(
        e / (e + f) / (g / (g + h)),
        1 / e - 1 / (e + f) + 1 / g - 1 / (g + h),
        empty ? "katz-log-half" : "katz-log",
      ),
      chiSquare: { statistic, pValue: 2 * normalSf(Math.sqrt(statistic)) },
      yates: { statistic: corrected, pValue: 2 * normalSf(Math.sqrt(corrected)) },
      fisher: fisherTest(table),
    },
    problems,
  );
}
