/** Thresholds of probability for a condition that is there or not: wait, test first, act. */
import { ensure } from "../../units/index.ts";
import type { Action } from "./losses.ts";

export interface Stakes {
  /** Net benefit of treating a colony that has the condition; above 0, any one unit. */
  readonly benefit: number;
  /** Net harm of treating a colony that has it not; ≥ 0, same unit. */
  readonly harm: number;
}

export interface TestStakes extends Stakes {
  readonly sensitivity: number;
  readonly specificity: number;
  /** Cost of the test, ≥ 0, same unit. */
  readonly testCost: number;
}

export interface TestThresholds {
  /** Without a test: treat above this probability. */
  readonly treatment: number;
  /** Below this probability neither test nor treat. */
  readonly testing: number;
  /** Above this probability treat without testing. */
  readonly testTreatment: number;
  /** False when the two cross: the test is then never worth its cost. */
  readonly worthTesting: boolean;
  /** The largest cost at which the test is of use at some probability; below 0 when it never is. */
  readonly largestTestCost: number;
}

/**
 * Probability of the condition above which treating is better than waiting: R/(R + B).
 *
 * @returns proportion 0–1
 * @throws DomainError unless the benefit is above 0 and the harm 0 or more
 * @source Pauker & Kassirer 1975, New England Journal of Medicine 293:229
 *
 * @example
 * treatmentThreshold({ benefit: 100, harm: 10 })  // → 0.0909090909
 */
export function treatmentThreshold({ benefit, harm }: Stakes): number {
  ensure(benefit > 0 && Number.isFinite(benefit), "benefit", benefit, "above 0");
  ensure(harm >= 0 && Number.isFinite(harm), "harm", harm, "0 or more");
  return harm / (harm + benefit);
}

/**
 * The two thresholds between which testing first is best, and whether the test is ever worth it.
 *
 * Testing ((1 − Sp)R + c)/((1 − Sp)R + Se·B); test-treatment (Sp·R − c)/(Sp·R + (1 − Se)B). They may lie outside
 * 0 to 1 for a costly test; they are given as they come.
 *
 * @throws DomainError for stakes, cost or test properties outside their range
 * @source Pauker & Kassirer 1980, New England Journal of Medicine 302:1109 (abstract read, formulas from memory and
 *   checked by equating expected utilities)
 *
 * @example
 * testThresholds({ benefit: 100, harm: 10, sensitivity: 0.9, specificity: 0.95, testCost: 1 }).testing  // → 0.01657458564
 */
export function testThresholds(stakes: TestStakes): TestThresholds {
  const { benefit, harm, sensitivity, specificity, testCost } = checked(stakes);
  const [acting, waiting] = [
    specificity * harm + (1 - sensitivity) * benefit,
    (1 - specificity) * harm + sensitivity * benefit,
  ];
  ensure(acting > 0, "harm", harm, "above 0 where the test misses nothing: else nothing speaks against acting at once");
  ensure(waiting > 0, "sensitivity", sensitivity, "above 0 where the specificity is 1: else the test never says yes");
  const testing = ((1 - specificity) * harm + testCost) / waiting;
  const testTreatment = (specificity * harm - testCost) / acting;
  return {
    treatment: treatmentThreshold(stakes),
    testing,
    testTreatment,
    worthTesting: testing < testTreatment,
    largestTestCost: (benefit * harm * (sensitivity + specificity - 1)) / (benefit + harm),
  };
}

/** Expected utilities, waiting on a healthy colony being 0. */
export interface Utilities {
  readonly wait: number;
  readonly testFirst: number;
  readonly actNow: number;
}

/**
 * Expected utility of the three actions at one probability; `testThresholds` are where they cross.
 *
 * @throws DomainError for a probability outside [0, 1] or stakes outside their range
 * @source definition of the stakes
 *
 * @example
 * expectedUtilities({ probability: 0.2, benefit: 100, harm: 10, sensitivity: 0.9, specificity: 0.95, testCost: 1 }).testFirst  // → 16.6
 */
export function expectedUtilities(stakes: TestStakes & { readonly probability: number }): Utilities {
  const { benefit, harm, sensitivity, specificity, testCost } = checked(stakes);
  const { probability } = stakes;
  ensure(probability >= 0 && probability <= 1, "probability", probability, "in [0, 1]");
  const healthy = 1 - probability;
  return {
    wait: 0,
    testFirst: probability * sensitivity * benefit - healthy * (1 - specificity) * harm - testCost,
    actNow: probability * benefit - healthy * harm,
  };
}

/**
 * The action of most expected utility. At a tie waiting comes before acting, and a test is named only when better.
 *
 * @source definition
 *
 * @example
 * bestByUtility({ wait: 0, testFirst: 16.6, actNow: 12 })  // → test-first
 */
export function bestByUtility({ wait, testFirst, actNow }: Utilities): Action {
  const untested = actNow > wait ? "act-now" : "wait";
  return testFirst > Math.max(wait, actNow) ? "test-first" : untested;
}

/**
 * Value of knowing the state: expected best utility with knowledge, less the best expected utility without.
 *
 * @returns expected utility of each action, the index of the best, and the value of perfect information ≥ 0
 * @throws DomainError unless the chances sum to 1 and every action has one utility per state
 * @source standard definition of decision analysis
 *
 * @example
 * valueOfKnowingState({ chances: [0.5, 0.3, 0.2], utilities: [[0, -80, -150], [-20, -25, -60], [-12, -40, -30]] }).evpi  // → 10.5
 */
export function valueOfKnowingState(problem: {
  /** Probability of each state. */
  readonly chances: readonly number[];
  /** One row per action, one utility per state. */
  readonly utilities: readonly (readonly number[])[];
}): { readonly expected: readonly number[]; readonly best: number; readonly evpi: number } {
  const { chances, utilities } = problem;
  const total = chances.reduce((sum, each) => sum + each, 0);
  ensure(chances.every((each) => each >= 0) && Math.abs(total - 1) < 1e-9, "chances", chances, "0 or more, sum 1");
  ensure(utilities.flat().every(Number.isFinite), "utilities", utilities, "finite numbers");
  ensure(utilities.length > 0, "utilities", utilities, "at least one action");
  const fitting = utilities.every((row) => row.length === chances.length);
  ensure(fitting, "utilities", utilities, "one utility per state in each row");
  const expected = utilities.map((row) =>
    row.reduce((sum, utility, state) => sum + utility * (chances[state] ?? 0), 0),
  );
  const most = Math.max(...expected);
  const knowing = chances.reduce((sum, p, state) => sum + p * Math.max(...utilities.map((row) => row[state] ?? 0)), 0);
  return { expected, best: expected.indexOf(most), evpi: knowing - most };
}

function checked<S extends TestStakes>(stakes: S): S {
  const { sensitivity, specificity, testCost } = stakes;
  treatmentThreshold(stakes);
  ensure(sensitivity >= 0 && sensitivity <= 1, "sensitivity", sensitivity, "in [0, 1]");
  ensure(specificity >= 0 && specificity <= 1, "specificity", specificity, "in [0, 1]");
  ensure(testCost >= 0 && Number.isFinite(testCost), "testCost", testCost, "0 or more");
  return stakes;
}
