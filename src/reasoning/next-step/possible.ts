/** Which looks can be made at all, and which check a sign that was reported. */
import { type FindingId, findings, isFindingId, type TestId } from "../../knowledge/index.ts";
import { needsBrood, needsLiveBees, type Setting } from "../differential/index.ts";

/**
 * Looks that settle whether a reported sign is one. Crawlers count only if they cannot fly after warming too: so says
 * their definition, and until someone has warmed them the sign stands on a cold morning's word.
 */
export const verifies: Readonly<Partial<Record<FindingId, readonly FindingId[]>>> = {
  revive_on_warming: ["crawlers"],
};

/** Whether the look or test can be made on this colony in this season, with what was seen of it. */
export function isPossible(
  id: FindingId | TestId,
  { colonyState, season }: Setting,
  present: readonly FindingId[],
): boolean {
  if (colonyState === "dead" && needsLiveBees.includes(id)) return false;
  if (present.includes("no_brood_in_season") && needsBrood.includes(id)) return false;
  // Not asked while neighbouring colonies have no brood; in winter they have none.
  return !(isFindingId(id) && findings[id].onlyWhenNeighboursHaveBrood === true && season === "winter");
}
