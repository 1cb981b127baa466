/** Ranges of the posterior: the judged numbers drawn again and again, and the case reckoned with each. */
import { randomStream } from "../../numerics/index.ts";
import { bestSets, byProbability, type SetList, weightsOf } from "./best-first.ts";
import { type CaseModel, drawnCase, evidenceOf, statedCase } from "./case-model.ts";
import { expand, type Groups } from "./expansion.ts";
import { ranges } from "./judgements.ts";
import type { Network, NetworkEvidence } from "./network.ts";
import { type Parameters, parametersOf } from "./parameters.ts";
import type { Posterior } from "./posterior.ts";
import { termsOf } from "./terms.ts";

/** Lower and upper end for each condition and each roll-up group. */
export interface Ranges {
  readonly condition: readonly Range[];
  readonly group: readonly Range[];
}

/** From the 5 % to the 95 % point of the draws. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** Beyond this many present findings a draw reweighs the best sets instead of summing over all of them. */
const expansionInDraws = 10;
/** Sets reweighed in each draw. */
const setsInDraws = 2000;

/**
 * Ranges of the posterior. Draw i of a seed always takes the same numbers, whatever else is asked.
 * `posterior` orders the conditions when sets are reweighed.
 */
export function rangesOf(whole: CaseModel, posterior: Posterior): Ranges {
  const model = { ...whole, ...restricted(whole) };
  const { draws, seed } = model.read;
  const [conditions, groups] = [model.network.conditions.length, model.groups.length];
  const byCondition = Array.from({ length: conditions }, () => new Float64Array(draws));
  const byGroup = Array.from({ length: groups }, () => new Float64Array(draws));
  const sets = model.present.length > expansionInDraws ? heaviestSets(model, posterior) : null;
  for (let draw = 0; draw < draws; draw++) {
    const numbers = drawnCase(model, randomStream({ seed, stream: draw }));
    const parameters = parametersOf(model.network, numbers);
    const evidence = evidenceOf(model, numbers);
    const shares =
      sets === null ? summed(parameters, evidence, model.groups) : reweighed(parameters, evidence, model.groups, sets);
    for (const [index, each] of byCondition.entries()) each[draw] = shares.condition[index] ?? 0;
    for (const [index, each] of byGroup.entries()) each[draw] = shares.group[index] ?? 0;
  }
  return { condition: byCondition.map(rangeOf), group: byGroup.map(rangeOf) };
}

interface Shares {
  readonly condition: Float64Array;
  readonly group: Float64Array;
}

function summed(parameters: Parameters, evidence: NetworkEvidence, groups: Groups): Shares {
  const { total, withCondition, withoutGroup } = expand(parameters, termsOf(parameters, evidence), groups);
  return {
    condition: withCondition.map((each) => each / total),
    group: withoutGroup.map((each) => 1 - each / total),
  };
}

function heaviestSets(model: CaseModel, posterior: Posterior): SetList {
  const numbers = statedCase(model);
  const parameters = parametersOf(model.network, numbers);
  return bestSets(parameters, evidenceOf(model, numbers), byProbability(posterior.condition), {
    sets: setsInDraws,
    weight: Number.POSITIVE_INFINITY,
  });
}

function reweighed(parameters: Parameters, evidence: NetworkEvidence, groups: Groups, sets: SetList): Shares {
  return sharesOfSets(weightsOf(parameters, evidence, sets), sets, parameters.conditions, groups);
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
  return { condition, group };
}

/** Sorts the draws in place; quantiles by linear interpolation between order statistics. */
function rangeOf(draws: Float64Array): Range {
  draws.sort();
  return { low: quantile(draws, ranges.low), high: quantile(draws, ranges.high) };
}

function quantile(sorted: Float64Array, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const [a, b] = [sorted[below] as number, sorted[Math.min(below + 1, sorted.length - 1)] as number];
  return a + (place - below) * (b - a);
}

/** The network without the groups in which nothing was looked for: they do not bear on the posterior. */
function restricted({ network, present, absent }: CaseModel): {
  network: Network;
  present: readonly number[];
  absent: readonly number[];
} {
  const groupsLooked = new Set([...present, ...absent].map((each) => network.findings[each]?.group ?? `alone ${each}`));
  const kept = [...network.findings.keys()].filter((each) =>
    groupsLooked.has(network.findings[each]?.group ?? `alone ${each}`),
  );
  const place = new Map(kept.map((finding, index) => [finding, index]));
  const moved = (finding: number) => place.get(finding) ?? 0;
  return {
    network: {
      ...network,
      findings: kept.flatMap((finding) => network.findings[finding] ?? []),
      pairs: network.pairs
        .filter(({ finding }) => place.has(finding))
        .map((pair) => ({ ...pair, finding: moved(pair.finding) })),
    },
    present: present.map(moved),
    absent: absent.map(moved),
  };
}
