/** Cited facts: conditions, findings, tests, controls, and who says so. */
export { benchFacts, harm, lifeHistory, twoSides } from "./bench-facts.ts";
export { broodClock } from "./brood-clock.ts";
export { type CautionFact, type CautionId, type CautionTrigger, cautions, cautionsFor } from "./cautions.ts";
export { type ChangedEvidence, changedEvidence, mostOwnConditions, mostOwnFindings } from "./changed-evidence.ts";
export { type Coexistence, coexistence } from "./coexistence.ts";
export { conditions } from "./conditions/index.ts";
export {
  type ControlFact,
  type ControlId,
  type ControlStatement,
  type ControlTopic,
  controlIds,
  controls,
} from "./controls/index.ts";
export {
  type ChangeNote,
  type ConditionInUse,
  type Evidence,
  evidenceSeasons,
  type FindingInUse,
  type FrequencyInUse,
  type OwnCitation,
  publishedEvidence,
  type Seen,
  type SourceInUse,
  type ValueInUse,
} from "./evidence.ts";
export { type EvidenceChange, isOwnId, type NotedChange, placeOfChange } from "./evidence-change.ts";
export { allRecords, bibliography, knowledgeJson } from "./export.ts";
export type * from "./fact.ts";
export {
  type DefaultMark,
  type DoseReport,
  defaultOf,
  type Figure,
  mayBeDefault,
  middleOf,
  type Span,
} from "./figure.ts";
export { findings } from "./findings/index.ts";
export { gradeProbability } from "./grade-probability.ts";
export { healthyRates } from "./healthy-rates.ts";
export { type ConditionId, conditionIds, type FindingId, findingIds } from "./ids.ts";
export { type LaboratoryTrap, laboratoryTraps } from "./laboratory-traps.ts";
export { type LevelFact, levels } from "./levels.ts";
export {
  citationsOf,
  conditionsOf,
  findingsAt,
  isConditionId,
  isFindingId,
  isTestId,
  speaksForApiary,
  tellsApart,
} from "./look-up.ts";
export {
  type MustNotMiss,
  type MustNotMissKey,
  mustNotMiss,
  type RedFlag,
  type RedFlagKey,
  redFlags,
} from "./must-not-miss.ts";
export {
  firedBy,
  freeRegion,
  isFindOf,
  isMilder,
  miteByEye,
  needsLiveBees,
  noTrouble,
  type OnRecord,
  type RegionalMite,
  type ResultOnRecord,
  regionalMites,
  showsMite,
} from "./notice-fired.ts";
export { type Occurrence, occurrence } from "./occurrence.ts";
export { hasEffect, lostPairs } from "./pair-effect.ts";
export { nothingWrongShare, priors, regionAdjustments } from "./priors.ts";
export {
  type BeesFor,
  beesFor,
  type DestinationRule,
  destinationRules,
  type SamplingFact,
  samplingFacts,
} from "./sampling-facts.ts";
export { type SourceKey, sources } from "./sources.ts";
export {
  type CostClass,
  type Keeping,
  type Places,
  type ResultKind,
  type TakenFrom,
  type TestFact,
  type TestId,
  testIds,
  tests,
} from "./tests/index.ts";
export { type Band, type ThresholdFact, type ThresholdId, thresholds } from "./thresholds.ts";
export { type Antoine, vapourFacts } from "./vapour-facts.ts";
export { knowledgeVersion } from "./version.ts";
