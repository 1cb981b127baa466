/** How sure one may be that a region is not infested, round after round of none found. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { surveillanceProblem } from "./problems.ts";

export interface FreedomDesign {
  /** Probability before the first round that the region is not infested, 0 ≤ F ≤ 1. */
  readonly priorFree: number;
  /** For each round, the probability of finding at least one if the region is infested at the design prevalence. */
  readonly sensitivities: readonly number[];
  /** Probability that infestation comes in between two rounds: one for all, or one for each round. */
  readonly introduction: number | readonly number[];
  /**
   * What `priorFree` refers to: `first-round` (it already holds at round 1), or `period-before`
   * (what may have come in since is taken off before round 1 as well).
   */
  readonly priorAt: "first-round" | "period-before";
}

export interface FreedomRound {
  /** Counted from 1. */
  readonly round: number;
  /** Probability of not infested before, after, and after what may come in until the next round. */
  readonly before: number;
  readonly after: number;
  readonly afterIntroduction: number;
}

/**
 * Probability of not infested after each round in which none was found.
 *
 * Model: q, the probability of infested, becomes q(1 − SSe)/(1 − q·SSe) after a round of none found, and q + π − q·π
 * before the next. "Infested" means at the design prevalence or above; rounds are independent given the state.
 *
 * @returns one row for each round, or `zero-contradicts-certainty`
 * @throws DomainError for a probability outside [0, 1] or as many introductions as there are rounds not given
 * @source Martin, Cameron & Greiner 2007, Preventive Veterinary Medicine 79:71–97
 *
 * @example
 * freedomSeries({ priorFree: 0.5, sensitivities: [0.5, 0.5], introduction: 0.01, priorAt: "first-round" }).value[1].after  // → 0.7951807228915663
 */
export function freedomSeries(design: FreedomDesign): Result<readonly FreedomRound[]> {
  const { priorFree, sensitivities, introduction, priorAt } = design;
  ensureShare("priorFree", priorFree);
  const each = typeof introduction === "number" ? sensitivities.map(() => introduction) : introduction;
  ensure(each.length === sensitivities.length, "introduction", each.length, "one for each round");
  for (const share of each) ensureShare("introduction", share);
  const rows: FreedomRound[] = [];
  const comesIn = (q: number, index: number) => q + (each[index] as number) - q * (each[index] as number);
  let infested = 1 - priorFree;
  for (const [i, sensitivity] of sensitivities.entries()) {
    ensureShare("sensitivities", sensitivity);
    if (i > 0 || priorAt === "period-before") infested = comesIn(infested, Math.max(0, i - 1));
    const before = 1 - infested;
    const none = 1 - infested * sensitivity;
    if (none === 0)
      return blocked(surveillanceProblem("zero-contradicts-certainty", "blocked", null, { round: i + 1 }));
    infested = (infested * (1 - sensitivity)) / none;
    rows.push({ round: i + 1, before, after: 1 - infested, afterIntroduction: 1 - comesIn(infested, i) });
  }
  return answered(rows);
}

export interface FreedomEquilibrium {
  /** Probability of not infested before and after each round, once it no longer changes. */
  readonly before: number;
  readonly after: number;
}

/**
 * Where repeated rounds of none found lead: the probability of not infested that no longer changes.
 *
 * The infested probability before a round settles at π/SSe, or at 1 when more comes in than a round can find.
 *
 * @throws DomainError for a probability outside [0, 1], or when both are 0: then nothing ever changes
 * @source fixed point of Martin, Cameron & Greiner 2007; π/SSe: own algebra
 *
 * @example
 * freedomEquilibrium({ sensitivity: 0.6, introduction: 0.02 })  // → { before: 0.9666666667, after: 0.98639455782 }
 */
export function freedomEquilibrium(cycle: {
  readonly sensitivity: number;
  readonly introduction: number;
}): FreedomEquilibrium {
  const { sensitivity, introduction } = cycle;
  ensureShare("sensitivity", sensitivity);
  ensureShare("introduction", introduction);
  ensure(sensitivity > 0 || introduction > 0, "sensitivity", sensitivity, "above 0 when nothing comes in");
  const infested = introduction / sensitivity;
  if (infested >= 1) return { before: 0, after: 0 };
  return { before: 1 - infested, after: (1 - infested) / (1 - introduction) };
}

export interface SensitivityForTarget {
  /** Probability of not infested after what may have come in. */
  readonly priorAfterIntroduction: number;
  /** (T − F)/(T·(1 − F)) as it comes: 0 or below when the target is already met. */
  readonly raw: number;
  /** The same, no less than 0. */
  readonly needed: number;
}

/**
 * Sensitivity that one round of none found must have to carry the probability of not infested to a target.
 *
 * @throws DomainError for a probability outside [0, 1], a target outside (0, 1), or a prior after introduction of 0 or 1
 * @source Martin, Cameron & Greiner 2007, solved for SSe
 *
 * @example
 * sensitivityForTarget({ priorFree: 0.75, introduction: 0.01, target: 0.95 }).needed  // → 0.84823709760
 */
export function sensitivityForTarget(wish: {
  readonly priorFree: number;
  readonly introduction: number;
  readonly target: number;
}): SensitivityForTarget {
  const { priorFree, introduction, target } = wish;
  ensureShare("priorFree", priorFree);
  ensureShare("introduction", introduction);
  ensure(target > 0 && target < 1, "target", target, "in (0, 1)");
  const free = priorFree * (1 - introduction);
  ensure(free < 1, "priorFree", priorFree, "below 1 after introduction: else nothing is to be shown");
  const raw = (target - free) / (target * (1 - free));
  return { priorAfterIntroduction: free, raw, needed: Math.max(0, raw) };
}

function ensureShare(name: string, value: number): void {
  ensure(value >= 0 && value <= 1, name, value, "in [0, 1]");
}
