/** Bodies of the entries about a case (root: case), in the order of its six questions. */
import * as z from "zod";
import { largestFile, mediaTypes } from "../attached-file.ts";
import { bodyOfBees, count, day, findingState, id, longText, preservative, share, text } from "./parts.ts";

/** A worried call becomes a case. `about`: [case, apiary]. */
export const caseOpened = z.strictObject({
  code: text,
  openedOn: day,
  question: text,
  /** In the caller's own words. */
  story: longText.optional(),
  alreadyDone: longText.optional(),
  /** Who called. A name is personal: it stands in the body alone, so it can be erased. */
  caller: text.optional(),
  /** When the trouble was first noticed. */
  beganOn: day.optional(),
  /** Colonies at the apiary as told, whether or not each has a record. */
  coloniesInApiary: count.optional(),
  /** Whether the caller agreed that the case may enter counts for a region, without names or exact places. */
  mayBeCounted: z.boolean().optional(),
  colonies: z.array(id),
  /** Who it waits on and until when. */
  waitsOn: text.optional(),
  due: day.optional(),
});

/** A red flag asked of the caller. `about`: [case, flag]. One slot a flag. */
export const redFlagAnswered = z.strictObject({ flag: id, state: findingState, on: day });

/** One finding of one colony, or of the whole apiary when colony is null. `about`: [case, colony?]. One slot a colony and finding. */
export const findingRecorded = z.strictObject({
  colony: id.nullable(),
  finding: id,
  state: findingState,
  on: day,
  /** How it is known: told by the caller, seen by the recorder, seen on a photo. */
  knownFrom: z.enum(["told", "seen", "photo"]).optional(),
  note: longText.optional(),
});

/** Alive, dying or dead. `about`: [case, colony]. One slot a colony. */
export const colonyStateRecorded = z.strictObject({
  colony: id,
  state: z.enum(["alive", "dying", "dead"]),
  on: day,
  diedOn: day.optional(),
});

/** A look added to the yard list or a test added to the kit. `about`: [case]. One slot a step. */
export const stepPlanned = z.strictObject({
  step: id,
  kind: z.enum(["look", "test"]),
  colonies: z.array(id),
  state: z.enum(["planned", "done", "dropped"]),
});

/** Which bees, from where, how many, why. `about`: [case, samplePlan]. */
export const samplingPlanned = z.strictObject({
  purpose: z.enum(["detect", "estimate", "recheck"]),
  colonies: z.array(id).min(1),
  beesPerColony: count.min(1),
  from: bodyOfBees,
  preservative,
  laboratory: text.optional(),
  designPrevalence: z.number().gt(0).lte(1),
  confidence: z.number().gt(0).lt(1),
  sensitivity: z.number().gt(0).lte(1),
  on: day,
});

/** A count or result that was not read bee by bee here. `about`: [case, colony?, specimen?]. */
const testResult = z.strictObject({
  colony: id.nullable(),
  specimen: id.optional(),
  test: id,
  /** When it was read or reported. */
  on: day,
  laboratory: text.optional(),
  /** Counts where the test counts: positive of examined bees, mites of bees, spores of bees. */
  positive: count.optional(),
  examined: count.optional(),
  mites: count.optional(),
  bees: count.optional(),
  sporesMillionsPerBee: z.number().min(0).max(1000).optional(),
  result: z.enum(["found", "none-found", "unclear"]).optional(),
  /** Since schema 2, to `kept`: what was found where the test can find several things. */
  which: z.array(id).min(1).optional(),
  /** The product of a PCR for tracheal mites was sequenced. */
  sequenced: z.boolean().optional(),
  /** The residue on the bees reaches a dose that harms them. */
  harmfulDose: z.boolean().optional(),
  daysUntilFrozen: z.number().min(0).optional(),
  kept: preservative.optional(),
  unreadable: count.optional(),
  takenFrom: bodyOfBees.optional(),
  aliveWhenTaken: z.boolean().optional(),
  daysSinceControl: count.optional(),
  note: longText.optional(),
});

/** See `testResult` for the members: a count that fits together, or a word. */
export const testResultRecorded = testResult
  .refine((test) => (test.positive === undefined) === (test.examined === undefined), {
    path: ["examined"],
    message: "positive bees and bees examined, both or neither",
  })
  .refine((test) => (test.positive ?? 0) <= (test.examined ?? 0), {
    path: ["positive"],
    message: "no more positive bees than bees examined",
  })
  .refine((test) => test.mites === undefined || (test.bees ?? 0) > 0, {
    path: ["bees"],
    message: "the bees that the mites were counted on",
  })
  .refine(
    (test) => [test.examined, test.mites, test.sporesMillionsPerBee, test.result].some((each) => each !== undefined),
    { path: ["result"], message: "a count, or found, none found, unclear" },
  );

/** Who was told of what stops the work. `about`: [case]. Two reports are two reports, not a conflict. */
export const stopReported = z.strictObject({
  toldWhom: text,
  on: day,
  /** When their answer is due. */
  due: day,
  reference: text.optional(),
  /** Entries that the stops followed from: findings, red flags, results. */
  answers: z.array(id).min(1),
});

/**
 * A stop that was lifted by a person whose role allows it, on a result of a laboratory. `about`: [case, stop]. One slot
 * a stop. It lifts the answers it names and no later one.
 */
export const stopLifted = z.strictObject({
  /** Key of the notice or of the red flag. */
  stop: id,
  role: z.enum(["competent-authority", "reference-laboratory", "apiary-inspector"]),
  liftedBy: text,
  /** Under which the laboratory's result is filed. */
  laboratoryReference: text,
  on: day,
  /** Entries that the stop followed from: findings, red flags, results. */
  answers: z.array(id).min(1),
  note: longText.optional(),
});

/** Act now, test first or wait, and why. `about`: [case]. One slot: a later decision replaces the earlier one. */
export const decisionRecorded = z.strictObject({
  choice: z.enum(["act-now", "test-first", "wait"]),
  /** What is to be done: id of a control. */
  control: id.optional(),
  colonies: z.array(id),
  on: day,
  reason: longText,
  reviewOn: day,
  /** What it was reckoned from: money in one unit. */
  reckonedFrom: z
    .strictObject({
      colonyValue: z.number().min(0),
      actCost: z.number().min(0),
      testCost: z.number().min(0),
      /** Share of the colony's value lost in spite of the act. */
      residualShare: share.optional(),
      currency: text,
    })
    .optional(),
  /** Version of the knowledge it was reckoned with. */
  knowledge: text.optional(),
});

/** What became of a colony. `about`: [case, colony]. One slot a colony and day. */
export const outcomeRecorded = z.strictObject({
  colony: id,
  on: day,
  survived: z.boolean(),
  note: longText.optional(),
});

/** The case is answered, or given up; causes only when confirmed. `about`: [case]. One slot. */
export const caseClosed = z.strictObject({
  on: day,
  outcome: z.enum(["answered", "without-answer"]),
  confirmedCauses: z.array(id),
  confirmedBy: text.optional(),
  learnt: longText.optional(),
});

/** Whom the case waits on, and until when. `about`: [case]. One slot. */
export const caseHandedOn = z.strictObject({ waitsOn: text, due: day, note: longText.optional() });

/**
 * A photo or a voice note of what was seen. The file is kept beside the journal, under its SHA-256. `about`:
 * [case, colony?]. Two files are two files, not a conflict.
 */
export const fileAttached = z.strictObject({
  sha256: z.string().regex(/^[0-9a-f]{64}$/, { message: "64 lower-case hex digits" }),
  mediaType: z.enum(mediaTypes),
  bytes: z.number().int().min(1).max(largestFile),
  /** Null: of the whole apiary. */
  colony: id.nullable(),
  finding: id.optional(),
  caption: text.optional(),
  takenOn: day,
  /** How long a voice note is. */
  seconds: z.number().min(0).max(3600).optional(),
});
