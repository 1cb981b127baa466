/** Counts of several colonies, checked and summed before anything is said of how they differ. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import type { ColonyCount } from "./beta-binomial-likelihood.ts";
import { benchProblem } from "./problems.ts";

export interface ReadColonies {
  /** Colonies with at least one bee read. */
  readonly kept: readonly ColonyCount[];
  readonly positive: number;
  readonly examined: number;
}

/**
 * The colonies that had bees read, with their sums; those without any are left out.
 *
 * @returns the counts, or `positives-exceed-examined`, `too-few-colonies`: one colony tells nothing of how colonies differ
 * @throws DomainError for counts that are not whole
 * @source none: arithmetic
 *
 * @example
 * readColonies([{ positive: 1, examined: 20 }, { positive: 0, examined: 0 }, { positive: 4, examined: 30 }]).value.examined  // → 50
 * readColonies([{ positive: 1, examined: 20 }]).ok  // → false
 */
export function readColonies(colonies: readonly ColonyCount[]): Result<ReadColonies> {
  for (const [i, { positive, examined }] of colonies.entries()) {
    const field = `colonies[${i}]`;
    ensure(Number.isInteger(positive) && positive >= 0, `${field}.positive`, positive, "a whole number ≥ 0");
    ensure(Number.isInteger(examined) && examined >= 0, `${field}.examined`, examined, "a whole number ≥ 0");
    if (positive > examined) {
      return blocked(benchProblem("positives-exceed-examined", "blocked", `${field}.positive`, { positive, examined }));
    }
  }
  const kept = colonies.filter(({ examined }) => examined > 0);
  if (kept.length < 2) {
    return blocked(benchProblem("too-few-colonies", "blocked", "colonies", { colonies: kept.length }));
  }
  return answered({
    kept,
    positive: kept.reduce((sum, each) => sum + each.positive, 0),
    examined: kept.reduce((sum, each) => sum + each.examined, 0),
  });
}
