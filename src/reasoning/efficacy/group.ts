/** Counts of a group of bees, and the checks that every formula of this step shares. */
import { ensure, type Problem } from "../../units/index.ts";
import { efficacyProblem } from "./problems.ts";

/** Infested among examined: bees, or colonies. */
export interface Share {
  /** Whole number ≥ 0. */
  readonly infested: number;
  /** Whole number ≥ 0. */
  readonly examined: number;
}

/** What stands in the way of using a share, or null. `group` is the field's path. */
export function shareProblem(group: string, { infested, examined }: Share): Problem | null {
  ensure(Number.isInteger(infested) && infested >= 0, `${group}.infested`, infested, "a whole number ≥ 0");
  ensure(Number.isInteger(examined) && examined >= 0, `${group}.examined`, examined, "a whole number ≥ 0");
  if (infested > examined) {
    return efficacyProblem("infested-exceed-examined", "blocked", group, { group, infested, examined });
  }
  return examined === 0 ? efficacyProblem("group-not-examined", "blocked", group, { group }) : null;
}

/**
 * Share of those examined that are not infested: dead ones, where the survivors are counted as infested.
 *
 * @returns proportion 0–1
 * @throws DomainError unless at least one was examined and the counts fit each other
 * @source definition
 *
 * @example
 * shareWithout({ infested: 12, examined: 100 })  // → 0.88
 */
export function shareWithout({ infested, examined }: Share): number {
  ensure(examined > 0 && infested >= 0 && infested <= examined, "infested", infested, "from 0 to the number examined");
  return (examined - infested) / examined;
}
