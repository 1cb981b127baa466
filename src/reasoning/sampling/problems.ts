/** Every trouble the sampling step can report, with the slots its sentence needs. */
import { type Problem, problem, type Severity } from "../../units/index.ts";

/** Codes of sampling with their slots; views/words holds one sentence for each. */
export interface SamplingProblems {
  /** Even examining every bee cannot reach the wanted confidence. */
  readonly "confidence-out-of-reach": {
    readonly reachable: number;
    readonly confidence: number;
    readonly population: number;
    readonly infested: number;
    readonly sensitivity: number;
  };
  readonly "infested-exceed-population": { readonly infested: number; readonly population: number };
  /** A design with no infested bee at all has nothing to detect. */
  readonly "test-no-better-than-chance": { readonly sensitivity: number; readonly specificity: number };
  readonly "nothing-to-detect": Readonly<Record<never, never>>;
  /** No number to examine up to `searched` keeps both kinds of error within bounds. */
  readonly "no-size-in-search": { readonly searched: number };
  /** A cut-point of 0 calls everything infested; there is no count below it. */
  readonly "no-count-below-zero": Readonly<Record<never, never>>;
  /** So many are infested that pools first and singles after need no fewer tests than singles alone. */
  readonly "pooling-saves-nothing": { readonly prevalence: number };
  /** Whatever the number of bees per colony, taking every colony does not reach the confidence. */
  readonly "no-design-reaches": { readonly mostBees: number };
  readonly "nothing-examined": Readonly<Record<never, never>>;
  readonly "examined-exceed-population": { readonly examined: number; readonly population: number };
  /** The zero is compatible with every prevalence up to 1. */
  readonly "zero-rules-nothing-out": {
    readonly examined: number;
    readonly sensitivity: number;
    readonly level: number;
  };
  readonly "no-colony-chosen": { readonly coloniesInApiary: number };
  readonly "colonies-exceed-apiary": { readonly chosen: number; readonly coloniesInApiary: number };
  readonly "colony-chosen-twice": { readonly colony: string };
  /** `missedIfOne`: chance that a single infested colony, drawn at random, is not among the chosen. */
  readonly "some-colonies-untested": {
    readonly chosen: number;
    readonly coloniesInApiary: number;
    readonly missedIfOne: number;
  };
  readonly "summer-zero-is-weak": { readonly beesPerColony: number };
  /** Fewer bees than the design needs: `missed` is the chance that it would still look clear. */
  readonly "too-few-for-design": {
    readonly examined: number;
    readonly designPrevalence: number;
    readonly missed: number;
  };
  readonly "treated-before": { readonly daysAgo: number };
  /** Bees of a dead colony: mites leave them, and the tubes decay. */
  readonly "dead-colony-sampled": { readonly colonies: string };
  /** One plan for colonies that are dead and colonies that live. */
  readonly "dead-among-chosen": { readonly colonies: string };
  /** One vial is asked to answer questions that need bees from different places. */
  readonly "one-vial-two-questions": { readonly question: string; readonly takes: string };
  /** The spare bees rest on a judged share of unreadable bees, not on a source. */
  readonly "spare-share-judged": { readonly spareShare: number; readonly spareBees: number };
  /** The share to call high must lie above the share to call low. */
  readonly "sequential-prevalences-disordered": { readonly lowPrevalence: number; readonly highPrevalence: number };
  /** Two chances of error that make 1 or more leave nothing between the lines. */
  readonly "sequential-errors-too-large": { readonly alpha: number; readonly beta: number };
  readonly "sequential-bees-disordered": { readonly minBees: number; readonly maxBees: number };
  /** The shares that part moderate from severe must lie above those that part light from moderate. */
  readonly "sequential-bands-disordered": {
    readonly lowerLow: number;
    readonly lowerHigh: number;
    readonly upperLow: number;
    readonly upperHigh: number;
  };
  /** The errors wanted are not kept with `maxBees`, but are with `neededBees`; `reached` are those of a plan within a hundredth of the best. */
  readonly "sequential-plan-needs-more-bees": {
    readonly maxBees: number;
    readonly alpha: number;
    readonly beta: number;
    readonly reachedAlpha: number;
    readonly reachedBeta: number;
    readonly neededBees: number;
  };
  /** Nor are they known to be kept by any plan of `searched` bees or fewer. */
  readonly "sequential-plan-out-of-reach": {
    readonly maxBees: number;
    readonly alpha: number;
    readonly beta: number;
    readonly reachedAlpha: number;
    readonly reachedBeta: number;
    readonly searched: number;
  };
  /** By its lines the plan would not have stopped at these counts. */
  readonly "not-a-stop-of-the-plan": { readonly examined: number; readonly positive: number };
  /** No line is crossed yet: limits that keep their level exist only at a stop. */
  readonly "reading-not-stopped": { readonly examined: number; readonly positive: number };
  /** Bees were read past the stop though no number was set beforehand: all bees are no fixed sample. */
  readonly "read-on-unplanned": { readonly readOn: number; readonly examined: number };
  /** A number was set beforehand, and another was read. */
  readonly "read-other-than-planned": { readonly examined: number; readonly setBeforehand: number };
  /** A sample larger than a colony: the model of a large colony holds no more, and nobody reads so many. */
  readonly "more-bees-than-a-colony": { readonly bees: number };
  /** So many bees are seldom spared, and opened by nobody one by one. */
  readonly "many-bees-to-open": { readonly bees: number };
  /** The counts of all bees do not hold those at the stop. */
  readonly "past-stop-counts-disagree": {
    readonly examined: number;
    readonly positive: number;
    readonly allExamined: number;
    readonly allPositive: number;
  };
}

/** All codes of `SamplingProblems`, for tests of completeness. */
export const samplingProblemCodes = [
  "confidence-out-of-reach",
  "infested-exceed-population",
  "test-no-better-than-chance",
  "nothing-to-detect",
  "no-size-in-search",
  "no-count-below-zero",
  "no-design-reaches",
  "pooling-saves-nothing",
  "nothing-examined",
  "examined-exceed-population",
  "zero-rules-nothing-out",
  "no-colony-chosen",
  "colonies-exceed-apiary",
  "colony-chosen-twice",
  "some-colonies-untested",
  "summer-zero-is-weak",
  "too-few-for-design",
  "treated-before",
  "dead-colony-sampled",
  "dead-among-chosen",
  "one-vial-two-questions",
  "spare-share-judged",
  "sequential-prevalences-disordered",
  "sequential-errors-too-large",
  "sequential-bees-disordered",
  "sequential-bands-disordered",
  "sequential-plan-needs-more-bees",
  "sequential-plan-out-of-reach",
  "not-a-stop-of-the-plan",
  "reading-not-stopped",
  "read-on-unplanned",
  "read-other-than-planned",
  "more-bees-than-a-colony",
  "many-bees-to-open",
  "past-stop-counts-disagree",
] as const satisfies readonly (keyof SamplingProblems)[];

/** A Problem of this step: code and slots must fit each other. */
export const samplingProblem = <Code extends keyof SamplingProblems>(
  code: Code,
  severity: Severity,
  field: string | null,
  slots: SamplingProblems[Code],
): Problem => problem(code, severity, field, { slots: { ...slots } });
