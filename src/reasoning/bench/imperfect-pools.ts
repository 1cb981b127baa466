/** Share of bees infested, from pools of one size and a test of the pool that errs. */
import { clopperPearsonInterval, type Interval } from "../../numerics/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { checkPools, type PoolGroup } from "./pool-likelihood.ts";
import { beeShare } from "./pooled-limits.ts";
import { correctedShare, misfits, type TestErrors } from "./true-prevalence.ts";

export interface ImperfectPools {
  /** Share of bees infested. */
  readonly value: number;
  /** Limits by Clopper and Pearson, corrected and turned into bees the same way. */
  readonly limits: Interval;
  /** Share of pools truly positive, before it is cut to 0–1: below 0 or above 1 when the counts do not fit the test. */
  readonly rawPoolShare: number;
}

/**
 * Rogan and Gladen's correction of the share of positive pools, then turned into bees.
 *
 * Sensitivity and specificity are those for a whole pool, known and the same however many infested bees it holds.
 * Where bigger pools thin the signal they are not: see `poolDilution`.
 *
 * @returns ImperfectPools, with the warnings of `truePrevalence` of the share of pools; or `test-no-better-than-chance`
 * @throws DomainError for counts that cannot be, errors outside (0, 1] or a level outside (0, 1)
 * @source Rogan & Gladen 1978, American Journal of Epidemiology 107:71–76; Cowling, Gardner & Johnson 1999, Preventive
 *   Veterinary Medicine 39:211–225
 *
 * @example
 * imperfectPools({ size: 10, pools: 20, positive: 4, sensitivity: 0.9, specificity: 0.99 }).value.value  // → 0.0237280682389
 */
export function imperfectPools(request: PoolGroup & TestErrors & { readonly level?: number }): Result<ImperfectPools> {
  const { size, pools, positive, sensitivity, specificity, level = 0.95 } = request;
  checkPools([request]);
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const { low, high } = clopperPearsonInterval({ x: positive, n: pools, level });
  const [middle, lower, upper] = [positive / pools, low, high].map((apparent) =>
    correctedShare({ apparent, sensitivity, specificity }),
  );
  if (!middle?.ok || !lower?.ok || !upper?.ok) return blocked(...(middle?.problems ?? []));
  const limits = { low: beeShare(lower.value.value, size), high: beeShare(upper.value.value, size) };
  return answered(
    { value: beeShare(middle.value.value, size), limits, rawPoolShare: middle.value.raw },
    misfits({ positive, examined: pools, sensitivity, specificity }, [limits]),
  );
}
