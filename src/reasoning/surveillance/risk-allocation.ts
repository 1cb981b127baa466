/** How many units to test in each stratum so that a round is sensitive enough and costs least: exact, in whole units. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { surveillanceProblem } from "./problems.ts";
import { adjustedRisks, type RiskStratum } from "./scenario-tree.ts";

export interface CostedStratum extends RiskStratum {
  /** Cost of testing one unit, > 0, in any unit of money. */
  readonly cost: number;
  /** Units there are to test, a whole number ≥ 0; as many as wanted when not given. */
  readonly cap?: number;
}

export interface RiskAllocation {
  readonly risks: readonly number[];
  /** Units to test in each stratum. */
  readonly units: readonly number[];
  readonly cost: number;
  /** Probability of finding at least one if infested at the design prevalence. */
  readonly sensitivity: number;
  /** Units that a sample representative of all strata would need for the same. */
  readonly representativeUnits: number;
}

export interface RiskPlan {
  /** Share of units infested over all strata, and the chance that an infested one is found; in (0, 1]. */
  readonly designPrevalence: number;
  readonly sensitivity: number;
  /** Wanted probability of finding at least one, 0 < T < 1. */
  readonly target: number;
  readonly strata: readonly CostedStratum[];
}

/** Exact ties by rounding must not cost a unit. */
const tieSlack = 1e-12;
/** Branches looked at before the search is given up as too wide. */
const mostBranches = 5_000_000;

/**
 * The cheapest whole numbers of units over strata of different risk that reach a target sensitivity.
 *
 * Model: a unit of stratum i is infested with probability AR_i·P* and then found with Se; units are independent and
 * specificity is 1, so the round misses with probability Π(1 − Se·AR_i·P*)^n_i. Branch and bound: the strata that give
 * most for their cost first, each branch bounded by what the rest would cost in fractions.
 *
 * @returns the allocation, or `shares-not-whole`, `infested-share-above-one`, `target-out-of-reach`, `search-too-wide`
 * @throws DomainError for a figure outside its range
 * @source Martin, Cameron & Greiner 2007 for the model; exact search: own
 *
 * @example
 * allocateByRisk({ designPrevalence: 0.1, sensitivity: 0.9, target: 0.95, strata: [{ relativeRisk: 5, share: 0.1, cost: 1, cap: 4 }, { relativeRisk: 3, share: 0.1, cost: 1, cap: 6 }, { relativeRisk: 1, share: 0.8, cost: 1, cap: 500 }] }).value.units  // → [4, 6, 10]
 */
export function allocateByRisk(plan: RiskPlan): Result<RiskAllocation> {
  const { designPrevalence, sensitivity, target, strata } = plan;
  const needed = checkedNeed(plan);
  const risks = adjustedRisks(strata);
  if (!risks.ok) return risks;
  const tooRisky = risks.value.findIndex((risk) => risk * designPrevalence > 1);
  if (tooRisky >= 0) {
    const slots = { stratum: tooRisky + 1, share: (risks.value[tooRisky] as number) * designPrevalence };
    return blocked(surveillanceProblem("infested-share-above-one", "blocked", `strata[${tooRisky}]`, slots));
  }
  const items = strata.map(({ cost, cap = Infinity }, index): Item => {
    ensure(cost > 0 && cost < Infinity, "cost", cost, "a finite number above 0");
    ensure(cap >= 0 && (Number.isInteger(cap) || cap === Infinity), "cap", cap, "a whole number ≥ 0");
    // A unit that is certain to tell is worth any need; a finite weight keeps the sums finite.
    const gain = Math.min(-Math.log1p(-sensitivity * (risks.value[index] as number) * designPrevalence), 2 * needed);
    return { index, cost, gain, most: Math.min(cap, Math.ceil(needed / gain)) };
  });
  const reachable = items.reduce((sum, { gain, most }) => sum + gain * most, 0);
  if (reachable < needed) {
    const slots = { target, reachable: -Math.expm1(-reachable) };
    return blocked(surveillanceProblem("target-out-of-reach", "blocked", "target", slots));
  }
  const units = cheapest(items, needed);
  if (!units) return blocked(surveillanceProblem("search-too-wide", "blocked", "strata", { strata: strata.length }));
  const missed = items.reduce(
    (sum, { index }) =>
      sum +
      ((units[index] as number) > 0
        ? (units[index] as number) * Math.log1p(-sensitivity * (risks.value[index] as number) * designPrevalence)
        : 0),
    0,
  );
  return answered({
    risks: risks.value,
    units,
    cost: items.reduce((sum, { index, cost }) => sum + cost * (units[index] as number), 0),
    sensitivity: -Math.expm1(missed),
    representativeUnits: representativeUnits(plan),
  });
}

/**
 * Units that a sample representative of all strata would need for the same target: the smallest n with
 * 1 − (1 − Se·P*)ⁿ at the target or above.
 *
 * @returns units, a whole number ≥ 1
 * @throws DomainError for a figure outside its range
 * @source binomial model, as `allocateByRisk` without risks
 *
 * @example
 * representativeUnits({ designPrevalence: 0.1, sensitivity: 0.9, target: 0.95 })  // → 32
 */
export function representativeUnits(plan: Omit<RiskPlan, "strata">): number {
  const needed = checkedNeed(plan);
  return Math.max(1, Math.ceil(needed / -Math.log1p(-plan.sensitivity * plan.designPrevalence)));
}

/** What the round must add up to, −ln(1 − target), after a look at the design. */
function checkedNeed({ designPrevalence, sensitivity, target }: Omit<RiskPlan, "strata">): number {
  ensure(designPrevalence > 0 && designPrevalence <= 1, "designPrevalence", designPrevalence, "in (0, 1]");
  ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
  ensure(target > 0 && target < 1, "target", target, "in (0, 1)");
  return -Math.log1p(-target) * (1 - tieSlack);
}

interface Item {
  readonly index: number;
  readonly cost: number;
  /** What one unit adds to −ln(chance of missing). */
  readonly gain: number;
  readonly most: number;
}

/** The cheapest counts whose gains reach `needed`; null when the search grows too wide. */
function cheapest(items: readonly Item[], needed: number): readonly number[] | null {
  const order = [...items].sort((a, b) => b.gain / b.cost - a.gain / a.cost || a.index - b.index);
  const step = commonStep(order.map(({ cost }) => cost));
  const counts = items.map(() => 0);
  let best: { readonly cost: number; readonly counts: readonly number[] } | null = null;
  let branches = 0;
  /** Least cost, in fractions of units, of `left` from the items from `place` on; never above the true one. */
  const bound = (place: number, left: number): number => {
    let [cost, rest] = [0, left];
    for (let i = place; i < order.length && rest > 0; i += 1) {
      const { gain, most, cost: each } = order[i] as Item;
      const share = Math.min(most, rest / gain);
      cost += share * each;
      rest -= share * gain;
    }
    return rest > needed * tieSlack ? Infinity : cost;
  };
  const visit = (place: number, left: number, spent: number): void => {
    branches += 1;
    if (left <= 0) {
      if (!best || spent < best.cost * (1 - tieSlack)) best = { cost: spent, counts: [...counts] };
      return;
    }
    const item = order[place];
    if (!item || branches > mostBranches) return;
    for (let count = Math.min(item.most, Math.ceil(left / item.gain)); count >= 0; count -= 1) {
      const rest = left - count * item.gain;
      const least = spent + count * item.cost + (rest > 0 ? bound(place + 1, rest) : 0);
      // Fewer of the item that gives most for its cost never makes the bound smaller: no later count can be better.
      const rounded = step === 0 ? least : step * Math.ceil(least / step - 1e-9);
      if (best && rounded >= best.cost * (1 - tieSlack) && count < Math.ceil(left / item.gain)) break;
      if (best && rounded >= best.cost * (1 - tieSlack)) continue;
      counts[item.index] = count;
      visit(place + 1, rest, spent + count * item.cost);
    }
    counts[item.index] = 0;
  };
  visit(0, needed, 0);
  if (branches > mostBranches || !best) return null;
  return (best as { readonly counts: readonly number[] }).counts;
}

/** The largest step of which all costs are multiples, looked for down to a hundredth; 0 when there is none. */
function commonStep(costs: readonly number[]): number {
  const hundredths = costs.map((cost) => Math.round(cost * 100));
  if (costs.some((cost, i) => Math.abs(cost * 100 - (hundredths[i] as number)) > 1e-9 * cost * 100)) return 0;
  const divisor = (a: number, b: number): number => (b === 0 ? a : divisor(b, a % b));
  return hundredths.reduce(divisor, 0) / 100;
}
