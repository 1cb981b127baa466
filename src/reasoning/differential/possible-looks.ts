/** What cannot be seen or made on a colony as it is, and findings that cannot be true of one look. */
import { type FindingId, findings, isFindingId, needsLiveBees, type TestId } from "../../knowledge/index.ts";
import { type Problem, problem } from "../../units/index.ts";
import type { ReadCase } from "./input.ts";
import type { Setting } from "./network-for.ts";

/**
 * Looks and tests that take brood: without any there is nothing to look at, and an absent sign would tell nothing. What
 * stays behind when brood has gone, scale, mummies and specks, is asked all the same.
 */
export const needsBrood: readonly (FindingId | TestId)[] = [
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

/** Tests made on a larva or scale that looks sick: without one there is nothing to put on the strip or the slide. */
const needsSickBrood: readonly (FindingId | TestId)[] = [
  "rope-test",
  "afb-strip",
  "efb-strip",
  "milk-test",
  "smear-microscopy",
];

/** Signs of a larva or scale that looks sick. */
const sickBrood: readonly FindingId[] = [
  "sunken_perforated_caps",
  "ropy_thread",
  "hard_flat_scale",
  "twisted_discoloured_larva",
  "grey_slumped_larva",
  "sac_larva",
  "brood_dead_at_edge",
  "foul_odour",
];

/** Findings that one look cannot show both, by their definitions; each may be true of another day. */
const contradicting: readonly (readonly [FindingId, FindingId])[] = [
  ["normal_eggs_and_queen", "queen_not_found_no_eggs"],
  ["normal_eggs_and_queen", "sealed_brood_only"],
  ["multiple_eggs_per_cell", "queen_not_found_no_eggs"],
  ["multiple_eggs_per_cell", "sealed_brood_only"],
  ["stores_ample", "stores_low"],
  ["stores_exhausted", "stores_low"],
  ["few_dead_depopulated", "dead_pile_floor"],
  ["few_dead_depopulated", "dead_heap"],
  ...needsBrood.filter(isFindingId).map((id) => [id, "no_brood_in_season"] as const),
];

/**
 * The case without what is absent only because there was nothing to look at: of a colony without brood, the signs of
 * sick brood. What contradicts itself, and what a dead colony can have shown only while it lived, is counted and told.
 */
export function withoutIdleAbsence(read: ReadCase, problems: Problem[]): ReadCase {
  const { present, colonyState } = read;
  for (const [finding, other] of contradicting)
    if (present.includes(finding) && present.includes(other))
      problems.push(problem("findings-contradict", "warned", `findings.${finding}`, { slots: { finding, other } }));
  const lived = colonyState === "dead" ? present.filter((id) => needsLiveBees.includes(id)) : [];
  for (const finding of lived)
    problems.push(problem("seen-while-alive", "warned", `findings.${finding}`, { slots: { finding } }));
  if (!present.includes("no_brood_in_season")) return read;
  // Findings about the queen say themselves that brood is missing: they were looked for.
  const idle = read.absent.filter((id) => needsBrood.includes(id) && findings[id].group !== "queen");
  if (idle.length === 0) return read;
  problems.push(problem("absent-without-brood", "noted", "findings", { slots: { findings: idle.join(", ") } }));
  return { ...read, absent: read.absent.filter((id) => !idle.includes(id)) };
}

/** Whether the look or test can be made on this colony in this season, with what was seen of it. */
export function isPossible(
  id: FindingId | TestId,
  { colonyState, season }: Pick<Setting, "colonyState" | "season">,
  present: readonly FindingId[],
): boolean {
  if (colonyState === "dead" && needsLiveBees.includes(id)) return false;
  if (present.includes("no_brood_in_season") && needsBrood.includes(id)) return false;
  // In winter there may be none, and an absent sign would be taken for a look at sound brood: brood seen opens it.
  const isBroodSeen = present.some((each) => needsBrood.includes(each));
  if (season === "winter" && needsBrood.includes(id) && !isBroodSeen) return false;
  if (needsSickBrood.includes(id) && !present.some((each) => sickBrood.includes(each))) return false;
  // Not asked while neighbouring colonies have no brood; in winter they have none.
  return !(isFindingId(id) && findings[id].onlyWhenNeighboursHaveBrood === true && season === "winter");
}
