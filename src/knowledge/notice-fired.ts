/** What fires a notice, by what is on record; and mites seen where there should be none. */
import { judged } from "./cite.ts";
import type { ConditionId, FindingId } from "./ids.ts";
import type { MustNotMiss } from "./must-not-miss.ts";
import type { TestId } from "./tests/index.ts";

/** A test with its result, as far as a notice asks. */
export interface ResultOnRecord {
  readonly test: string;
  readonly result?: "found" | "none-found" | "unclear" | undefined;
  /** What it says it found; left out where it does not name it. */
  readonly which?: readonly string[] | undefined;
  readonly positive?: number | undefined;
  readonly mites?: number | undefined;
  readonly sequenced?: boolean | undefined;
}

/** What is on record of a colony. */
export interface OnRecord {
  readonly isPresent: (finding: FindingId) => boolean;
  readonly results: readonly ResultOnRecord[];
  /** Null where nobody wrote it down. */
  readonly colonyState: "alive" | "dying" | "dead" | null;
  readonly region: { readonly smallHiveBeetle?: string | undefined; readonly vespa?: string | undefined };
}

/**
 * The findings, or the one test, that fire a notice; none where nothing does. A test need not be weighed to fire one;
 * a result that does not name what it found may be any of it.
 */
export function firedBy(notice: MustNotMiss, record: OnRecord): readonly (FindingId | TestId)[] {
  const { condition, findings, tests, onlyIf } = notice;
  if (onlyIf === "colony-alive" && record.colonyState === "dead") return [];
  if (onlyIf === "not-endemic" && record.region.smallHiveBeetle === "endemic") return [];
  if (onlyIf === "hornet-not-established" && record.region.vespa === "established") return [];
  // From the last: what is worked out from all colonies stands first in a notice, and is costly to ask.
  if (findings.length > 0 && findings.toReversed().every(record.isPresent)) return findings;
  const by = tests.find((test) => record.results.some((result) => isFindOf(condition, test, result)));
  return by === undefined ? [] : [by];
}

/** Whether the notice stands without its report, since something else on record may explain what fired it. */
export const isMilder = ({ milder }: MustNotMiss, { isPresent }: Pick<OnRecord, "isPresent">): boolean =>
  milder !== undefined && isPresent(milder.with) && !milder.without.some(isPresent);

/** Whether the result of this test can be a find of the condition. */
export const isFindOf = (
  condition: ConditionId,
  test: TestId,
  { test: made, result, which }: ResultOnRecord,
): boolean => made === test && result === "found" && (which === undefined || which.includes(condition));

/** Agents whose absence from a region can be said: the field of the region that says it, and the tests that count them. */
export const regionalMites = [
  { condition: "tracheal_mites", field: "acarapisWoodi", counted: ["tracheal-dissection", "thoracic-disc"] },
  { condition: "varroa_pms", field: "varroa", counted: ["varroa-wash", "sugar-roll", "co2-roll"] },
] as const;

/** An agent whose absence from a region can be said. */
export type RegionalMite = (typeof regionalMites)[number]["condition"];

/** Whether the result showed the mite itself, a sequenced PCR too. */
export function showsMite(mite: RegionalMite, given: ResultOnRecord): boolean {
  const { test, result, which, positive = 0, mites = 0, sequenced } = given;
  const counted: readonly string[] = regionalMites.find(({ condition }) => condition === mite)?.counted ?? [];
  if (mite === "tracheal_mites")
    return (
      (counted.includes(test) && positive > 0) || (test === "pooled-pcr" && result === "found" && sequenced === true)
    );
  return (
    (counted.includes(test) && mites > 0) ||
    (test === "uncap-brood" && result === "found" && which?.includes(mite) === true)
  );
}

/** A finding that is the mite itself, seen by eye; signs are not it. */
export const miteByEye: Readonly<Partial<Record<RegionalMite, FindingId>>> = { varroa_pms: "varroa_on_adults" };

/** What to do about mites in a region that is said to be without them. */
export const freeRegion = {
  act: "Keep what was found in alcohol and call the competent authority today; the reference laboratory decides.",
  doNot: ["Do not move bees out of the apiary."],
  report: true,
  citations: [judged("override of the ranking")],
} as const;

/** Looks and tests that only live bees allow, by their definitions. */
export const needsLiveBees: readonly (FindingId | TestId)[] = [
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

/** Findings that are no sign of trouble: circumstances, what is worked out, and signs of a colony doing well. */
export const noTrouble: readonly FindingId[] = [
  "single_colony",
  "most_colonies",
  "recent_spray",
  "toxic_bloom",
  "long_confinement",
  "dearth_or_foul_weather",
  "recent_hive_treatment",
  "closed_or_overheated",
  "new_stock_12m",
  "used_comb_or_gear",
  "no_mite_control",
  "small_or_late_start",
  "swarmed_5w",
  "normal_eggs_and_queen",
  "stores_ample",
  "calm_polished_cells",
  "hover_facing_hive",
];
