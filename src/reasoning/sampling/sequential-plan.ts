/** Reading bees one after another until what was found is enough: Wald's two lines, turned into counts. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { samplingProblem } from "./problems.ts";

export interface SequentialTest {
  /** A share of infested bees that should be called low, 0 < p < highPrevalence. */
  readonly lowPrevalence: number;
  /** A share that should be called high, lowPrevalence < p < 1. */
  readonly highPrevalence: number;
  /** Wanted chance of calling high at `lowPrevalence`, 0 < alpha < 1. */
  readonly alpha: number;
  /** Wanted chance of calling low at `highPrevalence`, 0 < beta < 1; alpha + beta < 1. */
  readonly beta: number;
}

export interface SequentialDesign extends SequentialTest {
  /** Bees at which reading ends whatever was found. Whole, ≥ 1. */
  readonly maxBees: number;
  /** Bees read before the lines are first looked at. Whole, ≥ 1; 1 when not given. */
  readonly minBees?: number;
  /** Bees read between two looks. Whole, ≥ 1; 1 when not given. The last bee is always looked at. */
  readonly batch?: number;
  /** What is said when `maxBees` are read and neither line is crossed; midline when not given. */
  readonly atEnd?: AtEnd;
}

/** midline: low when x ≤ slope·n, else high. lowUpTo: low with so many infested or fewer, else high; whole, ≥ 0. */
export type AtEnd = "midline" | "undecided" | { readonly lowUpTo: number };

/** Low when x ≤ lowIntercept + slope·n, high when x ≥ highIntercept + slope·n. */
export interface SequentialLines {
  readonly slope: number;
  readonly lowIntercept: number;
  readonly highIntercept: number;
  /** Bees after which none infested first means low; no minimum and no batches thought of. */
  readonly firstLow: number;
  /** Bees after which all infested first means high. */
  readonly firstHigh: number;
}

/** The lines after a number of bees, in whole bees. */
export interface SequentialLook {
  readonly bees: number;
  /** Low with this many infested or fewer; null while even none is not yet low. */
  readonly low: number | null;
  /** High with this many infested or more; null while even all is not yet high. */
  readonly high: number | null;
}

export interface SequentialPlan {
  readonly design: Required<SequentialDesign>;
  readonly lines: SequentialLines;
  /** One for each number of bees at which one may stop, rising. */
  readonly looks: readonly SequentialLook[];
}

/** A line that meets a count on paper may miss it by rounding; within this much it meets. */
export const lineSlack = 1e-12;

/**
 * Wald's two parallel lines for a share low or high.
 *
 * Model: bees drawn independently from a large colony, one decision after each. The wanted chances of error are
 * kept on average only; what a plan really does is told by `sequentialCharacteristics`.
 *
 * @returns the lines, or `sequential-prevalences-disordered`, `sequential-errors-too-large`
 * @throws DomainError for a share or a chance outside (0, 1)
 * @source Wald 1947, Sequential Analysis, chapter 5
 *
 * @example
 * sequentialLines({ lowPrevalence: 0.01, highPrevalence: 0.1, alpha: 0.05, beta: 0.1 }).value.slope  // → 0.0397474322
 * sequentialLines({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 }).value.firstLow  // → 20
 */
export function sequentialLines(test: SequentialTest): Result<SequentialLines> {
  const { lowPrevalence, highPrevalence, alpha, beta } = test;
  for (const [name, value] of Object.entries({ lowPrevalence, highPrevalence, alpha, beta })) {
    ensure(value > 0 && value < 1, name, value, "in (0, 1)");
  }
  if (lowPrevalence >= highPrevalence) {
    const slots = { lowPrevalence, highPrevalence };
    return blocked(samplingProblem("sequential-prevalences-disordered", "blocked", "highPrevalence", slots));
  }
  if (alpha + beta >= 1) {
    return blocked(samplingProblem("sequential-errors-too-large", "blocked", "alpha", { alpha, beta }));
  }
  const lowOdds = Math.log(lowPrevalence) - Math.log1p(-lowPrevalence);
  const highOdds = Math.log(highPrevalence) - Math.log1p(-highPrevalence);
  const distance = highOdds - lowOdds;
  const slope = (Math.log1p(-lowPrevalence) - Math.log1p(-highPrevalence)) / distance;
  const lowIntercept = Math.log(beta / (1 - alpha)) / distance;
  const highIntercept = Math.log((1 - beta) / alpha) / distance;
  return answered(linesAt({ slope, lowIntercept, highIntercept }));
}

/** Lines with what they say first. */
export function linesAt(lines: Pick<SequentialLines, "slope" | "lowIntercept" | "highIntercept">): SequentialLines {
  const { slope, lowIntercept, highIntercept } = lines;
  return {
    ...lines,
    firstLow: Math.ceil(-lowIntercept / slope - lineSlack),
    firstHigh: Math.ceil(highIntercept / (1 - slope) - lineSlack),
  };
}

/**
 * A sequential plan with an end: its lines, and at each look the counts that stop the reading.
 *
 * @returns the plan, or `sequential-bees-disordered` and the problems of `sequentialLines`
 * @throws DomainError for a share or a chance outside (0, 1), or counts that are not whole and ≥ 1
 * @source Wald 1947, Sequential Analysis, chapter 5; whole counts with a slack of 1e-12
 *
 * @example
 * sequentialPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1, maxBees: 100 }).value.looks[19]  // → { bees: 20, low: 0, high: 4 }
 */
export function sequentialPlan(request: SequentialDesign): Result<SequentialPlan> {
  const design = { minBees: 1, batch: 1, atEnd: "midline" as const, ...request };
  const { minBees, maxBees, batch } = design;
  for (const [name, value] of Object.entries({ minBees, maxBees, batch })) {
    ensure(Number.isInteger(value) && value >= 1, name, value, "a whole number ≥ 1");
  }
  if (typeof design.atEnd === "object") {
    const { lowUpTo } = design.atEnd;
    ensure(Number.isInteger(lowUpTo) && lowUpTo >= 0, "lowUpTo", lowUpTo, "a whole number ≥ 0");
  }
  if (minBees > maxBees) {
    return blocked(samplingProblem("sequential-bees-disordered", "blocked", "minBees", { minBees, maxBees }));
  }
  const lines = sequentialLines(design);
  return lines.ok ? answered(planAlong(lines.value, design)) : lines;
}

/** The plan of these lines, whatever nominal errors its design tells. */
export function planAlong(lines: SequentialLines, design: Required<SequentialDesign>): SequentialPlan {
  const { minBees, maxBees, batch } = design;
  const looks: SequentialLook[] = [];
  for (let bees = minBees; bees < maxBees; bees += batch) looks.push(lookAt(lines, bees));
  looks.push(lookAt(lines, maxBees));
  return { design, lines, looks };
}

function lookAt({ slope, lowIntercept, highIntercept }: SequentialLines, bees: number): SequentialLook {
  const low = Math.floor(lowIntercept + slope * bees + lineSlack);
  const high = Math.ceil(highIntercept + slope * bees - lineSlack);
  return { bees, low: low >= 0 ? low : null, high: high <= bees ? high : null };
}
