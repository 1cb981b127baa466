/** A sequential plan held against the smallest fixed number of bees: what it really does, and the bees it saves. */
import { type FixedPlan, smallestFixedPlan } from "./fixed-plan.ts";
import { type SequentialCharacteristics, sequentialCharacteristics } from "./sequential-characteristics.ts";
import type { SequentialPlan, SequentialTest } from "./sequential-plan.ts";

export interface JudgedPlan {
  readonly atLow: SequentialCharacteristics;
  readonly atHigh: SequentialCharacteristics;
  /** Where most bees are read on average, to the nearest 0.001. */
  readonly atWorst: SequentialCharacteristics;
  /** The smallest fixed number of bees with the errors wanted; null where none up to 10 000 has them. */
  readonly fixed: FixedPlan | null;
  /** Bees saved on average against it; negative where more are read. */
  readonly saved: { readonly atLow: number; readonly atHigh: number; readonly atWorst: number } | null;
}

/**
 * What a plan does at its two shares and where it reads most, beside a fixed number of bees with the errors wanted.
 *
 * The plan need not keep those errors: a plan made from nominal ones may err more, and then it saves bees by erring.
 * Compare `atLow.high` and `atHigh.low` first.
 *
 * @throws DomainError for a chance outside (0, 1)
 * @source exact recursion; binomial distribution
 *
 * @example
 * judgedPlan(sequentialPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1, maxBees: 100 }).value, { alpha: 0.1, beta: 0.1 }).saved.atHigh  // → 29.873006624
 */
export function judgedPlan(plan: SequentialPlan, wanted: Pick<SequentialTest, "alpha" | "beta">): JudgedPlan {
  const { lowPrevalence, highPrevalence } = plan.design;
  const [atLow, atHigh] = sequentialCharacteristics(plan, [lowPrevalence, highPrevalence]);
  const [first, ...others] = sequentialCharacteristics(plan, thousandths);
  if (!atLow || !atHigh || !first) throw new Error("every share gives a row");
  const atWorst = others.reduce((most, row) => (row.averageBees > most.averageBees ? row : most), first);
  const fixed = smallestFixedPlan({ lowPrevalence, highPrevalence, alpha: wanted.alpha, beta: wanted.beta });
  if (!fixed.ok) return { atLow, atHigh, atWorst, fixed: null, saved: null };
  const saved = (row: SequentialCharacteristics) => fixed.value.bees - row.averageBees;
  return {
    atLow,
    atHigh,
    atWorst,
    fixed: fixed.value,
    saved: { atLow: saved(atLow), atHigh: saved(atHigh), atWorst: saved(atWorst) },
  };
}

const thousandths = Array.from({ length: 999 }, (_, i) => (i + 1) / 1000);
