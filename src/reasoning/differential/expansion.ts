/** Sums over all sets of conditions at once, by expanding the evidence into signed products. */
import type { BlockTable, Parameters } from "./parameters.ts";
import type { Terms } from "./terms.ts";

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
  /** Bound on the relative rounding error of `total`: half a unit in the last place times the measured cancellation. */
  readonly relativeError: number;
}

/** Members of each roll-up group, as indices of conditions. */
export type Groups = readonly Int32Array[];

interface Sweep {
  readonly parameters: Parameters;
  readonly levels: Terms["levels"];
  readonly groups: Groups;
  readonly rows: readonly Float64Array[];
  readonly odds: Float64Array;
  readonly share: Float64Array;
  readonly withCondition: Float64Array;
  readonly withoutGroup: Float64Array;
  total: number;
  size: number;
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
  const { conditions } = parameters;
  const sweep: Sweep = {
    parameters,
    levels: terms.levels,
    groups,
    rows: Array.from({ length: terms.levels.length }, () => new Float64Array(conditions)),
    odds: new Float64Array(conditions),
    share: new Float64Array(conditions),
    withCondition: new Float64Array(conditions),
    withoutGroup: new Float64Array(groups.length),
    total: 0,
    size: 0,
  };
  descend(sweep, 0, terms.odds, terms.constant);
  let empty = terms.constant;
  for (const level of terms.levels) empty *= level.coefficient.reduce((sum, each) => sum + each, 0);
  // The expansion counted the empty set once, with weight 1.
  const extra = (parameters.emptyWeight - 1) * empty;
  const total = sweep.total + extra;
  return {
    total,
    withCondition: sweep.withCondition,
    withoutGroup: sweep.withoutGroup.map((each) => each + extra),
    empty: empty * parameters.emptyWeight,
    relativeError: total > 0 ? ((sweep.size + Math.abs(extra)) * Number.EPSILON) / total : Number.POSITIVE_INFINITY,
  };
}

function descend(sweep: Sweep, depth: number, above: Float64Array, coefficient: number): void {
  const level = sweep.levels[depth];
  if (level === undefined) {
    addLeaf(sweep, above, coefficient);
    return;
  }
  const { conditions } = sweep.parameters;
  const row = sweep.rows[depth] as Float64Array;
  const { factor } = level;
  for (let option = 0; option < level.options; option++) {
    const start = option * conditions;
    for (let condition = 0; condition < conditions; condition++) {
      row[condition] = (above[condition] as number) * (factor[start + condition] as number);
    }
    descend(sweep, depth + 1, row, coefficient * (level.coefficient[option] as number));
  }
}

/** One choice: its sum over all sets, and each condition's share of it. */
function addLeaf(sweep: Sweep, odds: Float64Array, coefficient: number): void {
  const { singles, blocks } = sweep.parameters;
  const { share, withCondition } = sweep;
  let product = coefficient;
  for (let index = 0; index < singles.length; index++) {
    const condition = singles[index] as number;
    const both = 1 + (odds[condition] as number);
    share[condition] = (odds[condition] as number) / both;
    product *= both;
  }
  for (const block of blocks) product *= blockShares(block, odds, share);
  sweep.total += product;
  sweep.size += Math.abs(product);
  for (let condition = 0; condition < share.length; condition++) {
    withCondition[condition] = (withCondition[condition] as number) + product * (share[condition] as number);
  }
  for (let group = 0; group < sweep.groups.length; group++) {
    const none = shareWithout(sweep.groups[group] as Int32Array, share, blocks, odds);
    sweep.withoutGroup[group] = (sweep.withoutGroup[group] as number) + product * none;
  }
}

/** Sum of a block's states; writes each member's share of it. */
function blockShares({ members, weight }: BlockTable, odds: Float64Array, share: Float64Array): number {
  let sum = 0;
  for (const member of members) share[member] = 0;
  for (let state = 0; state < weight.length; state++) {
    let product = weight[state] as number;
    for (let index = 0; index < members.length; index++) {
      if (((state >> index) & 1) === 1) product *= odds[members[index] as number] as number;
    }
    sum += product;
    for (let index = 0; index < members.length; index++) {
      if (((state >> index) & 1) === 0) continue;
      const member = members[index] as number;
      share[member] = (share[member] as number) + product;
    }
  }
  for (const member of members) share[member] = (share[member] as number) / sum;
  return sum;
}

/** Share of one choice in which no member of the group is present. */
function shareWithout(
  group: Int32Array,
  share: Float64Array,
  blocks: readonly BlockTable[],
  odds: Float64Array,
): number {
  let none = 1;
  for (const { members, weight } of blocks) {
    let excluded = 0;
    for (let index = 0; index < members.length; index++)
      if (group.includes(members[index] as number)) excluded |= 1 << index;
    if (excluded === 0) continue;
    let [sum, free] = [0, 0];
    for (let state = 0; state < weight.length; state++) {
      let product = weight[state] as number;
      for (let index = 0; index < members.length; index++) {
        if (((state >> index) & 1) === 1) product *= odds[members[index] as number] as number;
      }
      sum += product;
      if ((state & excluded) === 0) free += product;
    }
    none *= free / sum;
  }
  for (let index = 0; index < group.length; index++) {
    const member = group[index] as number;
    if (!blocks.some(({ members }) => members.includes(member))) none *= 1 - (share[member] as number);
  }
  return none;
}
