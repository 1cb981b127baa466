/** What is asked: one colony, what was looked for, what was tested. The shape other programs send. */
import type { ConditionId, FindingId, Keeping, TakenFrom, TestId } from "../../knowledge/index.ts";
import type { Day, Season } from "../../units/index.ts";

/** Looked for and seen, looked for and not seen, or not looked for. */
export type FindingState = "present" | "absent" | "not-looked";

/** What lives in the region. Defaults: varroa present, tracheal mites unknown, the rest absent. */
export interface Region {
  readonly varroa?: "present" | "absent";
  readonly acarapisWoodi?: "found" | "unknown" | "absent";
  readonly smallHiveBeetle?: "absent" | "present" | "endemic";
  readonly tropilaelaps?: "absent" | "present" | "endemic";
  readonly vespa?: "absent" | "established";
}

/** One test and its result. Which numbers it needs goes by the test. */
export interface TestInput {
  /** Id of the test. */
  readonly test: string;
  /** Bees found positive of bees examined. */
  readonly positive?: number;
  /** Bees that could be read. */
  readonly examined?: number;
  /** Further bees that could not be read; they stay outside the denominator. */
  readonly unreadable?: number;
  readonly mites?: number;
  readonly bees?: number;
  /** Share of the mites that the wash brings down, where the laboratory knows its own; 0 < recovery ≤ 1. */
  readonly recovery?: number;
  readonly sporesMillionsPerBee?: number;
  readonly result?: "found" | "none-found" | "unclear";
  /** What was found, where the test can find several things; for a virus panel those in the highest class. */
  readonly which?: readonly ConditionId[];
  /** The product of a PCR for tracheal mites was sequenced, so that the external mites are told apart. */
  readonly sequenced?: boolean;
  /** What was on the bees reaches a dose that harms them. */
  readonly harmfulDose?: boolean;
  /** Days from death to the freezer. */
  readonly daysUntilFrozen?: number;
  /** How the bees were kept until they were read. */
  readonly kept?: Keeping;
  readonly date?: Day;
  readonly takenFrom?: TakenFrom;
  readonly aliveWhenTaken?: boolean;
  readonly daysSinceControl?: number;
}

/** A case for one colony. */
export interface DifferentialInput<F extends string = FindingId> {
  readonly season?: Season;
  readonly date?: Day;
  /** Degrees, south negative; needed beside `date`. */
  readonly latitude?: number;
  readonly colony?: { readonly state: "alive" | "dying" | "dead"; readonly daysSinceDeath?: number };
  readonly region?: Region;
  readonly findings: Readonly<Partial<Record<F, FindingState>>>;
  readonly tests?: readonly TestInput[];
  /** Prior probability that nothing is wrong; a programme may set its own. */
  readonly nothingWrong?: number;
  readonly thresholds?: { readonly leading?: number; readonly open?: number };
  /** Draws behind the ranges. */
  readonly draws?: number;
  readonly seed?: number;
}

/** A case whose findings may be a programme's own. */
export type AnyInput = DifferentialInput<string>;
/** A test that found something, weighed or not, and what it says it found. */
export interface FoundResult {
  readonly test: TestId;
  /** Null where the result does not name it. */
  readonly which: readonly ConditionId[] | null;
}

/** A case as the engine takes it: checked, with its defaults, findings in the order of the knowledge. */
export interface ReadCase {
  readonly season: Season;
  /** Null when no date was given. */
  readonly latitude: number | null;
  readonly colonyState: "alive" | "dying" | "dead";
  readonly daysSinceDeath: number | null;
  readonly region: Required<Region>;
  readonly present: readonly FindingId[];
  readonly absent: readonly FindingId[];
  /** Tests that can be weighed. */
  readonly tests: readonly TestInput[];
  /** Where each of them stands among the tests as they were given. */
  readonly testsAt: readonly number[];
  /** Tests that cannot be of what they ask for: for mites where there should be none. */
  readonly setAside: readonly TestInput[];
  /** Tests that found what they look for, weighed or not: for what must not be missed. */
  readonly found: readonly FoundResult[];
  readonly nothingWrong: number;
  readonly thresholds: { readonly leading: number; readonly open: number };
  readonly draws: number;
  readonly seed: number;
}
