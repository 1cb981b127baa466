/** Second opinion for tests: every set of conditions and every pattern of touched groups, one by one. */

import type { Groups } from "./expansion.ts";
import type { Network, NetworkEvidence } from "./network.ts";

/** Sums as `expand` gives them, reckoned from the story of the model and not from its algebra. */
export interface BruteSums {
  readonly total: number;
  readonly withCondition: readonly number[];
  readonly withoutGroup: readonly number[];
  readonly empty: number;
  readonly sets: readonly { readonly members: readonly number[]; readonly weight: number }[];
}

/** Sums over all sets; cost 4^conditions. */
export function bruteForce(network: Network, evidence: NetworkEvidence, groups: Groups = []): BruteSums {
  const indices = [...network.conditions.keys()];
  const setsOf = (state: number) => indices.filter((index) => ((state >> index) & 1) === 1);
  const priors = Array.from({ length: 2 ** indices.length }, (_, state) => priorOf(network, setsOf(state)));
  if (network.nothingWrong !== null) {
    const others = priors.slice(1).reduce((sum, each) => sum + each, 0);
    priors[0] = (network.nothingWrong * others) / (1 - network.nothingWrong);
  } else {
    const whole = priors.reduce((sum, each) => sum + each, 0);
    for (const state of priors.keys()) priors[state] = (priors[state] ?? 0) / whole;
  }
  const sets = priors.map((prior, state) => {
    const members = setsOf(state);
    const factor = members.reduce((product, member) => product * (evidence.oddsFactor[member] ?? 1), 1);
    return { members, weight: prior * factor * likelihood(network, members, evidence) };
  });
  const sum = (wanted: (members: readonly number[]) => boolean) =>
    sets.reduce((total, { members, weight }) => total + (wanted(members) ? weight : 0), 0);
  return {
    total: sum(() => true),
    withCondition: indices.map((index) => sum((members) => members.includes(index))),
    withoutGroup: groups.map((group) => sum((members) => !members.some((member) => group.includes(member)))),
    empty: sets[0]?.weight ?? 0,
    sets,
  };
}

function priorOf(network: Network, members: readonly number[]): number {
  const probability = (index: number) => {
    const odds = network.conditions[index]?.odds ?? 0;
    return odds / (1 + odds);
  };
  const followers = new Map(network.blocks.flatMap((block) => block.followers.map((each) => [each, block] as const)));
  let product = 1;
  for (const index of network.conditions.keys()) {
    const block = followers.get(index);
    let p = probability(index);
    if (block !== undefined) {
      const lead = probability(block.lead);
      const { ratio } = block;
      // Presence in the ratio, or absence in it: whichever leaves the follower rarer beside its lead.
      const [seldom, often] = [p / (ratio * lead + 1 - lead), (1 - p) / (lead / ratio + 1 - lead)];
      const byAbsence = 1 - often / ratio < ratio * seldom;
      if (members.includes(block.lead)) p = byAbsence ? 1 - often / ratio : ratio * seldom;
      else p = byAbsence ? 1 - often : seldom;
    }
    product *= members.includes(index) ? p : 1 - p;
  }
  return product;
}

/** Probability of the looked-for findings given the present conditions. */
export function likelihood(network: Network, members: readonly number[], { present, absent }: NetworkEvidence): number {
  const groups = new Map<string, number[]>();
  for (const finding of [...present, ...absent]) {
    const key = network.findings[finding]?.group ?? `alone ${finding}`;
    groups.set(key, [...(groups.get(key) ?? []), finding]);
  }
  let product = 1;
  for (const looked of groups.values()) product *= patternProbability(network, members, looked, present);
  return product;
}

/** One group: sum over which of the leak and the conditions touch it. */
function patternProbability(
  network: Network,
  members: readonly number[],
  looked: readonly number[],
  present: readonly number[],
): number {
  const group = network.findings[looked[0] ?? 0]?.group ?? null;
  const mates = [...network.findings.keys()].filter((each) =>
    group === null ? each === looked[0] : network.findings[each]?.group === group,
  );
  // The leak is cause −1.
  const causes = [-1, ...members];
  const touch = causes.map((cause) => {
    const largest = Math.max(...mates.map((finding) => linkOf(network, cause, finding)));
    return mates.length < 2 || largest === 0 ? 1 : largest ** network.dependence;
  });
  let total = 0;
  for (let pattern = 0; pattern < 2 ** causes.length; pattern++) {
    const touched = causes.map((_, index) => ((pattern >> index) & 1) === 1);
    let weight = 1;
    for (const [index, is] of touched.entries()) weight *= is ? (touch[index] ?? 1) : 1 - (touch[index] ?? 1);
    if (weight === 0) continue;
    for (const finding of looked) {
      let none = 1;
      let kept = 1;
      for (const [index, cause] of causes.entries()) {
        if (touched[index]) none *= 1 - linkOf(network, cause, finding) / (touch[index] ?? 1);
        kept *= keepOf(network, cause, finding);
      }
      const seen = kept * (1 - none);
      weight *= present.includes(finding) ? seen : 1 - seen;
    }
    total += weight;
  }
  return total;
}

function linkOf(network: Network, cause: number, finding: number): number {
  const healthy = network.findings[finding]?.healthy ?? 0;
  if (cause === -1) return healthy;
  const pair = network.pairs.find((each) => each.condition === cause && each.finding === finding);
  if (pair === undefined || pair.suppresses || pair.rate <= healthy) return 0;
  return (pair.rate - healthy) / (1 - healthy);
}

function keepOf(network: Network, cause: number, finding: number): number {
  const pair = network.pairs.find((each) => each.condition === cause && each.finding === finding);
  const healthy = network.findings[finding]?.healthy ?? 0;
  return pair?.suppresses && healthy > 0 ? Math.min(1, pair.rate / healthy) : 1;
}
