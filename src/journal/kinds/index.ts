/** Every entry kind this version writes and reads, with its schema number and root. */
import type * as z from "zod";
import * as apiary from "./apiary.ts";
import * as kase from "./case.ts";
import * as journal from "./journal.ts";
import * as plan from "./plan.ts";
import * as programme from "./programme.ts";
import * as specimen from "./specimen.ts";

/** What the first id of an entry names; "any": whatever the entry it speaks of is about. */
export type Root = "case" | "apiary" | "specimen" | "plan" | "label-record" | "programme" | "any";

/** `about` names the ids an entry of the kind must carry after its root; more may follow. */
const kind = <Body extends z.ZodType>(root: Root, schema: number, body: Body, about: readonly string[] = []) => ({
  root,
  schema,
  body,
  about,
});

/** By kind: root, newest schema, shape of the body, ids that follow the root. */
export const kinds = {
  "apiary-registered": kind("apiary", 1, apiary.apiaryRegistered),
  "colony-registered": kind("apiary", 1, apiary.colonyRegistered, ["colony"]),
  "weather-year-recorded": kind("apiary", 1, apiary.weatherYearRecorded),
  "region-recorded": kind("apiary", 1, apiary.regionRecorded),
  "flow-recorded": kind("apiary", 1, apiary.flowRecorded, ["flow"]),
  "supers-recorded": kind("apiary", 1, apiary.supersRecorded, ["supers"]),
  "treatment-recorded": kind("apiary", 1, apiary.treatmentRecorded, ["treatment"]),
  "case-opened": kind("case", 1, kase.caseOpened, ["apiary"]),
  "case-handed-on": kind("case", 1, kase.caseHandedOn),
  "red-flag-answered": kind("case", 1, kase.redFlagAnswered, ["flag"]),
  "finding-recorded": kind("case", 1, kase.findingRecorded),
  "colony-state-recorded": kind("case", 1, kase.colonyStateRecorded, ["colony"]),
  "step-planned": kind("case", 1, kase.stepPlanned),
  "sampling-planned": kind("case", 1, kase.samplingPlanned, ["samplePlan"]),
  "test-result-recorded": kind("case", 2, kase.testResultRecorded),
  "stop-reported": kind("case", 1, kase.stopReported),
  "stop-lifted": kind("case", 1, kase.stopLifted, ["stop"]),
  "decision-recorded": kind("case", 1, kase.decisionRecorded),
  "outcome-recorded": kind("case", 1, kase.outcomeRecorded, ["colony"]),
  "case-closed": kind("case", 1, kase.caseClosed),
  "file-attached": kind("case", 1, kase.fileAttached),
  "specimen-labelled": kind("specimen", 1, specimen.specimenLabelled, ["case", "colony"]),
  "specimen-received": kind("specimen", 1, specimen.specimenReceived),
  "reading-started": kind("specimen", 1, specimen.readingStarted, ["reading"]),
  "bee-read": kind("specimen", 1, specimen.beeRead, ["reading"]),
  "reading-finished": kind("specimen", 1, specimen.readingFinished, ["reading"]),
  "label-record-loaded": kind("label-record", 1, plan.labelRecordLoaded),
  "plan-made": kind("plan", 1, plan.planMade, ["case"]),
  "plan-step-done": kind("plan", 1, plan.planStepDone),
  "entry-withdrawn": kind("any", 1, journal.entryWithdrawn),
  "content-erased": kind("any", 1, journal.contentErased),
  "heads-noted": kind("programme", 1, journal.headsNoted),
  "kept-apart-settled": kind("programme", 1, journal.keptApartSettled),
  "access-noted": kind("programme", 1, journal.accessNoted),
  "evidence-changed": kind("programme", 1, programme.evidenceChanged),
  "reasoning-set": kind("programme", 1, programme.reasoningSet),
} as const;

/** Name of a kind that this version knows. */
export type Kind = keyof typeof kinds;

/** Whether this version knows the kind. */
export const isKind = (name: string): name is Kind => Object.hasOwn(kinds, name);
/** Body of a kind, as read. */
export type BodyOf<K extends Kind> = z.infer<(typeof kinds)[K]["body"]>;
/** What one trunk shows under the lens. */
export type Trunk = z.infer<typeof specimen.trunk>;
/** Seen, looked for and not seen, or not looked for. */
export type FindingState = BodyOf<"finding-recorded">["state"];
