/** Sums over all sets of conditions at once, by expanding the evidence into signed products. */
import type { BlockTable, Parameters } from "./parameters.ts";
import type { Level, Terms } from "./terms.ts";

/** Sums over sets; divide by `total` for posteriors. */
export interface Sums {
  /** Weight of all sets. */
  readonly total: number;
  /** Weight of the sets that hold the condition. */
  readonly withCondition: Float64Array;
  /** Weight of the sets that hold no member of the roll-up group, one per group asked for. */
  readonly withoutGroup: Float64Array;
  /** Weight of the empty set. */
  readonly empty: number;
  /** Bound on the relative rounding error of `total`: one unit in the last place times the measured cancellation. */
  readonly relativeError: number;
}

/**
 * A ratio of two sums as a probability: rounding, which the accepted error bounds, may leave it a hair beyond 0 or 1.
 */
export const asShare = (ratio: number): number => Math.min(1, Math.max(0, ratio));

/** Members of each roll-up group, as indices of conditions. */
export type Groups = readonly Int32Array[];

/** The running sums of one expansion, over conditions in the order singles first, then block by block. */
interface Sweep {
  readonly levels: readonly Level[];
  readonly conditions: number;
  readonly singles: number;
  readonly blocks: readonly PlacedBlock[];
  readonly groups: readonly PlacedGroup[];
  /** One row of odds a level. */
  readonly rows: readonly Float64Array[];
  readonly share: Float64Array;
  readonly withCondition: Float64Array;
  readonly withoutGroup: Float64Array;
  total: number;
  size: number;
}

/** A block whose members stand side by side from `start` on. */
interface PlacedBlock {
  readonly start: number;
  readonly members: number;
  readonly weight: Float64Array;
}

/** Members of a roll-up group: those in no block by place, those in each block as bits of its states. */
interface PlacedGroup {
  readonly singles: Int32Array;
  readonly excluded: readonly number[];
}

/**
 * Exact sums over all 2^conditions sets, by inclusion and exclusion over the present findings.
 *
 * Every choice of one option a level leaves conditions independent, so its sum over sets is ∏(1 + odds); choices are
 * added with their signs. Cost: 2^(present findings) × conditions. The sum cancels when evidence is unlikely:
 * `relativeError` measures by how much.
 *
 * @source Heckerman 1989, a tractable inference algorithm for diagnosing multiple diseases (abstract seen)
 */
export function expand(parameters: Parameters, terms: Terms, groups: Groups = []): Sums {
  const order = orderOf(parameters);
  const { conditions } = parameters;
  const levels = terms.levels.map((level) => placedLevel(level, order));
  const sweep: Sweep = {
    levels,
    conditions,
    singles: parameters.singles.length,
    blocks: placedBlocks(parameters),
    groups: groups.map((members) => placedGroup(parameters, members, order)),
    rows: levels.map(() => new Float64Array(conditions)),
    share: new Float64Array(conditions),
    withCondition: new Float64Array(conditions),
    withoutGroup: new Float64Array(groups.length),
    total: 0,
    size: 0,
  };
  const odds = Float64Array.from(order, (condition) => terms.odds[condition] as number);
  const ones = new Float64Array(conditions).fill(1);
  if (levels.length === 0) addChoice(sweep, odds, ones, 0, new Float64Array(conditions), terms.constant);
  else descend(sweep, 0, odds, terms.constant);

  // The expansion counted the empty set once, with weight 1.
  let empty = terms.constant;
  for (const { coefficient } of levels) empty *= coefficient.reduce((sum, each) => sum + each, 0);
  const extra = (parameters.emptyWeight - 1) * empty;
  const total = sweep.total + extra;
  const withCondition = new Float64Array(conditions);
  for (let place = 0; place < conditions; place++) {
    withCondition[order[place] as number] = sweep.withCondition[place] as number;
  }
  return {
    total,
    withCondition,
    withoutGroup: sweep.withoutGroup.map((each) => each + extra),
    empty: empty * parameters.emptyWeight,
    relativeError: total > 0 ? ((sweep.size + Math.abs(extra)) * Number.EPSILON) / total : Number.POSITIVE_INFINITY,
  };
}

const orderOf = ({ singles, blocks }: Parameters): Int32Array =>
  Int32Array.from([...singles, ...blocks.flatMap(({ members }) => [...members])]);

function placedLevel(level: Level, order: Int32Array): Level {
  const factor = new Float64Array(level.factor.length);
  for (let option = 0; option < level.options; option++) {
    const start = option * order.length;
    for (let place = 0; place < order.length; place++) {
      factor[start + place] = level.factor[start + (order[place] as number)] as number;
    }
  }
  return { ...level, factor };
}

function placedBlocks({ singles, blocks }: Parameters): readonly PlacedBlock[] {
  let start = singles.length;
  return blocks.map(({ members, weight }: BlockTable) => {
    const placed = { start, members: members.length, weight };
    start += members.length;
    return placed;
  });
}

function placedGroup({ singles, blocks }: Parameters, group: Int32Array, order: Int32Array): PlacedGroup {
  const inGroup = [...order.keys()].filter((place) => group.includes(order[place] as number));
  return {
    singles: Int32Array.from(inGroup.filter((place) => place < singles.length)),
    excluded: blocks.map(({ members }) =>
      members.reduce((bits, member, index) => (group.includes(member) ? bits | (1 << index) : bits), 0),
    ),
  };
}

function descend(sweep: Sweep, depth: number, above: Float64Array, coefficient: number): void {
  const { conditions } = sweep;
  const { options, factor, coefficient: signs } = sweep.levels[depth] as Level;
  const row = sweep.rows[depth] as Float64Array;
  const isLast = depth === sweep.levels.length - 1;
  for (let option = 0; option < options; option++) {
    const start = option * conditions;
    const signed = coefficient * (signs[option] as number);
    if (isLast) {
      addChoice(sweep, above, factor, start, row, signed);
      continue;
    }
    for (let place = 0; place < conditions; place++) {
      row[place] = (above[place] as number) * (factor[start + place] as number);
    }
    descend(sweep, depth + 1, row, signed);
  }
}

/**
 * One choice: its sum over all sets, and each condition's share of it. The inner loop of the whole step: the odds of
 * the last level are multiplied on the way, and `row` keeps those of the blocks.
 */
function addChoice(
  sweep: Sweep,
  above: Float64Array,
  factor: Float64Array,
  start: number,
  row: Float64Array,
  coefficient: number,
): void {
  const { singles, conditions, share, withCondition, blocks, groups, withoutGroup } = sweep;
  let product = coefficient;
  for (let place = 0; place < singles; place++) {
    const one = (above[place] as number) * (factor[start + place] as number);
    const both = 1 + one;
    share[place] = one / both;
    product *= both;
  }
  for (let place = singles; place < conditions; place++) {
    row[place] = (above[place] as number) * (factor[start + place] as number);
  }
  for (let index = 0; index < blocks.length; index++) product *= blockShares(blocks[index] as PlacedBlock, row, share);
  sweep.total += product;
  sweep.size += Math.abs(product);
  for (let place = 0; place < conditions; place++) {
    withCondition[place] = (withCondition[place] as number) + product * (share[place] as number);
  }
  for (let index = 0; index < groups.length; index++) {
    const { singles: alone, excluded } = groups[index] as PlacedGroup;
    let none = product;
    for (let member = 0; member < alone.length; member++) none *= 1 - (share[alone[member] as number] as number);
    for (let block = 0; block < blocks.length; block++) {
      const bits = excluded[block] as number;
      if (bits !== 0) none *= shareWithout(blocks[block] as PlacedBlock, row, bits);
    }
    withoutGroup[index] = (withoutGroup[index] as number) + none;
  }
}

/** Weight of one state of a block: its tie and the odds of the members that are present. */
function stateWeight({ start, members, weight }: PlacedBlock, odds: Float64Array, state: number): number {
  let product = weight[state] as number;
  for (let index = 0; index < members; index++) {
    if (((state >> index) & 1) === 1) product *= odds[start + index] as number;
  }
  return product;
}

/** Sum of a block's states; writes each member's share of it. */
function blockShares(block: PlacedBlock, odds: Float64Array, share: Float64Array): number {
  const { start, members, weight } = block;
  let sum = 0;
  for (let index = 0; index < members; index++) share[start + index] = 0;
  for (let state = 0; state < weight.length; state++) {
    const product = stateWeight(block, odds, state);
    sum += product;
    for (let index = 0; index < members; index++) {
      if (((state >> index) & 1) === 1) share[start + index] = (share[start + index] as number) + product;
    }
  }
  for (let index = 0; index < members; index++) share[start + index] = (share[start + index] as number) / sum;
  return sum;
}

/** Share of a block's states in which none of the excluded members is present. */
function shareWithout(block: PlacedBlock, odds: Float64Array, excluded: number): number {
  let [sum, free] = [0, 0];
  for (let state = 0; state < block.weight.length; state++) {
    const product = stateWeight(block, odds, state);
    sum += product;
    if ((state & excluded) === 0) free += product;
  }
  return free / sum;
}
