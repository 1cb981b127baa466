/** Sets of conditions one by one, likeliest first: for bits on the joint state, and where tables no longer fit. */
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";
import { type Level, termsOf } from "./terms.ts";

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
  let room = roomFor(Math.min(stop.sets, firstRoom), width);
  const ties = tiesOf(parameters);

  let at = 0;
  for (const level of levels) for (const each of level.coefficient) room.signed[at++] = each;
  room.odds[0] = terms.constant;
  room.weight[0] = parameters.emptyWeight * terms.constant * likelihoodOf(levels, room.signed, 0);
  let [count, total] = [1, room.weight[0] as number];
  const heap: number[] = [0];

  while (heap.length > 0 && count < stop.sets && total < stop.weight) {
    const from = popHeaviest(heap, room.weight);
    if (count + conditions > room.weight.length && room.weight.length < stop.sets)
      room = moreRoom(room, stop.sets, width);
    const { parent, added, last, weight, odds, signed, tied } = room;
    for (let place = (last[from] as number) + 1; place < conditions && count < stop.sets; place++) {
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
      tied[count] = (tied[from] as number) | (ties.bit[condition] as number);
      const value =
        grown * ties.weight(tied[count] as number) * Math.max(0, likelihoodOf(levels, signed, count * width));
      weight[count] = value;
      total += value;
      if (value > 0) pushHeaviest(heap, weight, count);
      count++;
    }
  }
  return {
    count,
    parent: room.parent.subarray(0, count),
    added: room.added.subarray(0, count),
    weight: room.weight.subarray(0, count),
    total,
  };
}

/** Room for this many sets to begin with: most lists end long before their limit, and clearing memory takes time. */
const firstRoom = 4096;

/** What is kept of each set while the list grows. */
interface Room {
  readonly parent: Int32Array;
  readonly added: Int32Array;
  /** Place of the last member in the order. */
  readonly last: Int32Array;
  readonly weight: Float64Array;
  readonly odds: Float64Array;
  /** Signed products of the options; `width` to a set. */
  readonly signed: Float64Array;
  /** Members in blocks, as bits. */
  readonly tied: Int32Array;
}

const roomFor = (sets: number, width: number): Room => ({
  parent: new Int32Array(sets).fill(-1),
  added: new Int32Array(sets).fill(-1),
  last: new Int32Array(sets).fill(-1),
  weight: new Float64Array(sets),
  odds: new Float64Array(sets),
  signed: new Float64Array(sets * width),
  tied: new Int32Array(sets),
});

/** Twice the room, or room for all sets. */
function moreRoom(before: Room, most: number, width: number): Room {
  const room = roomFor(Math.min(most, 2 * before.weight.length), width);
  for (const key of ["parent", "added", "last", "tied"] as const) room[key].set(before[key]);
  for (const key of ["weight", "odds", "signed"] as const) room[key].set(before[key]);
  return room;
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

/** Tie of a set's members in the blocks: the state of all blocks as bits, and the weight it stands for. */
interface Ties {
  /** Bit of a condition among the states of all blocks; 0 when it is in none. */
  readonly bit: Int32Array;
  readonly weight: (state: number) => number;
}

function tiesOf({ blocks, conditions }: Parameters): Ties {
  const bit = new Int32Array(conditions);
  const shifts: number[] = [];
  let shift = 0;
  for (const { members } of blocks) {
    shifts.push(shift);
    for (const member of members) bit[member] = 1 << shift++;
  }
  const weight = (state: number) => {
    let product = 1;
    for (let index = 0; index < blocks.length; index++) {
      const { members, weight: table } = blocks[index] as Parameters["blocks"][number];
      product *= table[(state >> (shifts[index] as number)) & ((1 << members.length) - 1)] as number;
    }
    return product;
  };
  return { bit, weight };
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

/** Weight of each listed set under other evidence or other numbers. */
export function weightsOf(parameters: Parameters, evidence: NetworkEvidence, sets: SetList): Float64Array {
  const { conditions } = parameters;
  const { count, parent, added } = sets;
  const terms = termsOf(parameters, evidence);
  const ties = tiesOf(parameters);
  const tied = new Int32Array(count);
  const odds = new Float64Array(count).fill(1);
  const weight = new Float64Array(count);
  weight[0] = parameters.emptyWeight * terms.constant;
  for (let set = 1; set < count; set++) {
    const [from, condition] = [parent[set] as number, added[set] as number];
    tied[set] = (tied[from] as number) | (ties.bit[condition] as number);
    odds[set] = (odds[from] as number) * (terms.odds[condition] as number);
    weight[set] = terms.constant * (odds[set] as number) * ties.weight(tied[set] as number);
  }
  const signed = new Float64Array(count);
  const sum = new Float64Array(count);
  for (const { options, coefficient, factor } of terms.levels) {
    sum.fill(0);
    for (let option = 0; option < options; option++) {
      const start = option * conditions;
      signed[0] = coefficient[option] as number;
      sum[0] = (sum[0] as number) + (signed[0] as number);
      for (let set = 1; set < count; set++) {
        const value = (signed[parent[set] as number] as number) * (factor[start + (added[set] as number)] as number);
        signed[set] = value;
        sum[set] = (sum[set] as number) + value;
      }
    }
    for (let set = 0; set < count; set++) weight[set] = (weight[set] as number) * Math.max(0, sum[set] as number);
  }
  return weight;
}

/**
 * The list with, for each of its `heaviest` sets, every set that differs from it by one condition: so that a condition
 * that is in all heavy sets, or in none, is weighed against sets that differ in it.
 */
export function withNeighbours(sets: SetList, order: Int32Array, heaviest: number): SetList {
  const place = new Int32Array(order.length);
  for (let at = 0; at < order.length; at++) place[order[at] as number] = at;
  const [parent, added] = [[...sets.parent], [...sets.added]];
  const child = new Map<number, number>();
  const key = (from: number, condition: number) => from * order.length + condition;
  for (let set = 1; set < sets.count; set++) child.set(key(parent[set] as number, added[set] as number), set);
  const find = (members: readonly number[]) => {
    let from = 0;
    for (const condition of members) {
      const known = child.get(key(from, condition));
      if (known === undefined) {
        child.set(key(from, condition), parent.length);
        parent.push(from);
        added.push(condition);
      }
      from = known ?? parent.length - 1;
    }
  };
  const heavy = [...sets.weight.keys()]
    .sort((a, b) => (sets.weight[b] ?? 0) - (sets.weight[a] ?? 0))
    .slice(0, heaviest);
  for (const set of heavy) {
    const members: number[] = [];
    for (let each = set; each > 0; each = parent[each] as number) members.push(added[each] as number);
    for (const condition of order) {
      const other = members.includes(condition)
        ? members.filter((each) => each !== condition)
        : [...members, condition];
      find(other.sort((a, b) => (place[a] as number) - (place[b] as number)));
    }
  }
  const weight = new Float64Array(parent.length);
  weight.set(sets.weight);
  return {
    count: parent.length,
    parent: Int32Array.from(parent),
    added: Int32Array.from(added),
    weight,
    total: sets.total,
  };
}
