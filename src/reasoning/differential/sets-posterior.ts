/** Posterior from the best sets, for more present findings than the tables can hold; says how much it left out. */
import { bestSets, byProbability, type SetList, weightsOf } from "./best-first.ts";
import { asShare, type Groups } from "./expansion.ts";
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";
import type { Posterior } from "./posterior.ts";
import { unionTables, unionTotal } from "./union-tables.ts";

/** Sets looked at. */
export const setsForPosterior = 40_000;
/** Present findings of the easier question that puts the conditions in order. */
const easierFindings = 10;
/** Up to this many present findings the weight of all sets can still be summed, though not each condition's share. */
const totalLimit = 18;

/**
 * Posterior from the best sets. Up to eighteen present findings `neglectedMass` is exact, since the weight of all sets
 * is known. Beyond, it is a bound: the sets left out weigh no more under all the evidence than under its first eighteen
 * present findings.
 */
export function setsPosterior(parameters: Parameters, evidence: NetworkEvidence, groups: Groups): Posterior | null {
  const first = (count: number) => ({ ...evidence, present: evidence.present.slice(0, count) });
  const easier = unionTables(parameters, first(easierFindings));
  if (!(easier.total > 0)) return null;
  const order = byProbability(easier.withCondition);
  const sets = bestSets(parameters, evidence, order, { sets: setsForPosterior, weight: Number.POSITIVE_INFINITY });
  if (!(sets.total > 0)) return null;
  const countable = first(totalLimit);
  const covered = weightsOf(parameters, countable, sets).reduce((sum, each) => sum + each, 0);
  const leftOut = Math.max(0, unionTotal(parameters, countable) - covered);
  const { condition, group } = sharesOfSets(sets.weight, sets, parameters.conditions, groups);
  return {
    condition,
    group,
    total: sets.total,
    nothingWrong: (sets.weight[0] as number) / sets.total,
    neglectedMass: leftOut / (leftOut + sets.total),
    method: "sets",
  };
}

/** Probabilities by a list of sets. */
export interface Shares {
  /** Weight of all sets that were summed. */
  readonly total: number;
  readonly condition: Float64Array;
  readonly group: Float64Array;
}

/** Share of the listed sets' weight that holds each condition, and any member of each group. */
export function sharesOfSets(weights: Float64Array, sets: SetList, conditions: number, groups: Groups): Shares {
  const condition = new Float64Array(conditions);
  const group = new Float64Array(groups.length);
  const total = weights.reduce((sum, each) => sum + each, 0);
  const groupBits = new Int32Array(conditions);
  for (const [index, members] of groups.entries()) {
    for (const member of members) groupBits[member] = (groupBits[member] as number) | (1 << index);
  }
  for (let set = 1; set < sets.count; set++) {
    const share = (weights[set] as number) / total;
    let bits = 0;
    for (let each = set; each > 0; each = sets.parent[each] as number) {
      const member = sets.added[each] as number;
      condition[member] = (condition[member] as number) + share;
      bits |= groupBits[member] as number;
    }
    for (let index = 0; index < group.length; index++) {
      if (((bits >> index) & 1) === 1) group[index] = (group[index] as number) + share;
    }
  }
  return { total, condition: condition.map(asShare), group: group.map(asShare) };
}
