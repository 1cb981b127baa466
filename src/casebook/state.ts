/** What the entries amount to: the state of each root, and the casebook that is their union. */
import type { BodyOf, EntryId, FindingState, UnreadReason } from "../journal/index.ts";

/** One value someone recorded, with who, when and where. */
export interface Candidate<T> {
  readonly value: T;
  readonly entry: EntryId;
  readonly at: string;
  readonly recordedAt: string;
  readonly author: string;
  readonly device: string;
}

/** A slot's unreplaced values, oldest first, never empty. More than one is a conflict for a person to settle. */
export interface Kept<T> {
  readonly candidates: readonly [Candidate<T>, ...Candidate<T>[]];
}

/** The value of a slot without conflict; null while people disagree, or when nothing was kept. */
export function settled<T>(kept: Kept<T> | undefined | null): T | null {
  return kept && kept.candidates.length === 1 ? kept.candidates[0].value : null;
}

/** Whether two unreplaced entries stand in one slot. */
export const isInConflict = (kept: Kept<unknown> | undefined | null): boolean => (kept?.candidates.length ?? 0) > 1;

/** A colony on record at an apiary. */
export interface Colony {
  readonly id: string;
  readonly record: Kept<BodyOf<"colony-registered">>;
}

/** An apiary: place, colonies, weather, forage, supers, what was put into hives. */
export interface ApiaryState {
  readonly root: "apiary";
  readonly id: string;
  readonly record: Kept<BodyOf<"apiary-registered">> | null;
  /** By colony id, in order of code. */
  readonly colonies: Readonly<Record<string, Colony>>;
  readonly weather: Kept<BodyOf<"weather-year-recorded">> | null;
  readonly region: Kept<BodyOf<"region-recorded">> | null;
  readonly flows: Readonly<Record<string, Kept<BodyOf<"flow-recorded">>>>;
  readonly supers: Readonly<Record<string, Kept<BodyOf<"supers-recorded">>>>;
  readonly treatments: Readonly<Record<string, Kept<BodyOf<"treatment-recorded">>>>;
}

/** Key under which findings of the whole apiary are kept. */
export const wholeApiary = "whole-apiary";

/** A case: what was asked, seen, planned, found, decided, and what came of it. */
export interface CaseState {
  readonly root: "case";
  readonly id: string;
  readonly apiary: string | null;
  readonly record: Kept<BodyOf<"case-opened">> | null;
  readonly handedOn: Kept<BodyOf<"case-handed-on">> | null;
  readonly redFlags: Readonly<Record<string, Kept<BodyOf<"red-flag-answered">>>>;
  /** By colony id or `whole-apiary`, then by finding id. */
  readonly findings: Readonly<Record<string, Readonly<Record<string, Kept<FindingState>>>>>;
  readonly colonyStates: Readonly<Record<string, Kept<BodyOf<"colony-state-recorded">>>>;
  readonly steps: Readonly<Record<string, Kept<BodyOf<"step-planned">>>>;
  /** By sample plan id. */
  readonly samplePlans: Readonly<Record<string, Kept<BodyOf<"sampling-planned">>>>;
  /** By entry id: two results of one test are two results, not a conflict. */
  readonly tests: Readonly<Record<string, Candidate<BodyOf<"test-result-recorded">>>>;
  /** By entry id. */
  readonly stopsReported: Readonly<Record<string, Candidate<BodyOf<"stop-reported">>>>;
  /** By key of the notice or red flag. */
  readonly stopsLifted: Readonly<Record<string, Kept<BodyOf<"stop-lifted">>>>;
  readonly decision: Kept<BodyOf<"decision-recorded">> | null;
  /** By colony id, then by day. */
  readonly outcomes: Readonly<Record<string, Readonly<Record<string, Kept<BodyOf<"outcome-recorded">>>>>>;
  readonly closed: Kept<BodyOf<"case-closed">> | null;
  /** Photos and voice notes, by entry id. */
  readonly files: Readonly<Record<string, Candidate<BodyOf<"file-attached">>>>;
}

/** One sitting at the bench over one specimen. */
export interface ReadingState {
  readonly id: string;
  readonly started: Kept<BodyOf<"reading-started">> | null;
  /** By bee number; two unreplaced readings of one bee are a conflict. */
  readonly bees: Readonly<Record<number, Kept<BodyOf<"bee-read">>>>;
  readonly finished: Kept<BodyOf<"reading-finished">> | null;
}

/** A vial: label, receipt, readings. */
export interface SpecimenState {
  readonly root: "specimen";
  readonly id: string;
  readonly case: string | null;
  readonly colony: string | null;
  readonly label: Kept<BodyOf<"specimen-labelled">> | null;
  readonly received: Kept<BodyOf<"specimen-received">> | null;
  readonly readings: Readonly<Record<string, ReadingState>>;
}

/** A control plan and which of its steps were done. */
export interface PlanState {
  readonly root: "plan";
  readonly id: string;
  readonly case: string | null;
  readonly record: Kept<BodyOf<"plan-made">> | null;
  readonly done: Readonly<Record<string, Kept<BodyOf<"plan-step-done">>>>;
}

/** What a printed label allows. */
export interface LabelRecordState {
  readonly root: "label-record";
  readonly id: string;
  readonly record: Kept<BodyOf<"label-record-loaded">> | null;
}

/** How a programme reasons: what it changed in the evidence, and its settings. */
export interface ProgrammeState {
  readonly root: "programme";
  readonly id: string;
  /** By the place in the evidence that each is about, such as `prior queenless spring`. */
  readonly changes: Readonly<Record<string, Kept<BodyOf<"evidence-changed">>>>;
  readonly settings: Kept<BodyOf<"reasoning-set">> | null;
  /** What was decided on entries that the service keeps apart, by the hash of their headers. */
  readonly settlements: Readonly<Record<string, Kept<BodyOf<"kept-apart-settled">>>>;
}

/** The state of any root. */
export type RootState = ApiaryState | CaseState | SpecimenState | PlanState | LabelRecordState | ProgrammeState;

/** Everything the entries amount to, by id, ids in order. */
export interface Casebook {
  readonly apiaries: Readonly<Record<string, ApiaryState>>;
  readonly cases: Readonly<Record<string, CaseState>>;
  readonly specimens: Readonly<Record<string, SpecimenState>>;
  readonly plans: Readonly<Record<string, PlanState>>;
  readonly labelRecords: Readonly<Record<string, LabelRecordState>>;
  readonly programmes: Readonly<Record<string, ProgrammeState>>;
  /** Entries kept word for word but not read: unknown kind, newer schema, body that does not fit, withheld or erased. */
  readonly unread: readonly UnreadEntry[];
}

/** An entry that is kept and not read, and why. */
export interface UnreadEntry {
  readonly entry: EntryId;
  readonly root: string;
  readonly kind: string;
  readonly why: UnreadReason;
}
