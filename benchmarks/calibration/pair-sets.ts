/** The world of at most two causes, small enough to weigh set by set under any rule for groups. */
import { type SetList, weightsOf } from "../../src/reasoning/differential/best-first.ts";
import { findingsOnly, type Network } from "../../src/reasoning/differential/network.ts";
import { type Parameters, parametersOf } from "../../src/reasoning/differential/parameters.ts";

/** The empty set, every single condition and every pair; without pairs when `most` is 1. */
export function smallSets(conditions: number, most: 1 | 2): SetList {
  const parent = [-1, ...Array.from({ length: conditions }, () => 0)];
  const added = [-1, ...Array.from({ length: conditions }, (_, condition) => condition)];
  for (let one = 0; most === 2 && one < conditions; one++) {
    for (let other = one + 1; other < conditions; other++) {
      parent.push(one + 1);
      added.push(other);
    }
  }
  const weight = new Float64Array(parent.length);
  return { count: parent.length, parent: Int32Array.from(parent), added: Int32Array.from(added), weight, total: 0 };
}

/** Conditions of a set. */
export function membersOf({ parent, added }: SetList, set: number): readonly number[] {
  const members: number[] = [];
  for (let each = set; each > 0; each = parent[each] as number) members.push(added[each] as number);
  return members;
}

/** Probability of a pattern of signs given each set. */
export function givenSets(
  network: Network,
  parameters: Parameters,
  sets: SetList,
  { present, absent }: { readonly present: readonly number[]; readonly absent: readonly number[] },
): Float64Array {
  const prior = weightsOf(parameters, findingsOnly(network, [], []), sets);
  return weightsOf(parameters, findingsOnly(network, present, absent), sets).map(
    (each, set) => each / (prior[set] as number),
  );
}

/** The network with its groups tied more or less strongly; at 0 all findings are independent given the causes. */
export const tied = (network: Network, dependence: number): Parameters => parametersOf({ ...network, dependence });
