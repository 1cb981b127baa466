/** What the engine reasons over: conditions, findings, and how often one brings the other. Knows no bee. */

/** A candidate explanation: present or not, whatever else is present. */
export interface NetworkCondition {
  readonly id: string;
  /** Prior odds p/(1 − p), ≥ 0; independent of the other conditions but for the blocks. */
  readonly odds: number;
  /** Group judged before the single label; null when it stands alone. */
  readonly rollUp: string | null;
  /** Standard deviation of the draws, of log odds; left out: that of judged prior odds. */
  readonly spread?: number;
}

/** Something that is present, absent or not looked for. */
export interface NetworkFinding {
  readonly id: string;
  /** Probability that it is present with no condition at all: the leak. 0 ≤ healthy ≤ 1. */
  readonly healthy: number;
  /** Findings of one group measure nearly the same thing; null when it stands alone. */
  readonly group: string | null;
  /** Standard deviation of the draws, of log odds; left out: that of a judged grade. */
  readonly spread?: number;
}

/** How often a condition alone brings a finding. Pairs that are not listed have no influence. */
export interface NetworkPair {
  /** Index of the condition. */
  readonly condition: number;
  /** Index of the finding. */
  readonly finding: number;
  /** Probability that the finding is present when this condition alone is present. */
  readonly rate: number;
  /** True when the condition makes the finding rarer: factor min(1, rate / healthy). */
  readonly suppresses: boolean;
  /** Standard deviation of the draws, of log odds; left out: that of a judged grade. */
  readonly spread?: number;
}

/**
 * Conditions tied by a cause: each follower is `ratio` times as frequent with the lead as without it, or, where its
 * prior is too high for that, its absence that many times as rare.
 */
export interface NetworkBlock {
  readonly lead: number;
  readonly followers: readonly number[];
  /** Risk ratio ≥ 1. The followers' own prior stays what it is. */
  readonly ratio: number;
}

/** A whole network. The engine is a pure function of it and of the evidence. */
export interface Network {
  readonly conditions: readonly NetworkCondition[];
  readonly findings: readonly NetworkFinding[];
  readonly pairs: readonly NetworkPair[];
  readonly blocks: readonly NetworkBlock[];
  /** Prior probability of the empty set; null leaves what the odds imply. */
  readonly nothingWrong: number | null;
  /** How strongly findings of one group go together, from 0 (not at all) to below 1 (one never without the other). */
  readonly dependence: number;
}

/** What was looked for, by finding index, and what else bears on the odds. */
export interface NetworkEvidence {
  readonly present: readonly number[];
  readonly absent: readonly number[];
  /** One factor per condition on its prior odds, from circumstances and from tests of its level. Length: conditions. */
  readonly oddsFactor: Float64Array;
}

/** Evidence of findings alone: every odds factor is 1. */
export function findingsOnly(network: Network, present: readonly number[], absent: readonly number[]): NetworkEvidence {
  return { present, absent, oddsFactor: new Float64Array(network.conditions.length).fill(1) };
}
