/** Which looks can be made at all, and which check a sign that was reported. */
import { type FindingId, findings, isFindingId, type TestId } from "../../knowledge/index.ts";
import type { Setting } from "../differential/index.ts";

/**
 * Looks that settle whether a reported sign is one. Crawlers count only if they cannot fly after warming too: so says
 * their definition, and until someone has warmed them the sign stands on a cold morning's word.
 */
export const verifies: Readonly<Partial<Record<FindingId, readonly FindingId[]>>> = {
  revive_on_warming: ["crawlers"],
};

/** Looks and tests that only live bees allow, by their definitions. */
const needsLiveBees: readonly (FindingId | TestId)[] = [
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
  "mostly_young_bees",
  "fast_small_mites",
  "queen_not_found_no_eggs",
  "normal_eggs_and_queen",
  "test-frame",
  "bump-test",
  "sugar-roll",
  "co2-roll",
  "sticky-board",
  "live-dead-stain",
];

/**
 * Looks and tests that take brood: without any there is nothing to look at, and an absent sign would tell nothing. What
 * stays behind when brood has gone, scale, mummies and specks, is asked all the same.
 */
const needsBrood: readonly (FindingId | TestId)[] = [
  "spotty_brood",
  "sunken_perforated_caps",
  "ropy_thread",
  "twisted_discoloured_larva",
  "grey_slumped_larva",
  "sac_larva",
  "chewed_or_bald_pupae",
  "dead_emerging",
  "brood_dead_at_edge",
  "excess_brood_for_bees",
  "dry_larvae",
  "drone_brood_in_worker_cells",
  "multiple_eggs_per_cell",
  "normal_eggs_and_queen",
  "sealed_brood_only",
  "fast_small_mites",
  "rope-test",
  "afb-strip",
  "efb-strip",
  "smear-microscopy",
  "uncap-brood",
  "bump-test",
];

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
