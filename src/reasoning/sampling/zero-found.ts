/** None found: said with what that leaves possible and what makes it weaker. */
import { answered, blocked, type Estimate, ensure, type Problem, type Result, type Season } from "../../units/index.ts";
import { type CouldMiss, missedCurve } from "./missed-curve.ts";
import { samplingProblem } from "./problems.ts";
import { upperLimitOfZero } from "./upper-limit-of-zero.ts";

export interface ZeroFound {
  /** Up to what share the bees may still be infested, one-sided. */
  readonly oneSided: Estimate;
  /** The same from a two-sided interval: larger, and comparable with other intervals. */
  readonly twoSided: Estimate;
  readonly couldMiss: readonly CouldMiss[];
  /** strong: nothing known weakens it. weak: at least one of the warnings does. */
  readonly strength: "strong" | "weak";
}

/**
 * What can be said after none was found.
 *
 * A zero is weak in summer, when young bees dilute the share, after an earlier treatment, and when too few bees were
 * read to reach the design's confidence. Never "free of mites".
 *
 * @returns ZeroFound with the warnings `summer-zero-is-weak`, `treated-before`, `too-few-for-design`,
 *   `zero-rules-nothing-out`; or `nothing-examined`
 * @throws DomainError for a count that is not whole, a level outside (0, 1), a sensitivity outside (0, 1]
 * @source COLOSS BEEBOOK, tracheal mite methods, 3.2.1 (season); limits as in `upperLimitOfZero`
 *
 * @example
 * zeroFound({ examined: 30, level: 0.95, sensitivity: 1, season: "summer", treatmentDaysAgo: 35, designPrevalence: 0.05 }).value.strength  // → weak
 */
export function zeroFound(zero: {
  /** Readable bees examined. */
  readonly examined: number;
  readonly level: number;
  readonly sensitivity: number;
  readonly season: Season;
  /** Days since patties or another treatment were on; 0 while they are; null when there were none. */
  readonly treatmentDaysAgo: number | null;
  /** The share that was not to be missed. */
  readonly designPrevalence: number;
}): Result<ZeroFound> {
  const { examined, level, sensitivity, season, treatmentDaysAgo: daysAgo, designPrevalence } = zero;
  ensure(daysAgo === null || (daysAgo >= 0 && daysAgo < Infinity), "treatmentDaysAgo", daysAgo, "0 or more");
  const oneSided = upperLimitOfZero({ examined, level, sides: "one", sensitivity });
  const twoSided = upperLimitOfZero({ examined, level, sides: "two", sensitivity });
  if (!oneSided.ok) return oneSided;
  if (!twoSided.ok) return blocked(...twoSided.problems);
  const prevalences = [...new Set([0.01, 0.02, 0.05, 0.1, 0.2, designPrevalence])].sort((p, q) => p - q);
  const couldMiss = missedCurve({ bees: examined, sensitivity, prevalences });
  const missed = couldMiss.find(({ prevalence }) => prevalence === designPrevalence)?.missed ?? 1;
  const problems: Problem[] = [...twoSided.problems];
  if (season === "summer") {
    problems.push(samplingProblem("summer-zero-is-weak", "warned", "season", { beesPerColony: examined }));
  }
  if (daysAgo !== null) problems.push(samplingProblem("treated-before", "warned", "treatmentDaysAgo", { daysAgo }));
  if (missed > 1 - level + 1e-12) {
    const slots = { examined, designPrevalence, missed };
    problems.push(samplingProblem("too-few-for-design", "warned", "examined", slots));
  }
  const strength = problems.length > 0 ? "weak" : "strong";
  return answered({ oneSided: oneSided.value, twoSided: twoSided.value, couldMiss, strength }, problems);
}
