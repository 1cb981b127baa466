/** What a sample of n bees is worth when the loss of waiting is proportional to the share infested. */
import { ensure, type Problem } from "../../units/index.ts";
import { type BenchTest, type BetaBelief, benchChances, ensureBelief, signals } from "./belief.ts";
import { lossesFrom, perfectLoss } from "./losses.ts";
import { decisionProblem } from "./problems.ts";

export interface SampleWorth {
  readonly bees: number;
  /** Expected fall of the loss through the sample, before its cost. */
  readonly evsi: number;
  /** Act from this number of positives on, 0 when acting is better anyway; null when no result leads to acting. */
  readonly actFrom: number | null;
  /** Says so when no result leads to acting. */
  readonly neverActs: Problem | null;
  /** Worth less cost; 0 for no sample. */
  readonly net: number;
}

export interface SamplingWorth {
  readonly priorMean: number;
  /** Loss of the better of waiting and acting, without a sample. */
  readonly lossNow: number;
  /** Share infested at which waiting and acting cost the same; above 1 when acting costs more than all there is. */
  readonly threshold: number;
  /** Value of knowing the share exactly: no sample is worth more. */
  readonly evpi: number;
  readonly rows: readonly SampleWorth[];
  /** Of the sizes asked for, the one with the largest net worth; the smallest at a tie. */
  readonly bestSize: number;
}

/**
 * Value of sample information for beta belief, waiting losing L·p and acting costing C.
 *
 * Exact also for an imperfect test. 0 ≤ EVSI ≤ EVPI, and EVSI never falls with n.
 *
 * @throws DomainError for a belief, costs, sizes or a test outside their range
 * @source Raiffa & Schlaifer 1961
 *
 * @example
 * valueOfSampling({ belief: { a: 2, b: 18 }, lossAtFull: 300, actCost: 45, sizes: [30], costPerBee: 0.02, fixedCost: 0.2 }).rows[0].evsi  // → 1.9297309434
 */
export function valueOfSampling(question: {
  readonly belief: BetaBelief;
  /** Loss of waiting when every bee is infested, L. */
  readonly lossAtFull: number;
  /** Cost of acting, C. */
  readonly actCost: number;
  /** Numbers of bees to look at, each a whole number ≥ 0. */
  readonly sizes: readonly number[];
  readonly costPerBee: number;
  readonly fixedCost: number;
  /** 1 when not given. */
  readonly sensitivity?: number;
  readonly specificity?: number;
}): SamplingWorth {
  const { belief, lossAtFull, actCost, sizes, costPerBee, fixedCost, sensitivity = 1, specificity = 1 } = question;
  ensureBelief(belief);
  ensure(lossAtFull > 0 && Number.isFinite(lossAtFull), "lossAtFull", lossAtFull, "above 0");
  ensure(actCost >= 0 && Number.isFinite(actCost), "actCost", actCost, "0 or more");
  for (const [name, cost] of Object.entries({ costPerBee, fixedCost })) {
    ensure(cost >= 0 && Number.isFinite(cost), name, cost, "0 or more");
  }
  for (const [name, share] of Object.entries({ sensitivity, specificity })) {
    ensure(share > 0 && share <= 1, name, share, "in (0, 1]");
  }
  ensure(
    sensitivity + specificity > 1,
    "sensitivity",
    sensitivity,
    "above 1 − specificity: else a positive tells nothing",
  );
  ensure(sizes.length > 0, "sizes", sizes, "at least one size");
  const line = [
    { prevalence: 0, value: 0 },
    { prevalence: 1, value: 1 },
  ];
  const prices = { colonyValue: lossAtFull, actCost, testCost: 0, residualShare: 0 };
  const priorMean = belief.a / (belief.a + belief.b);
  const lossNow = Math.min(actCost, lossAtFull * priorMean);
  const rows = sizes.map((bees): SampleWorth => {
    ensure(Number.isInteger(bees) && bees >= 0, "sizes", bees, "whole numbers ≥ 0");
    if (bees === 0) return { bees, evsi: 0, ...actingFrom(lossAtFull * priorMean > actCost ? 0 : null, 0), net: 0 };
    const test: BenchTest = { bees, sensitivity, specificity };
    const losses = lossesFrom(signals(belief, test, benchChances(test), line), line, prices);
    const evsi = lossNow - losses["test-first"];
    return { bees, evsi, ...actingFrom(losses.actFrom, bees), net: evsi - fixedCost - costPerBee * bees };
  });
  const best = rows.reduce((top, row) => (row.net > top.net ? row : top));
  return {
    priorMean,
    lossNow,
    threshold: actCost / lossAtFull,
    evpi: lossNow - perfectLoss(belief, line, prices).loss,
    rows,
    bestSize: best.bees,
  };
}

const actingFrom = (actFrom: number | null, bees: number): Pick<SampleWorth, "actFrom" | "neverActs"> => ({
  actFrom,
  neverActs: actFrom === null ? decisionProblem("no-result-leads-to-acting", "noted", "sizes", { bees }) : null,
});
