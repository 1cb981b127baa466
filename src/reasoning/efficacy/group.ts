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

/** For callers who hold counts that have been looked at: throws where `shareProblem` would tell the user. */
export function ensureShare(name: string, { infested, examined }: Share): void {
  const whole = Number.isInteger(infested) && Number.isInteger(examined) && examined >= 1;
  ensure(
    whole && infested >= 0 && infested <= examined,
    name,
    `${infested} of ${examined}`,
    "whole, 0 to all, of 1 or more",
  );
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
  ensureShare("infested", { infested, examined });
  return (examined - infested) / examined;
}
