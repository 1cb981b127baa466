/** Left and right trunks: an identity that must hold, and what chance says about bees with mites on both sides. */
import { binomial } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Problem, type Result } from "../../units/index.ts";
import { fisherTest } from "./fisher-test.ts";
import { benchProblem } from "./problems.ts";

export interface SidesCheck {
  /** Share of infested bees with mites on both sides. */
  readonly bothShare: number;
  /** Bees with mites on both sides that the left and right counts give if sides are independent: L·R/n. */
  readonly expectedFromSides: number;
  /** The same from the prevalence P alone: n·q², q = 1 − √(1 − P). */
  readonly expectedFromPrevalence: number;
  /** Chance of as many both-sided bees or more, sides independent, left and right counts given. */
  readonly pValue: number;
  /** Chance of a left–right difference as large or larger, two-sided. */
  readonly leftRightPValue: number;
}

/** Below this chance the bench speaks up; our choice, no source. */
export const sidesAlarm = 0.01;

/**
 * Checks left, right, both and infested against each other.
 *
 * Identity: left + right = infested + both, for every bee has mites on one side or on both. Mites enter either
 * side at random (Gary & Page 1987), so far more both-sided bees than chance gives mean a mixture of heavily and
 * hardly infested bees, or a reader who looks harder at the second side once the first had mites.
 *
 * @returns SidesCheck with warnings `both-sides-far-exceed`, `left-and-right-differ`; or `sides-do-not-add-up`,
 *   `positives-exceed-examined`, `nothing-examined`
 * @throws DomainError for counts that are not whole numbers ≥ 0
 * @source Gary & Page 1987 (randomness of sides); Fisher's exact test for the excess
 *
 * @example
 * sidesCheck({ left: 30, right: 28, both: 20, infested: 38, examined: 100 }).value.expectedFromSides  // → 8.4
 * sidesCheck({ left: 30, right: 28, both: 20, infested: 40, examined: 100 }).ok  // → false
 */
export function sidesCheck(counts: {
  readonly left: number;
  readonly right: number;
  readonly both: number;
  readonly infested: number;
  readonly examined: number;
}): Result<SidesCheck> {
  const { left, right, both, infested, examined } = counts;
  for (const [name, count] of Object.entries(counts)) {
    ensure(Number.isInteger(count) && count >= 0, name, count, "a whole number ≥ 0");
  }
  if (examined === 0) return blocked(benchProblem("nothing-examined", "blocked", "examined", {}));
  if (infested > examined) {
    return blocked(benchProblem("positives-exceed-examined", "blocked", "infested", { positive: infested, examined }));
  }
  if (left + right !== infested + both || both > Math.min(left, right)) {
    return blocked(benchProblem("sides-do-not-add-up", "blocked", "both", { left, right, both, infested }));
  }
  const q = 1 - Math.sqrt(1 - infested / examined);
  const expected = (left * right) / examined;
  const pValue = fisherTest({ a: both, b: left - both, c: right - both, d: examined - infested }).greater;
  const leftRightPValue = signTest(left - both, right - both);
  const problems: Problem[] = [];
  if (pValue < sidesAlarm) {
    problems.push(benchProblem("both-sides-far-exceed", "warned", "both", { both, expected, examined, pValue }));
  }
  if (leftRightPValue < sidesAlarm) {
    const slots = { left, right, pValue: leftRightPValue };
    problems.push(benchProblem("left-and-right-differ", "warned", "left", slots));
  }
  return answered(
    {
      bothShare: infested === 0 ? 0 : both / infested,
      expectedFromSides: expected,
      expectedFromPrevalence: examined * q * q,
      pValue,
      leftRightPValue,
    },
    problems,
  );
}

/**
 * Infested bees from the trunks, when a report prints only left, right and the share of infested bees with both.
 *
 * From the identity: infested = (left + right)/(1 + both share). Not rounded.
 *
 * @throws DomainError for counts below 0 or a share outside [0, 1]
 * @source the identity above
 *
 * @example
 * infestedFromSides({ left: 2144, right: 2138, bothShare: 0.58 })  // → 2710.126582
 */
export function infestedFromSides(trunks: {
  readonly left: number;
  readonly right: number;
  readonly bothShare: number;
}): number {
  const { left, right, bothShare } = trunks;
  ensure(left >= 0 && left < Infinity, "left", left, "0 or more");
  ensure(right >= 0 && right < Infinity, "right", right, "0 or more");
  ensure(bothShare >= 0 && bothShare <= 1, "bothShare", bothShare, "in [0, 1]");
  return (left + right) / (1 + bothShare);
}

export interface OneSide {
  /** Chance that one trunk is infested, q = 1 − √(1 − P). */
  readonly trunkShare: number;
  /** Share of infested bees with mites on both sides, q²/P. */
  readonly bothShare: number;
  /** Share of infested bees found by reading one side only, q/P. */
  readonly sensitivity: number;
}

/**
 * What reading one side only would find, if mites take either side at random.
 *
 * @throws DomainError unless 0 < P ≤ 1
 * @source Gary & Page 1987 (randomness of sides); the three figures follow
 *
 * @example
 * oneSideReading(0.36).sensitivity  // → 0.5555555556
 */
export function oneSideReading(prevalenceOfBees: number): OneSide {
  ensure(prevalenceOfBees > 0 && prevalenceOfBees <= 1, "prevalenceOfBees", prevalenceOfBees, "in (0, 1]");
  // q = 1 − √(1 − P) = P/(1 + √(1 − P)): no digits lost for small P.
  const sensitivity = 1 / (1 + Math.sqrt(1 - prevalenceOfBees));
  const trunkShare = prevalenceOfBees * sensitivity;
  return { trunkShare, bothShare: trunkShare * sensitivity, sensitivity };
}

/** Two-sided sign test of x against y, halves expected. */
function signTest(x: number, y: number): number {
  const n = x + y;
  return n === 0 ? 1 : Math.min(1, 2 * binomial({ n, p: 0.5 }).cdf(Math.min(x, y)));
}
