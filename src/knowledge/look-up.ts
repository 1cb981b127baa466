/** Small look-ups over the records. */
import { conditions } from "./conditions/index.ts";
import type { Citation, Place, RollUp } from "./fact.ts";
import { findings } from "./findings/index.ts";
import { type ConditionId, conditionIds, type FindingId, findingIds } from "./ids.ts";
import { type TestId, tests } from "./tests/index.ts";

/**
 * Whether the text is the id of a condition.
 * @example
 * isConditionId("tracheal_mites")  // → true
 */
export const isConditionId = (text: string): text is ConditionId => Object.hasOwn(conditions, text);

/**
 * Whether the text is the id of a finding.
 * @example
 * isFindingId("k-wing")  // → false
 */
export const isFindingId = (text: string): text is FindingId => Object.hasOwn(findings, text);

/**
 * Whether the text is the id of a test.
 * @example
 * isTestId("varroa-wash")  // → true
 */
export const isTestId = (text: string): text is TestId => Object.hasOwn(tests, text);

/**
 * Ids of the findings one meets at a place, in the order of the evidence.
 * @example
 * findingsAt("stores")  // → ["stores_exhausted","stores_ample","no_bee_bread","stores_low"]
 */
export const findingsAt = (place: Place): readonly FindingId[] =>
  findingIds.filter((id) => findings[id].place === place);

/**
 * Ids of the conditions of a roll-up group.
 * @example
 * conditionsOf("nosema")  // → ["nosema_ceranae","nosema_apis"]
 */
export const conditionsOf = (group: RollUp): readonly ConditionId[] =>
  conditionIds.filter((id) => conditions[id].rollUp === group);

const isCitation = (value: object): value is Citation => "source" in value && "at" in value && "read" in value;

/** Every citation within a record, however deep. */
export function citationsOf(record: unknown): readonly Citation[] {
  if (typeof record !== "object" || record === null) return [];
  if (isCitation(record)) return [record];
  return Object.values(record).flatMap(citationsOf);
}

/**
 * Whether a test asks for nothing but what strikes whole apiaries: its result speaks for every colony there.
 * @example
 * speaksForApiary("residue-screen")  // → true
 */
export const speaksForApiary = (id: string): boolean =>
  isTestId(id) && tests[id].conditions.every((condition) => conditions[condition].apiaryWide);

/**
 * Conditions that a test can tell apart: its result may say which was found. None where it cannot.
 * @example
 * tellsApart("species-pcr")  // → ["nosema_ceranae","nosema_apis"]
 */
export const tellsApart = (id: TestId): readonly ConditionId[] =>
  tests[id].namesWhatItFound === true ? tests[id].conditions : [];
