/** What a look or test is worth: bits on the joint state, and loss it is expected to spare. */
import type { Belief, Candidate } from "../differential/index.ts";
import { expectedLoss } from "./loss-table.ts";

/** A result that a step can have, and what would then be believed. */
export interface Outcome {
  readonly chance: number;
  /** Probability of each condition once this is known. */
  readonly after: Float64Array;
}

/** Worth of one step. */
export interface Worth {
  /** Mutual information between the result and the set of conditions that is present, in bits. */
  readonly bits: number;
  /** Expected loss now, less expected loss once the result is known. */
  readonly decisionGain: number;
  /** Its results in their order: present and absent, found and not, or the counts. */
  readonly outcomes: readonly Outcome[];
}

/** How probability of every condition goes with the others; reckoned once for all candidates. */
export interface Marginals {
  readonly probability: Float64Array;
  /** Probability of both, entry `first * conditions + second`. */
  readonly both: Float64Array;
}

/** Marginals of the listed sets. */
export function marginalsOf({ conditions, sets, probability }: Belief): Marginals {
  const n = conditions.length;
  const single = new Float64Array(n);
  const both = new Float64Array(n * n);
  const members: number[] = [];
  for (let set = 1; set < sets.count; set++) {
    members.length = 0;
    for (let each = set; each > 0; each = sets.parent[each] as number) members.push(sets.added[each] as number);
    const weight = probability[set] as number;
    for (const first of members) {
      single[first] = (single[first] as number) + weight;
      for (const second of members) both[first * n + second] = (both[first * n + second] as number) + weight;
    }
  }
  return { probability: single, both };
}

/** Worth of a candidate under the belief; `results` are those of `resultsOf`, where they are at hand. */
export function worthOf(
  belief: Belief,
  marginals: Marginals,
  candidate: Candidate,
  results = resultsOf(candidate),
): Worth {
  return candidate.dependsOn === "set"
    ? worthBySets(belief, marginals, results)
    : worthByCondition(belief, marginals, candidate);
}

/** Results of a step set by set; none for a count, which goes by one condition. Costly: asked once for each step. */
export const resultsOf = (candidate: Candidate): readonly Float64Array[] =>
  candidate.dependsOn === "set" ? candidate.results() : [];

function worthBySets(belief: Belief, marginals: Marginals, results: readonly Float64Array[]): Worth {
  const { conditions, evidence, probability } = belief;
  const { parent } = belief.sets;
  // Joint probability of each condition with the last result is what the others leave of its marginal.
  let rest = marginals.probability;
  let [given, before, loss] = [0, 0, 0];
  const outcomes: Outcome[] = [];
  const logs = new Float64Array(probability.length);
  for (const [index, result] of results.entries()) {
    let chance = 0;
    logs[0] = Math.log2(result[0] as number);
    for (let set = 0; set < probability.length; set++) {
      const p = result[set] as number;
      // Most sets show the result as often as the set they grew from: a logarithm is taken once for all of them.
      const from = set === 0 ? 0 : (parent[set] as number);
      const log = p === result[from] ? (logs[from] as number) : Math.log2(p);
      logs[set] = log;
      const weight = (probability[set] as number) * p;
      if (weight === 0) continue;
      chance += weight;
      given -= weight * log;
    }
    if (chance === 0) {
      outcomes.push({ chance, after: marginals.probability });
      continue;
    }
    before -= chance * Math.log2(chance);
    const joint = index === results.length - 1 ? rest : jointWith(belief, result);
    rest = rest.map((each, condition) => each - (joint[condition] as number));
    const after = joint.map((each) => each / chance);
    outcomes.push({ chance, after });
    loss += chance * expectedLoss(conditions, after, evidence);
  }
  // Rounding can leave a hair below zero where nothing is learnt.
  return {
    bits: positive(before - given),
    decisionGain: positive(expectedLoss(conditions, marginals.probability, evidence) - loss),
    outcomes,
  };
}

/** Probability of each condition together with the result: from the sets that grew last, each added to the one before. */
function jointWith({ conditions, sets, probability }: Belief, result: Float64Array): Float64Array {
  const { count, parent, added } = sets;
  const joint = new Float64Array(conditions.length);
  const grown = new Float64Array(count);
  for (let set = count - 1; set > 0; set--) {
    const weight = (grown[set] as number) + (probability[set] as number) * (result[set] as number);
    const from = parent[set] as number;
    const member = added[set] as number;
    grown[from] = (grown[from] as number) + weight;
    joint[member] = (joint[member] as number) + weight;
  }
  return joint;
}

function worthByCondition(
  { conditions, evidence }: Belief,
  { probability, both }: Marginals,
  candidate: Extract<Candidate, { dependsOn: "condition" }>,
): Worth {
  const n = conditions.length;
  const { condition, withCondition, without } = candidate;
  const p = probability[condition] as number;
  let bits = 0;
  let loss = 0;
  const outcomes: Outcome[] = [];
  for (let result = 0; result < withCondition.length; result++) {
    const [yes, no] = [p * (withCondition[result] as number), (1 - p) * (without[result] as number)];
    const chance = yes + no;
    if (chance === 0) {
      outcomes.push({ chance, after: probability });
      continue;
    }
    if (yes > 0) bits += yes * Math.log2((withCondition[result] as number) / chance);
    if (no > 0) bits += no * Math.log2((without[result] as number) / chance);
    const after = probability.map((each, other) => {
      const together = both[condition * n + other] as number;
      const withIt = p > 0 ? together / p : 0;
      const withoutIt = p < 1 ? (each - together) / (1 - p) : 0;
      return (yes * withIt + no * withoutIt) / chance;
    });
    outcomes.push({ chance, after });
    loss += chance * expectedLoss(conditions, after, evidence);
  }
  return {
    bits: positive(bits),
    decisionGain: positive(expectedLoss(conditions, probability, evidence) - loss),
    outcomes,
  };
}

const roundingSlack = 1e-9;
const positive = (value: number): number => (value < 0 && value > -roundingSlack ? 0 : value);
