/**
 * "Only one colony" and "most colonies", worked out from the records.
 *
 * @module views/model
 */
import { type Casebook, type CaseState, settled } from "../../casebook/index.ts";
import type { FindingState } from "../../journal/index.ts";
import { findingIds, noTrouble } from "../../knowledge/index.ts";

/** Fewest colonies at an apiary for "only one" or "most" to mean anything, by the definition of the findings. */
const fewestColonies = 4;

const signsOfTrouble = findingIds.filter((id) => !noTrouble.includes(id));

/**
 * Which of the two is present: only where four colonies or more are on record and each was looked at for at least one
 * sign, since not looked for is not absent.
 */
export function spreadOf(casebook: Casebook, state: CaseState): Readonly<Partial<Record<string, FindingState>>> {
  const all = Object.keys((state.apiary === null ? undefined : casebook.apiaries[state.apiary])?.colonies ?? {});
  const looked = all.filter((colony) => troubleIn(state, colony).length > 0);
  if (all.length < fewestColonies || looked.length < all.length) return {};
  const affected = all.filter((colony) => troubleIn(state, colony).includes("present")).length;
  if (affected === 1) return { single_colony: "present" };
  return affected * 2 >= all.length ? { most_colonies: "present" } : {};
}

/** Answers to the signs of trouble of a colony, "not looked" left out. */
export const troubleIn = (state: CaseState, colony: string): readonly FindingState[] =>
  signsOfTrouble
    .flatMap((id) => settled(state.findings[colony]?.[id]) ?? [])
    .filter((answer) => answer !== "not-looked");
