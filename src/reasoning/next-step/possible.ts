/** Which looks can be made at all, and which check a sign that was reported. */
import { type FindingId, findings, type TestId } from "../../knowledge/index.ts";
import type { Setting } from "../differential/index.ts";

/**
 * Looks that settle whether a reported sign is one. Crawlers count only if they cannot fly after warming too: so says
 * their definition, and until someone has warmed them the sign stands on a cold morning's word.
 */
export const verifies: Readonly<Partial<Record<FindingId, readonly FindingId[]>>> = {
  revive_on_warming: ["crawlers"],
};

/** Findings that only live bees show, by their definitions. */
const needsLiveBees: readonly FindingId[] = [
  "crawlers",
  "revive_on_warming",
  "k_wing",
  "worn_wings",
  "trembling",
  "spinning_uncoordinated",
  "hairless_black",
  "bloated_abdomen",
  "guards_reject_bees",
  "night_flight",
  "hover_facing_hive",
  "low_forager_traffic",
  "roar_agitated",
  "calm_polished_cells",
  "hornets_hawking",
];

/** Whether the look or test can be made on this colony in this season. */
export function isPossible(id: FindingId | TestId, { colonyState, season }: Setting): boolean {
  if (!(id in findings)) return true;
  const fact = findings[id as FindingId];
  if (colonyState === "dead" && needsLiveBees.includes(fact.id)) return false;
  // Not asked while neighbouring colonies have no brood; in winter they have none.
  return !(fact.onlyWhenNeighboursHaveBrood === true && season === "winter");
}
