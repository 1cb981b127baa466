/** Sets of conditions one by one, likeliest first: for bits on the joint state, and where tables no longer fit. */
import type { Groups } from "./expansion.ts";
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";
import type { Posterior } from "./posterior.ts";
import { type Level, termsOf } from "./terms.ts";
import { unionTables } from "./union-tables.ts";

/** A list of sets, in the order found. Set i is set `parent[i]` with `added[i]`; set 0 is the empty set (added −1). */
export interface SetList {
  readonly count: number;
  readonly parent: Int32Array;
  readonly added: Int32Array;
  /** Weight of each set, in the unit of `Sums.total`. */
  readonly weight: Float64Array;
  /** Sum of the weights. */
  readonly total: number;
}

/** When to stop looking for sets. */
export interface Stop {
  /** Sets at most. */
  readonly sets: number;
  /** Weight at which enough is covered; Infinity to go on to the limit. */
  readonly weight: number;
}

/**
 * Sets in the order of their own weight, each grown from a set of its likelier members.
 *
 * A finding that no member brings still has its leak, so a set is never far below the smaller set it grows from, and
 * going by weight alone meets the heavy sets early. How much is covered is measured, never assumed.
 * `order` lists conditions from the likeliest on: a set grows only by conditions later in the order than its members.
 */
export function bestSets(parameters: Parameters, evidence: NetworkEvidence, order: Int32Array, stop: Stop): SetList {
  const { conditions } = parameters;
  const terms = termsOf(parameters, evidence);
  const { levels } = terms;
  const width = levels.reduce((sum, { options }) => sum + options, 0);
  const room = stop.sets;
  const parent = new Int32Array(room).fill(-1);
  const added = new Int32Array(room).fill(-1);
  const last = new Int32Array(room).fill(-1);
  const weight = new Float64Array(room);
  const odds = new Float64Array(room);
  const signed = new Float64Array(room * width);
  const tie = tiesOf(parameters);

  let at = 0;
  for (const level of levels) for (const each of level.coefficient) signed[at++] = each;
  odds[0] = terms.constant;
  weight[0] = parameters.emptyWeight * terms.constant * likelihoodOf(levels, signed, 0);
  let [count, total] = [1, weight[0] as number];
  const heap: number[] = [0];

  while (heap.length > 0 && count < room && total < stop.weight) {
    const from = popHeaviest(heap, weight);
    for (let place = (last[from] as number) + 1; place < conditions && count < room; place++) {
      const condition = order[place] as number;
      const grown = (odds[from] as number) * (terms.odds[condition] as number);
      if (grown === 0) continue;
      let offset = count * width;
      let source = from * width;
      for (const { options, factor } of levels) {
        for (let option = 0; option < options; option++) {
          signed[offset++] = (signed[source++] as number) * (factor[option * conditions + condition] as number);
        }
      }
      parent[count] = from;
      added[count] = condition;
      last[count] = place;
      odds[count] = grown;
      const value = grown * tie(count, parent, added) * Math.max(0, likelihoodOf(levels, signed, count * width));
      weight[count] = value;
      total += value;
      if (value > 0) pushHeaviest(heap, weight, count);
      count++;
    }
  }
  return {
    count,
    parent: parent.subarray(0, count),
    added: added.subarray(0, count),
    weight: weight.subarray(0, count),
    total,
  };
}

/** Product over groups of the signed sum of their options. */
function likelihoodOf(levels: readonly Level[], signed: Float64Array, start: number): number {
  let product = 1;
  let at = start;
  for (const { options } of levels) {
    let sum = 0;
    for (let option = 0; option < options; option++) sum += signed[at++] as number;
    product *= sum;
  }
  return product;
}

/** Weight of a set's members in the blocks beside the product of their odds. */
function tiesOf({ blocks }: Parameters): (set: number, parent: Int32Array, added: Int32Array) => number {
  if (blocks.length === 0) return () => 1;
  return (set, parent, added) => {
    const states = blocks.map(() => 0);
    for (let each = set; each > 0; each = parent[each] as number) {
      for (const [index, { members }] of blocks.entries()) {
        const bit = members.indexOf(added[each] as number);
        if (bit >= 0) states[index] = (states[index] as number) | (1 << bit);
      }
    }
    return blocks.reduce((product, { weight }, index) => product * (weight[states[index] as number] as number), 1);
  };
}

/** Puts a set on a heap whose heaviest set stands first. */
function pushHeaviest(heap: number[], weight: Float64Array, item: number): void {
  let at = heap.length;
  heap.push(item);
  while (at > 0) {
    const up = (at - 1) >> 1;
    if ((weight[heap[up] as number] as number) >= (weight[item] as number)) break;
    heap[at] = heap[up] as number;
    at = up;
  }
  heap[at] = item;
}

/** Takes the heaviest set off the heap, which is not empty. */
function popHeaviest(heap: number[], weight: Float64Array): number {
  const top = heap[0] as number;
  const item = heap.pop() as number;
  if (heap.length === 0) return top;
  let at = 0;
  for (;;) {
    let child = 2 * at + 1;
    if (child >= heap.length) break;
    const right = child + 1;
    if (right < heap.length && (weight[heap[right] as number] as number) > (weight[heap[child] as number] as number)) {
      child = right;
    }
    if ((weight[heap[child] as number] as number) <= (weight[item] as number)) break;
    heap[at] = heap[child] as number;
    at = child;
  }
  heap[at] = item;
  return top;
}

/** Conditions from the likeliest on, by these probabilities; ties in the order of the network. */
export function byProbability(probability: Float64Array): Int32Array {
  return Int32Array.from(
    [...probability.keys()].sort((a, b) => (probability[b] ?? 0) - (probability[a] ?? 0) || a - b),
  );
}

/** Sets looked at when there are too many present findings for the tables. */
const setsForPosterior = 40_000;
/** Present findings of the easier question that orders the conditions and bounds what was left out. */
const easierFindings = 12;

/**
 * Posterior from the best sets. `neglectedMass` is a bound: the sets left out weigh no more under all the evidence than
 * under its first twelve present findings, and for those the exact total is known.
 */
export function bestFirstPosterior(
  parameters: Parameters,
  evidence: NetworkEvidence,
  groups: Groups,
): Posterior | null {
  const easier = { ...evidence, present: evidence.present.slice(0, easierFindings) };
  const exact = unionTables(parameters, easier, groups);
  if (!(exact.total > 0)) return null;
  const order = byProbability(exact.withCondition);
  const sets = bestSets(parameters, evidence, order, { sets: setsForPosterior, weight: Number.POSITIVE_INFINITY });
  if (!(sets.total > 0)) return null;
  const covered = weightOf(parameters, easier, sets);
  const leftOut = Math.max(0, exact.total - covered);
  const condition = new Float64Array(parameters.conditions);
  const none = new Float64Array(groups.length);
  const members = new Set<number>();
  for (let set = 0; set < sets.count; set++) {
    const share = (sets.weight[set] as number) / sets.total;
    members.clear();
    for (let each = set; each > 0; each = sets.parent[each] as number) members.add(sets.added[each] as number);
    for (const member of members) condition[member] = (condition[member] as number) + share;
    for (const [index, group] of groups.entries()) {
      if (!group.some((each) => members.has(each))) none[index] = (none[index] as number) + share;
    }
  }
  return {
    condition,
    group: none.map((each) => 1 - each),
    nothingWrong: (sets.weight[0] as number) / sets.total,
    neglectedMass: leftOut / (leftOut + sets.total),
    method: "sets",
  };
}

/** Weight of the listed sets under other evidence or other numbers. */
export function weightOf(parameters: Parameters, evidence: NetworkEvidence, sets: SetList): number {
  return weightsOf(parameters, evidence, sets).reduce((sum, each) => sum + each, 0);
}

/** Weight of each listed set under other evidence or other numbers. */
export function weightsOf(parameters: Parameters, evidence: NetworkEvidence, sets: SetList): Float64Array {
  const { conditions } = parameters;
  const terms = termsOf(parameters, evidence);
  const tie = tiesOf(parameters);
  const weight = new Float64Array(sets.count).fill(terms.constant);
  weight[0] = parameters.emptyWeight * terms.constant;
  const odds = new Float64Array(sets.count).fill(1);
  for (let set = 1; set < sets.count; set++) {
    odds[set] = (odds[sets.parent[set] as number] as number) * (terms.odds[sets.added[set] as number] as number);
    weight[set] = (weight[set] as number) * (odds[set] as number) * tie(set, sets.parent, sets.added);
  }
  const signed = new Float64Array(sets.count);
  const sum = new Float64Array(sets.count);
  for (const { options, coefficient, factor } of terms.levels) {
    sum.fill(0);
    for (let option = 0; option < options; option++) {
      signed[0] = coefficient[option] as number;
      sum[0] = (sum[0] as number) + (signed[0] as number);
      for (let set = 1; set < sets.count; set++) {
        signed[set] =
          (signed[sets.parent[set] as number] as number) *
          (factor[option * conditions + (sets.added[set] as number)] as number);
        sum[set] = (sum[set] as number) + (signed[set] as number);
      }
    }
    for (let set = 0; set < sets.count; set++) weight[set] = (weight[set] as number) * Math.max(0, sum[set] as number);
  }
  return weight;
}
