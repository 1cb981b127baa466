/** Expected losses of the three actions from what a test would show. */
import { type Belief, type BrokenLine, expectation, type Signals } from "./belief.ts";

export type Action = "wait" | "test-first" | "act-now";

/** What the user says things are worth, in one unit of money. */
export interface Prices {
  /** What is lost with the colony. */
  readonly colonyValue: number;
  /** Cost of acting: material, work, honey forgone. */
  readonly actCost: number;
  /** Cost of the test: bees, bench, post. */
  readonly testCost: number;
  /** Share of the extra winter loss that remains in spite of acting, 0–1. */
  readonly residualShare: number;
}

export interface Losses {
  readonly wait: number;
  readonly "test-first": number;
  readonly "act-now": number;
  /** Smallest number of positives that leads to acting; null when none does. */
  readonly actFrom: number | null;
}

/** Losses closer than this share count as equal: at a tie nobody acts. */
const tieSlack = 1e-12;

/** Losses of the three actions; `line` is the chance of winter loss by prevalence. */
export function lossesFrom({ chance, weighted }: Signals, line: BrokenLine, prices: Prices): Losses {
  const { colonyValue, actCost, testCost, residualShare } = prices;
  const clear = line[0]?.value ?? 0;
  let [wait, act, tested] = [0, 0, 0];
  let actFrom: number | null = null;
  for (const [x, probability] of chance.entries()) {
    const loss = weighted[x] ?? 0;
    const ifWaiting = colonyValue * loss;
    const ifActing =
      actCost * probability + colonyValue * (clear * probability + residualShare * (loss - clear * probability));
    wait += ifWaiting;
    act += ifActing;
    tested += Math.min(ifWaiting, ifActing);
    if (actFrom === null && ifActing < ifWaiting * (1 - tieSlack)) actFrom = x;
  }
  return { wait, "test-first": testCost + tested, "act-now": act, actFrom };
}

/** The action of least loss. At a tie wait; and a test is named only when it is better than acting without one. */
export function bestOf(losses: Losses): Action {
  const { wait, "test-first": tested, "act-now": act } = losses;
  const slack = tieSlack * Math.max(wait, act);
  const untested = wait <= act + slack ? "wait" : "act-now";
  return tested < losses[untested] - slack ? "test-first" : untested;
}

/** Expected loss if the prevalence were known before choosing, and the prevalence at which the choice turns. */
export function perfectLoss(
  belief: Belief,
  line: BrokenLine,
  prices: Prices,
): { readonly loss: number; readonly threshold: number | null } {
  const { colonyValue, actCost, residualShare } = prices;
  const clear = line[0]?.value ?? 0;
  const worth = (chance: number) => colonyValue * (1 - residualShare) * (chance - clear) - actCost;
  const least = (chance: number) => colonyValue * chance - Math.max(0, worth(chance));
  const split: { prevalence: number; value: number }[] = [];
  let threshold: number | null = null;
  for (const [i, right] of line.entries()) {
    const left = line[i - 1];
    const [before, after] = [left ? worth(left.value) : 0, worth(right.value)];
    if (left && before < 0 && after >= 0) {
      const along = -before / (after - before);
      threshold = left.prevalence + along * (right.prevalence - left.prevalence);
      if (along < 1)
        split.push({ prevalence: threshold, value: least(left.value + along * (right.value - left.value)) });
    }
    split.push({ prevalence: right.prevalence, value: least(right.value) });
  }
  return { loss: expectation(belief, split), threshold };
}
