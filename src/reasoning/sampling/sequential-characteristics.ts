/** What a plan really does at a prevalence: Wald's approximation, the exact figures, and a fixed plan beside them. */
import { binomial } from "../../numerics/index.ts";
import { answered, ensure, type Result } from "../../units/index.ts";
import { type SequentialPlan, type SequentialTest, sequentialLines } from "./sequential-plan.ts";
import { saidAtEnd, stoppingWalk } from "./stopping-walk.ts";

export interface SequentialCharacteristics {
  /** True share of infested bees. */
  readonly prevalence: number;
  /** Chance that the plan says low; with `high` and `undecided` it makes 1. */
  readonly low: number;
  readonly high: number;
  readonly undecided: number;
  /** Bees read on average, and their standard deviation. */
  readonly averageBees: number;
  readonly sdBees: number;
  /** Chance that the last bee is read and neither line is crossed. */
  readonly reachesEnd: number;
}

/**
 * Exact chances and bee numbers of a plan at each prevalence, ends, minimum and batches included.
 *
 * Bees drawn independently from a large colony, the bench missing none; bees that cluster make every error likelier.
 *
 * @throws DomainError for a prevalence outside [0, 1]
 * @source exact recursion; the chapter on sequential classification in a textbook of pest sampling (Binns, Nyrop & van der Werf 2000, from memory) asks for it
 *
 * @example
 * sequentialCharacteristics(sequentialPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1, maxBees: 100 }).value, [0.05])[0].low  // → 0.930842717
 */
export function sequentialCharacteristics(
  plan: SequentialPlan,
  prevalences: readonly number[],
): readonly SequentialCharacteristics[] {
  const walk = stoppingWalk(plan);
  return prevalences.map((prevalence) => {
    ensure(prevalence >= 0 && prevalence <= 1, "prevalence", prevalence, "in [0, 1]");
    const said = { low: 0, high: 0, undecided: 0 };
    let [averageBees, squares, reachesEnd] = [0, 0, 0];
    walk(prevalence, (kind, bees, positive, chance) => {
      said[kind === "end" ? saidAtEnd(plan, positive) : kind] += chance;
      averageBees += bees * chance;
      squares += bees * bees * chance;
      if (kind === "end") reachesEnd += chance;
    });
    const sdBees = Math.sqrt(Math.max(0, squares - averageBees * averageBees));
    return { prevalence, ...said, averageBees, sdBees, reachesEnd };
  });
}

export interface WaldPoint {
  /** Wald's parameter: 1 at the low share, −1 at the high one, 0 at the slope. */
  readonly h: number;
  readonly prevalence: number;
  readonly low: number;
  readonly averageBees: number;
}

/**
 * Wald's approximate curve, point by point of his parameter h: the chance of low and the average number of bees.
 *
 * An approximation that knows no first look, no batch and no end: show it beside `sequentialCharacteristics`, never
 * instead of it.
 *
 * @returns one point for each h, or the problems of `sequentialLines`
 * @throws DomainError for a share or a chance outside (0, 1), or an h that is not finite
 * @source Wald 1947, Sequential Analysis, chapter 5 and appendix A.2 (from memory)
 *
 * @example
 * waldCurve({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1 }, [1]).value[0].averageBees  // → 34.647153930
 */
export function waldCurve(test: SequentialTest, exponents: readonly number[]): Result<readonly WaldPoint[]> {
  const lines = sequentialLines(test);
  if (!lines.ok) return lines;
  const { lowPrevalence: p0, highPrevalence: p1, alpha, beta } = test;
  const logA = Math.log((1 - beta) / alpha);
  const logB = Math.log(beta / (1 - alpha));
  const step = { found: Math.log(p1 / p0), none: Math.log1p(-p1) - Math.log1p(-p0) };
  return answered(
    exponents.map((h) => {
      ensure(Number.isFinite(h), "h", h, "a finite number");
      // So near to 0 the quotients are all rounding, and the limit differs by less.
      if (Math.abs(h) < 1e-8) {
        const low = logA / (logA - logB);
        return { h, prevalence: lines.value.slope, low, averageBees: (logA * logB) / (step.found * step.none) };
      }
      // Both quotients are divided by their largest term, so that no h is too large for them.
      const [some, none, upper, lower] = [h * step.found, h * step.none, h * logA, h * logB];
      const prevalence =
        h > 0
          ? (Math.exp(-some) * Math.expm1(none)) / Math.expm1(none - some)
          : Math.expm1(-none) / Math.expm1(some - none);
      const low =
        h > 0
          ? Math.expm1(-upper) / Math.expm1(lower - upper)
          : (Math.exp(-lower) * Math.expm1(upper)) / Math.expm1(upper - lower);
      const mean = prevalence * step.found + (1 - prevalence) * step.none;
      return { h, prevalence, low, averageBees: (low * logB + (1 - low) * logA) / mean };
    }),
  );
}

/**
 * Chance at each prevalence that a plan with a fixed number of bees says low, where low is `most` infested or fewer.
 *
 * @throws DomainError for counts that are not whole or a prevalence outside [0, 1]
 * @source binomial distribution
 *
 * @example
 * fixedPlanLow({ bees: 50, most: 4, prevalences: [0.1] })[0]  // → 0.43119840683
 */
export function fixedPlanLow(plan: {
  readonly bees: number;
  readonly most: number;
  readonly prevalences: readonly number[];
}): readonly number[] {
  const { bees, most, prevalences } = plan;
  ensure(Number.isInteger(bees) && bees >= 1, "bees", bees, "a whole number ≥ 1");
  ensure(Number.isInteger(most) && most >= 0, "most", most, "a whole number ≥ 0");
  return prevalences.map((p) => binomial({ n: bees, p }).cdf(most));
}
