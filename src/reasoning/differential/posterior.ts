/** Which way the sums are taken, and what they say of each condition. */
import { asShare, expand, type Groups, type Sums } from "./expansion.ts";
import type { NetworkEvidence } from "./network.ts";
import type { Parameters } from "./parameters.ts";
import { setsPosterior } from "./sets-posterior.ts";
import { termsOf } from "./terms.ts";
import { unionTables } from "./union-tables.ts";

/** Posterior probabilities. */
export interface Posterior {
  /** One per condition: probability that it is present. */
  readonly condition: Float64Array;
  /** One per roll-up group asked for: probability that any member is present. */
  readonly group: Float64Array;
  /** Weight of all sets that were summed, in the unit of a list of sets. */
  readonly total: number;
  /** Probability of the empty set. */
  readonly nothingWrong: number;
  /** Posterior mass of the sets that were left out, or a bound on it; 0 when all sets are in the sums. */
  readonly neglectedMass: number;
  /** `expansion` and `tables` hold every set, `sets` the best ones. */
  readonly method: "expansion" | "tables" | "sets";
}

/** More present findings than this go to the tables at once; their work is 2^findings too, but nothing cancels. */
export const expansionLimit = 12;
/** More present findings than this go to the best sets: the tables would no longer fit. */
export const tablesLimit = 16;
/**
 * Bound on the relative rounding error of the expansion above which the tables take its place. Up to a twentieth of the
 * bound was seen to be lost: posteriors keep nine digits.
 */
export const acceptedError = 5e-9;
/** The same for what is told in fewer digits: reasons in bits, and plain networks of one's own. */
export const bearableError = 1e-7;

/**
 * Posterior of every condition; null when no set of conditions could bring the evidence.
 *
 * The expansion up to twelve present findings, unless its measured cancellation is too large; then the tables, in which
 * nothing cancels; beyond sixteen the best sets, with a bound on what was left out.
 */
export function posteriorOf(
  parameters: Parameters,
  evidence: NetworkEvidence,
  groups: Groups,
  accepted: number = acceptedError,
): Posterior | null {
  const { length } = evidence.present;
  if (length <= expansionLimit) {
    const sums = expand(parameters, termsOf(parameters, evidence), groups);
    if (sums.relativeError <= accepted) return asPosterior(sums, "expansion");
  }
  if (length <= tablesLimit) {
    const sums = unionTables(parameters, evidence, groups);
    return sums.total > 0 && sums.relativeError < 1 ? asPosterior(sums, "tables") : null;
  }
  return setsPosterior(parameters, evidence, groups);
}

function asPosterior(sums: Sums, method: Posterior["method"]): Posterior {
  return {
    condition: sums.withCondition.map((each) => asShare(each / sums.total)),
    group: sums.withoutGroup.map((each) => asShare(1 - each / sums.total)),
    total: sums.total,
    nothingWrong: asShare(sums.empty / sums.total),
    neglectedMass: 0,
    method,
  };
}
