/** A network as flat arrays of numbers, ready to reckon with; the same shape at the stated grades and in each draw. */
import { ensure } from "../../units/index.ts";
import type { Network } from "./network.ts";

/** Numbers of a network. Finding-major tables: entry `finding * conditions + condition`. */
export interface Parameters {
  readonly conditions: number;
  readonly findings: number;
  /** Prior odds, one per condition. */
  readonly odds: Float64Array;
  /** Weight of the empty set beside products of odds; 1 when the odds alone decide. */
  readonly emptyWeight: number;
  /** Leak, one per finding. */
  readonly healthy: Float64Array;
  /** Probability that the condition causes the finding, above the leak; 0 where it has no influence. */
  readonly link: Float64Array;
  /** Factor on the finding's probability when the condition is present; 1 but for suppressing pairs. */
  readonly keep: Float64Array;
  /** Group of each finding, 0 … groups − 1; a finding that stands alone has a group of its own. */
  readonly groupOf: Int32Array;
  readonly groups: number;
  /** Probability that the condition touches the group at all; entry `group * conditions + condition`. */
  readonly gate: Float64Array;
  /** The same for the leak, one per group. */
  readonly healthyGate: Float64Array;
  readonly blocks: readonly BlockTable[];
  /** Conditions in no block. */
  readonly singles: Int32Array;
}

/** A block: weight of each of its 2^members states beside the product of its members' odds. */
export interface BlockTable {
  readonly members: Int32Array;
  readonly weight: Float64Array;
}

/** The judged numbers that a draw may replace, each in the order of the network. */
export interface Judged {
  /** Prior odds, one per condition. */
  readonly odds: Float64Array;
  /** One per finding. */
  readonly healthy: Float64Array;
  /** One per pair. */
  readonly rates: Float64Array;
}

/** The numbers as the network states them. */
export const statedNumbers = (network: Network): Judged => ({
  odds: Float64Array.from(network.conditions, ({ odds }) => odds),
  healthy: Float64Array.from(network.findings, ({ healthy }) => healthy),
  rates: Float64Array.from(network.pairs, ({ rate }) => rate),
});

/**
 * Flat arrays of a network, with `judged` in place of the stated numbers.
 *
 * A pair's link is (rate − healthy) / (1 − healthy): what the condition adds to the leak, so that the condition alone
 * brings the finding with probability `rate`. A rate at or below the healthy rate adds nothing; where the pair
 * suppresses, it multiplies by min(1, rate / healthy) instead.
 *
 * @throws DomainError when a rate, an odds or a block lies outside its range
 */
export function parametersOf(network: Network, judged: Judged = statedNumbers(network)): Parameters {
  const { conditions: all, findings: looked, pairs, dependence } = network;
  const [conditions, findings] = [all.length, looked.length];
  ensure(dependence >= 0 && dependence < 1, "dependence", dependence, "from 0 to below 1");
  const link = new Float64Array(findings * conditions);
  const keep = new Float64Array(findings * conditions).fill(1);
  for (let index = 0; index < pairs.length; index++) {
    const { condition, finding, suppresses } = pairs[index] as Network["pairs"][number];
    const rate = judged.rates[index] as number;
    const healthy = judged.healthy[finding] as number;
    ensure(rate >= 0 && rate <= 1, "rate", rate, "from 0 to 1");
    const at = finding * conditions + condition;
    if (suppresses) keep[at] = healthy > 0 ? Math.min(1, rate / healthy) : 1;
    else if (rate > healthy) link[at] = (rate - healthy) / (1 - healthy);
  }
  const { groupOf, groups } = groupsOf(network);
  const gates = gatesOf({ conditions, groupOf, groups, link, healthy: judged.healthy, dependence });
  const blocks = network.blocks.map((block) => blockTable(block, judged.odds));
  const inBlock = new Set(blocks.flatMap(({ members }) => [...members]));
  const singles = Int32Array.from([...all.keys()].filter((index) => !inBlock.has(index)));
  return {
    conditions,
    findings,
    odds: judged.odds,
    emptyWeight: emptyWeight(network.nothingWrong, judged.odds, singles, blocks),
    healthy: judged.healthy,
    link,
    keep,
    groupOf,
    groups,
    ...gates,
    blocks,
    singles,
  };
}

function groupsOf({ findings }: Network): { groupOf: Int32Array; groups: number } {
  const numbers = new Map<string, number>();
  let groups = 0;
  const groupOf = Int32Array.from(findings, ({ group }) => {
    if (group === null) return groups++;
    const known = numbers.get(group);
    if (known !== undefined) return known;
    numbers.set(group, groups);
    return groups++;
  });
  return { groupOf, groups };
}

/**
 * The joint rule of a group. A present condition touches a group of findings or does not; only when it does can it
 * bring any of them, and then each one by itself. It touches with probability (largest link in the group)^dependence,
 * the leak likewise, and each link is divided by that probability: a single finding is as frequent as before, two
 * findings of one group go together, and every pattern has a probability, all of which sum to one.
 */
function gatesOf(input: {
  conditions: number;
  groupOf: Int32Array;
  groups: number;
  link: Float64Array;
  healthy: Float64Array;
  dependence: number;
}): { gate: Float64Array; healthyGate: Float64Array } {
  const { conditions, groupOf, groups, link, healthy, dependence } = input;
  const gate = new Float64Array(groups * conditions);
  const healthyGate = new Float64Array(groups);
  const sizes = new Int32Array(groups);
  for (let finding = 0; finding < groupOf.length; finding++) {
    const group = groupOf[finding] ?? 0;
    sizes[group] = (sizes[group] ?? 0) + 1;
    healthyGate[group] = Math.max(healthyGate[group] ?? 0, healthy[finding] ?? 0);
    for (let condition = 0; condition < conditions; condition++) {
      const at = group * conditions + condition;
      const here = link[finding * conditions + condition] as number;
      if (here > (gate[at] as number)) gate[at] = here;
    }
  }
  // A link of 0 is brought by nothing: the gate then stands open, and 0^dependence is never divided by.
  const opened = (largest: number, size: number) => (size < 2 || largest === 0 ? 1 : largest ** dependence);
  for (let group = 0; group < groups; group++) {
    const size = sizes[group] ?? 0;
    healthyGate[group] = opened(healthyGate[group] ?? 0, size);
    for (let at = group * conditions; at < (group + 1) * conditions; at++) gate[at] = opened(gate[at] as number, size);
  }
  return { gate, healthyGate };
}

/** Weights of a block beside the product of odds, such that every member keeps its own prior. */
function blockTable(block: Network["blocks"][number], odds: Float64Array): BlockTable {
  const members = Int32Array.from([block.lead, ...block.followers]);
  const probability = (condition: number) => (odds[condition] ?? 0) / (1 + (odds[condition] ?? 0));
  const lead = probability(block.lead);
  const weight = new Float64Array(1 << members.length);
  for (let state = 0; state < weight.length; state++) {
    const hasLead = (state & 1) === 1;
    let value = 1;
    for (const [index, follower] of block.followers.entries()) {
      const prior = probability(follower);
      const { beside, without } = followerChances({ prior, lead, ratio: block.ratio });
      const here = hasLead ? beside : without;
      const alone = prior / (1 - prior);
      // Beside its odds, since a state's weight is multiplied by its members' odds later.
      if (((state >> (index + 1)) & 1) === 1) value *= prior === 0 ? 1 : here / alone;
      else value *= 1 - here;
    }
    weight[state] = value;
  }
  const empty = weight[0] ?? 1;
  return { members, weight: weight.map((each) => each / empty) };
}

/**
 * Probability of a follower beside its lead and without it, such that it keeps its prior.
 *
 * Beside the lead it is `ratio` times as frequent; where the prior is so high that this would make it all but certain,
 * its absence is `ratio` times as rare instead. The lower of the two holds, so that both stay below 1 for any prior.
 *
 * @example
 * followerChances({ prior: 0.2, lead: 0.5, ratio: 4 })  // → {"beside":0.32,"without":0.08}
 */
export function followerChances({
  prior,
  lead,
  ratio,
}: {
  readonly prior: number;
  readonly lead: number;
  readonly ratio: number;
}): { readonly beside: number; readonly without: number } {
  const seldom = prior / (ratio * lead + 1 - lead);
  const often = (1 - prior) / (lead / ratio + 1 - lead);
  if (ratio * seldom <= 1 - often / ratio) return { beside: ratio * seldom, without: seldom };
  return { beside: 1 - often / ratio, without: 1 - often };
}

/** Sum over the states of a block: weight times the odds of the members that are present. */
export function blockSum({ members, weight }: BlockTable, odds: Float64Array): number {
  let sum = 0;
  for (let state = 0; state < weight.length; state++) {
    let product = weight[state] ?? 0;
    for (let index = 0; index < members.length; index++) {
      if (((state >> index) & 1) === 1) product *= odds[members[index] ?? 0] ?? 0;
    }
    sum += product;
  }
  return sum;
}

/** Weight that gives the empty set its stated prior probability; the other sets keep their proportions. */
function emptyWeight(
  nothingWrong: number | null,
  odds: Float64Array,
  singles: Int32Array,
  blocks: readonly BlockTable[],
): number {
  if (nothingWrong === null) return 1;
  ensure(nothingWrong > 0 && nothingWrong < 1, "nothingWrong", nothingWrong, "between 0 and 1");
  let all = 1;
  for (const condition of singles) all *= 1 + (odds[condition] ?? 0);
  for (const block of blocks) all *= blockSum(block, odds);
  return (nothingWrong * (all - 1)) / (1 - nothingWrong);
}
