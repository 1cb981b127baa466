/** What is shown whatever the rank, and what is asked before anything else. */
import type { CautionId } from "./cautions.ts";
import { judged, recalled, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";
import type { ConditionId, FindingId } from "./ids.ts";
import type { TestId } from "./tests/index.ts";

/** A notice that fires on findings alone, whatever the ranking says. */
export interface MustNotMiss {
  readonly condition: ConditionId;
  /** It fires when every one of these is present; none where only a test fires it. */
  readonly findings: readonly FindingId[];
  /** Tests whose find of the condition fires it as well: they say what the one finding says. Judgement. */
  readonly tests: readonly TestId[];
  /** Further circumstance under which alone it fires: on a living colony, or where the agent is not endemic. */
  readonly onlyIf: "colony-alive" | "not-endemic" | "hornet-not-established" | null;
  /** What to do, in plain words. */
  readonly act: string;
  /** What must not be done meanwhile; empty where nothing is known to be wrong. */
  readonly doNot: readonly string[];
  /** True where the law may want to hear of it at once. */
  readonly report: boolean;
  /** What may explain it by itself: where `with` is present and none of `without` is, no report is asked for and this caution says what to do. */
  readonly milder?: {
    readonly with: FindingId;
    readonly without: readonly FindingId[];
    readonly act: CautionId;
  };
  readonly citations: Citations;
}

const overrides = judged("override of the ranking");
const foulbroodStops = [
  "Do not move, burn or medicate before the authority has spoken.",
  "Do not move comb, bees or gear to another colony.",
] as const;

/** The notices, by key. */
export const mustNotMiss = {
  "rope-american-foulbrood": {
    condition: "american_foulbrood",
    findings: ["ropy_thread"],
    tests: ["rope-test", "afb-strip", "smear-microscopy", "uncap-brood"],
    onlyIf: null,
    act: "Put the lid back on, keep the combs in the hive, and narrow the entrance against robbers; wash hands and tools before the next hive. Tell the competent authority today; send brood comb for confirmation as they say.",
    doNot: foulbroodStops,
    report: true,
    citations: [overrides, seen("foulbrood-comparison", "rope"), seen("nbu-inspection", "standstill on suspicion")],
  },
  "scale-american-foulbrood": {
    condition: "american_foulbrood",
    findings: ["hard_flat_scale"],
    tests: ["milk-test"],
    onlyIf: null,
    act: "Put the lid back on, keep the combs in the hive, and narrow the entrance against robbers; wash hands and tools before the next hive. Tell the competent authority today; send brood comb for confirmation as they say.",
    doNot: foulbroodStops,
    report: true,
    citations: [overrides, seen("agvic-brood", "scale"), seen("nbu-inspection", "standstill on suspicion")],
  },
  "fast-mites-tropilaelaps": {
    condition: "tropilaelaps",
    findings: ["fast_small_mites"],
    tests: ["bump-test", "uncap-brood"],
    onlyIf: null,
    act: "Put the mites in 70 to 95 % alcohol and call the competent authority today; the reference laboratory decides.",
    doNot: ["Do not move bees or brood out of the apiary."],
    report: true,
    citations: [overrides, seen("woah-tropilaelaps-2018", "chapter 9.5"), recalled("alcohol for unknown arthropods")],
  },
  "beetles-small-hive-beetle": {
    condition: "small_hive_beetle",
    findings: ["beetles_or_spined_larvae"],
    tests: [],
    onlyIf: "not-endemic",
    act: "Put beetles or larvae in alcohol and call the competent authority today.",
    doNot: ["Do not move hives or comb."],
    report: true,
    citations: [overrides, seen("practical-manual-shb", "text")],
  },
  "hornets-exotic": {
    condition: "hornet_predation",
    findings: ["hornets_hawking"],
    tests: [],
    onlyIf: "hornet-not-established",
    act: "Photograph one, or catch it where that is safe. If it is no kind known from here, such as the yellow-legged hornet, tell the competent authority today, with the place.",
    doNot: ["Do not go near a nest."],
    report: false,
    citations: [judged("an exotic hornet is reported; a common wasp is not")],
  },
  "twisted-european-foulbrood": {
    condition: "european_foulbrood",
    findings: ["twisted_discoloured_larva"],
    tests: ["efb-strip", "smear-microscopy"],
    onlyIf: null,
    act: "Try the matchstick, use a field kit or send brood comb, and ask whether the disease must be reported where you are.",
    doNot: ["Do not move comb, bees or gear to another colony until it is settled."],
    report: true,
    citations: [overrides, seen("foulbrood-comparison", "table")],
  },
  "green-stonebrood": {
    condition: "stonebrood",
    findings: ["green_hard_mummies"],
    tests: [],
    onlyIf: null,
    act: "Put on a respirator before you go on, close the hive, and have the mummies cultured.",
    doNot: ["Do not open or crush the mummies."],
    report: false,
    citations: [overrides, recalled("hazard to people")],
  },
  "sudden-heap-poisoning": {
    condition: "acute_poisoning",
    findings: ["most_colonies", "onset_sudden", "dead_heap"],
    tests: [],
    onlyIf: null,
    act: "Photograph and note the time, call the pesticide authority, and freeze fresh dead bees today.",
    doNot: ["Do not disturb hives or site.", "Never shut bees in during heat."],
    report: true,
    milder: {
      with: "recent_hive_treatment",
      without: ["recent_spray", "tongue_out", "wet_regurgitating"],
      act: "heap-while-treated",
    },
    citations: [overrides, seen("brown-kegley-2014", "text"), seen("pesticide-stewardship", "text")],
  },
  "no-food-starvation": {
    condition: "starvation",
    findings: ["stores_exhausted"],
    tests: [],
    onlyIf: "colony-alive",
    act: "Feed today: warm syrup, or solid sugar against the cluster in the cold.",
    doNot: ["Never feed honey from elsewhere."],
    report: false,
    citations: [overrides, seen("skagit-2020", "dead-out signs")],
  },
  "spores-american-foulbrood": {
    condition: "american_foulbrood",
    findings: [],
    tests: ["culture-pcr"],
    onlyIf: null,
    act: "Tell the competent authority: spores of American foulbrood were found. Then look at every brood comb; without signs in the brood the spores do not explain the loss.",
    doNot: foulbroodStops,
    report: true,
    citations: [overrides],
  },
} as const satisfies Readonly<Record<string, MustNotMiss>>;

/** Key of a notice. */
export type MustNotMissKey = keyof typeof mustNotMiss;

/** A question asked before the differential. */
export interface RedFlag {
  readonly question: string;
  /** Findings that answer it with yes; empty where it is about people. */
  readonly findings: readonly FindingId[];
  /** What to do first on yes. */
  readonly act: string;
  /** Notices it leads to. */
  readonly leadsTo: readonly MustNotMissKey[];
  readonly citations: Citations;
}

/** Red flags, by key, in the order they are asked. They must be answered before the differential. */
export const redFlags = {
  "sting-allergy": {
    question: "Has anyone been stung badly, or is anyone allergic to stings?",
    findings: [],
    act: "See to the person first; call the emergency service. Nobody with an allergy goes to the hives.",
    leadsTo: [],
    citations: [judged("red-flag step of the call")],
  },
  "sudden-mass-death": {
    question: "Did many bees die all at once, in most colonies?",
    findings: ["dead_heap", "onset_sudden", "most_colonies"],
    act: "Photograph and note the time, call the pesticide authority, and freeze fresh dead bees today.",
    leadsTo: ["sudden-heap-poisoning"],
    citations: [judged("red-flag step of the call"), seen("pesticide-stewardship", "text")],
  },
  "brood-ropes-or-smells": {
    question: "Does dead brood rope, stick as a scale, or smell foul?",
    findings: ["ropy_thread", "hard_flat_scale", "foul_odour"],
    act: "Put the lid back on, move nothing, narrow the entrance against robbers, wash hands and tools, and call the competent authority.",
    leadsTo: ["rope-american-foulbrood", "scale-american-foulbrood"],
    citations: [judged("red-flag step of the call"), seen("agvic-brood", "text")],
  },
  "exotic-signs": {
    question: "Fast slim mites, small beetles with spined larvae, or strange hornets?",
    findings: ["fast_small_mites", "beetles_or_spined_larvae", "hornets_hawking"],
    act: "Keep one in alcohol and call the competent authority today.",
    leadsTo: ["fast-mites-tropilaelaps", "beetles-small-hive-beetle", "hornets-exotic"],
    citations: [judged("red-flag step of the call"), seen("woah-tropilaelaps-2018", "chapter 9.5")],
  },
  "no-food-now": {
    question: "Is the colony alive and out of food?",
    findings: ["stores_exhausted"],
    act: "Feed today.",
    leadsTo: ["no-food-starvation"],
    citations: [judged("override of the ranking")],
  },
} as const satisfies Readonly<Record<string, RedFlag>>;

/** Key of a red flag. */
export type RedFlagKey = keyof typeof redFlags;
