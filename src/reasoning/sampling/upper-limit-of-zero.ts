/** None found: what share of infested bees that still leaves possible. */
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import { samplingProblem } from "./problems.ts";

/**
 * Interval for the prevalence after none was found in `examined` bees.
 *
 * One side: the largest p with (1 − Se·p)ⁿ ≥ 1 − level. Two sides: the same with (1 − level)/2, which is
 * the upper end of the Clopper–Pearson interval. Specificity 1, large colony.
 * A limit beyond 1 means that the zero rules nothing out: the high end is 1 and a warning says so.
 *
 * @returns Estimate with value 0, low 0; or the problem `nothing-examined`
 * @throws DomainError for a count that is not whole, a level outside (0, 1) or a sensitivity outside (0, 1]
 * @source Clopper & Pearson 1934; checks in the golden files of this step
 *
 * @example
 * upperLimitOfZero({ examined: 50, level: 0.95, sides: "one", sensitivity: 1 }).value.high  // → 0.0581550791
 * upperLimitOfZero({ examined: 50, level: 0.95, sides: "two", sensitivity: 1 }).value.high  // → 0.0711217365
 */
export function upperLimitOfZero(zero: {
  /** Readable bees examined, a whole number ≥ 0. */
  readonly examined: number;
  readonly level: number;
  readonly sides: "one" | "two";
  /** Probability that an infested bee is found, 0 < Se ≤ 1. */
  readonly sensitivity: number;
}): Result<Estimate> {
  const { examined, level, sides, sensitivity } = zero;
  ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number ≥ 0");
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  if (examined === 0) return blocked(samplingProblem("nothing-examined", "blocked", "examined", {}));

  const outside = sides === "one" ? 1 - level : (1 - level) / 2;
  const limit = -Math.expm1(Math.log(outside) / examined) / sensitivity;
  const estimate: Estimate = {
    value: 0,
    low: 0,
    high: Math.min(1, limit),
    level,
    interval: "confidence",
    method: sides === "one" ? "exact-upper-of-zero" : "clopper-pearson",
    rule: "SD8",
    n: examined,
  };
  if (limit < 1) return answered(estimate);
  return answered(estimate, [
    samplingProblem("zero-rules-nothing-out", "warned", "examined", { examined, sensitivity, level }),
  ]);
}
