/**
 * Answers that a dead colony cannot have given.
 *
 * @module views/model
 */
import { type CaseState, settled } from "../../casebook/index.ts";
import { type FindingId, needsLiveBees } from "../../knowledge/index.ts";
import type { Day } from "../../units/index.ts";

/** Answers on what only live bees show, given for a day after the colony had died; none where no such day is known. */
export function seenAfterDeath(
  state: CaseState,
  key: string,
): { readonly diedOn: Day; readonly findings: readonly FindingId[] } {
  const colony = settled(state.colonyStates[key]);
  const diedOn = colony?.state === "dead" ? (colony.diedOn ?? "") : "";
  if (diedOn === "") return { diedOn, findings: [] };
  const own = state.findings[key] ?? {};
  const isLate = (id: FindingId) =>
    needsLiveBees.includes(id) &&
    (settled(own[id]) ?? "not-looked") !== "not-looked" &&
    (own[id]?.candidates[0]?.at.slice(0, 10) ?? "") > diedOn;
  return { diedOn, findings: (Object.keys(own) as FindingId[]).filter(isLate) };
}
