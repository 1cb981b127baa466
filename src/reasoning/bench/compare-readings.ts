/** Two readers of the same preparations: do they differ beyond chance, and does it matter? */
import { binomial } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Problem, type Result } from "../../units/index.ts";
import { fisherTest } from "./fisher-test.ts";
import { benchProblem } from "./problems.ts";

export interface ReadersCompared {
  /** Chance of a difference as large or larger if both read alike. */
  readonly pValue: number;
  /** `mcnemar-exact` bee by bee, `fisher` when only the totals are known. */
  readonly method: "mcnemar-exact" | "fisher";
  /** Whether the two shares lie on different sides of the border. */
  readonly classesDiffer: boolean;
  /** Both: different classes and beyond chance. The result is then held for a third reader, blind to the totals. */
  readonly thirdReader: boolean;
  readonly rule: "BE14";
}

/** Below this chance two readings count as different; customary, no source. */
export const readersAlarm = 0.05;

/**
 * Compares two readings.
 *
 * When it is known bee by bee which reader alone called it positive, McNemar's exact test on those bees. With totals
 * only, Fisher's test as if the bees were different ones: it finds less, so it is cautious about calling a difference.
 *
 * @returns ReadersCompared with the warning `readers-disagree`; or `nothing-examined`, `positives-exceed-examined`
 * @throws DomainError for counts that are not whole or a border outside (0, 1)
 * @source McNemar 1947 (exact form); Fisher 1935
 *
 * @example
 * compareReadings({ first: { positive: 3, examined: 50 }, second: { positive: 14, examined: 50 }, border: 0.1 }).value.thirdReader  // → true
 */
export function compareReadings(readings: {
  readonly first: { readonly positive: number; readonly examined: number };
  readonly second: { readonly positive: number; readonly examined: number };
  /** Share of infested bees between the two classes that lead to different acts. */
  readonly border: number;
  /** Bees that one reader alone called positive; of bees that both could read. */
  readonly onlyFirst?: number;
  readonly onlySecond?: number;
}): Result<ReadersCompared> {
  const { first, second, border, onlyFirst, onlySecond } = readings;
  ensure(border > 0 && border < 1, "border", border, "in (0, 1)");
  for (const { positive, examined } of [first, second]) {
    ensure(Number.isInteger(positive) && positive >= 0, "positive", positive, "a whole number ≥ 0");
    ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
    if (examined === 0 && positive === 0) return blocked(benchProblem("nothing-examined", "blocked", "examined", {}));
    if (positive > examined) {
      return blocked(benchProblem("positives-exceed-examined", "blocked", "positive", { positive, examined }));
    }
  }
  const paired = onlyFirst !== undefined && onlySecond !== undefined;
  const pValue = paired ? mcnemarExact(onlyFirst, onlySecond) : fisherOfTotals(first, second);
  const over = ({ positive, examined }: typeof first) => positive / examined >= border;
  const classesDiffer = over(first) !== over(second);
  const thirdReader = classesDiffer && pValue < readersAlarm;
  const problems: Problem[] = thirdReader
    ? [benchProblem("readers-disagree", "warned", null, { first: first.positive, second: second.positive, pValue })]
    : [];
  const method = paired ? "mcnemar-exact" : "fisher";
  return answered({ pValue, method, classesDiffer, thirdReader, rule: "BE14" }, problems);
}

/**
 * McNemar's exact test: of the bees on which readers differ, each is as likely to be called by one as by the other.
 *
 * @returns two-sided P; 1 when they differ on none
 * @throws DomainError for counts that are not whole numbers ≥ 0
 * @source McNemar 1947, exact binomial form
 *
 * @example
 * mcnemarExact(1, 9)  // → 0.021484375
 */
export function mcnemarExact(onlyFirst: number, onlySecond: number): number {
  ensure(Number.isInteger(onlyFirst) && onlyFirst >= 0, "onlyFirst", onlyFirst, "a whole number ≥ 0");
  ensure(Number.isInteger(onlySecond) && onlySecond >= 0, "onlySecond", onlySecond, "a whole number ≥ 0");
  const n = onlyFirst + onlySecond;
  return n === 0 ? 1 : Math.min(1, 2 * binomial({ n, p: 0.5 }).cdf(Math.min(onlyFirst, onlySecond)));
}

const fisherOfTotals = (
  first: { readonly positive: number; readonly examined: number },
  second: { readonly positive: number; readonly examined: number },
): number =>
  fisherTest({
    a: first.positive,
    b: first.examined - first.positive,
    c: second.positive,
    d: second.examined - second.positive,
  }).twoSided;
