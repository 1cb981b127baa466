/** The smallest fixed number of bees that parts two shares with both errors kept: what a sequential plan is held against. */
import { binomial } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { boundSlack } from "./cut-walk.ts";
import { samplingProblem } from "./problems.ts";
import { type SequentialTest, sequentialLines } from "./sequential-plan.ts";

export interface FixedPlan {
  readonly bees: number;
  /** Low with so many infested or fewer, high with more. */
  readonly most: number;
  /** Exact chance of calling high at the low share. */
  readonly alpha: number;
  /** Exact chance of calling low at the high share. */
  readonly beta: number;
}

/** Where the search ends; no one reads so many bees of one colony. */
const searched = 10_000;

/**
 * The fewest bees, read whatever is found, with which both chances of error are at or below those wanted.
 *
 * Bees drawn independently from a large colony, the bench missing none. The exact binomial chances go up and down
 * with the number, so every number is tried from `leastBees` on. Of the cuts that fit, the one at which the larger
 * error, as a share of its bound, is smallest.
 *
 * @returns the plan, or `no-size-in-search` and the problems of `sequentialLines`
 * @throws DomainError for a share or a chance outside (0, 1)
 * @source binomial distribution, every number tried
 *
 * @example
 * smallestFixedPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 }).value.bees  // → 60
 */
export function smallestFixedPlan(test: SequentialTest): Result<FixedPlan> {
  const lines = sequentialLines(test);
  if (!lines.ok) return lines;
  for (let bees = leastBees(test); bees <= searched; bees += 1) {
    const low = binomial({ n: bees, p: test.lowPrevalence });
    const high = binomial({ n: bees, p: test.highPrevalence });
    if (high.cdf(low.upperQuantile(bound(test.alpha))) <= bound(test.beta))
      return answered(evenestFixedPlan(test, bees));
  }
  return blocked(samplingProblem("no-size-in-search", "blocked", "alpha", { searched }));
}

/**
 * Of the cuts at this number of bees the one at which the larger error, as a share of its bound, is smallest.
 *
 * It keeps the bounds only where the number is enough: see `smallestFixedPlan`.
 *
 * @throws DomainError for a number that is not whole or a share outside [0, 1]
 * @source binomial distribution; from cut to cut one error falls and the other rises
 *
 * @example
 * evenestFixedPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 }, 50).most  // → 4
 */
export function evenestFixedPlan(test: SequentialTest, bees: number): FixedPlan {
  const low = binomial({ n: bees, p: test.lowPrevalence });
  const high = binomial({ n: bees, p: test.highPrevalence });
  const cutAt = (most: number): FixedPlan => ({ bees, most, alpha: low.sf(most), beta: high.cdf(most) });
  let best = cutAt(0);
  for (let most = 1; most < bees; most += 1) {
    const next = cutAt(most);
    if (larger(next, test) > larger(best, test)) break;
    best = next;
  }
  return best;
}

/**
 * A number of bees below which no plan of any form keeps both errors, however it stops; 10 001 where none up to 10 000 does.
 *
 * The most powerful test of all bees, its cut drawn by lot where it must be, errs no more than any other, so where it
 * fails all fail. What it needs is a bound, not a plan: no one decides by lot.
 *
 * @throws DomainError for a share outside [0, 1] or a chance outside (0, 1]
 * @source Neyman & Pearson 1933, Philosophical Transactions of the Royal Society A 231:289–337 (from memory)
 *
 * @example
 * leastBees({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 })  // → 57
 */
export function leastBees(test: SequentialTest): number {
  ensureErrors(test);
  let [tooFew, enough] = [0, searched + 1];
  while (enough > tooFew + 1) {
    const bees = Math.floor((tooFew + enough) / 2);
    if (missedByLot(test, bees) <= bound(test.beta)) enough = bees;
    else tooFew = bees;
  }
  return enough;
}

/**
 * The smallest factor by which both bounds must be raised before a plan of at most so many bees may keep them, to 1e-6.
 *
 * @throws DomainError for a number that is not whole, a share outside [0, 1] or a chance outside (0, 1]
 * @source Neyman & Pearson 1933, as `leastBees`
 *
 * @example
 * leastFactor({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 }, 57)  // → 1
 */
export function leastFactor(test: SequentialTest, bees: number): number {
  ensureErrors(test);
  const kept = (factor: number) => {
    const raised = { ...test, alpha: Math.min(1, test.alpha * factor), beta: test.beta * factor };
    return missedByLot(raised, bees) <= bound(raised.beta);
  };
  if (kept(1)) return 1;
  let [low, high] = [1, Math.min(1 / Math.min(test.alpha, test.beta), Number.MAX_VALUE)];
  while (high > low * (1 + 1e-6)) {
    // The product of two large factors has no end; that of their roots has.
    const factor = Math.sqrt(low) * Math.sqrt(high);
    if (kept(factor)) high = factor;
    else low = factor;
  }
  return low;
}

/** The smallest chance of calling low at the high share when high is called at the low share with chance alpha at most. */
function missedByLot({ lowPrevalence, highPrevalence, alpha }: SequentialTest, bees: number): number {
  const low = binomial({ n: bees, p: lowPrevalence });
  const high = binomial({ n: bees, p: highPrevalence });
  const most = low.upperQuantile(alpha);
  const lot = Math.min(1, (alpha - low.sf(most)) / low.pmf(most));
  return high.cdf(most) - lot * high.pmf(most);
}

function ensureErrors({ alpha, beta }: Errors): void {
  for (const [name, error] of Object.entries({ alpha, beta }))
    ensure(error > 0 && error <= 1, name, error, "in (0, 1]");
}

const bound = (chance: number): number => chance * (1 + boundSlack);

type Errors = Pick<SequentialTest, "alpha" | "beta">;

/** The larger of two chances of error, each as a share of its bound. */
export const larger = (reached: Errors, allowed: Errors): number =>
  Math.max(reached.alpha / allowed.alpha, reached.beta / allowed.beta);
