/** Bodies of the entries about a control plan (root: plan) and a label record (root: label record). */
import * as z from "zod";
import { day, id, longText, text } from "./parts.ts";

/** What the printed label in the user's hand allows. Typed from it, never supplied. `about`: [labelRecord]. */
export const labelRecordLoaded = z
  .strictObject({
    jurisdiction: text,
    activeIngredient: text,
    concentration: text.optional(),
    registrationNumber: text.optional(),
    doseGramsPerColony: z.number().positive(),
    applications: z.number().int().min(1).max(20),
    daysBetweenApplications: z.number().int().min(0).max(365),
    minDailyHighCelsius: z.number().min(-20).max(60),
    maxDailyHighCelsius: z.number().min(-20).max(60),
    durationDays: z.number().int().min(1).max(365),
    supersAllowed: z.boolean(),
    daysBeforeSupers: z.number().int().min(0).max(365),
    placement: text,
    protectiveEquipment: text.optional(),
    prescriptionNeeded: z.boolean().optional(),
    readOn: day,
    /** Last day on which the registration holds, when the label or the authority says so. */
    validUntil: day.optional(),
    source: text,
    invented: z.boolean().optional(),
  })
  .refine((label) => label.minDailyHighCelsius <= label.maxDailyHighCelsius, {
    path: ["minDailyHighCelsius"],
    message: "no higher than the highest daily high",
  });

/** A dated plan for a case. `about`: [plan, case]. */
export const planMade = z.strictObject({
  case: id,
  colonies: z.array(id).min(1),
  control: id,
  labelRecord: id.nullable(),
  madeOn: day,
  steps: z
    .array(
      z.strictObject({
        step: id,
        kind: z.enum(["apply", "check", "remove", "recheck", "feed", "requeen", "sample"]),
        on: day,
        until: day.nullable(),
        gramsPerColony: z.number().positive().nullable(),
        gramsInAll: z.number().positive().nullable(),
        note: longText,
      }),
    )
    .min(1),
  /** 1, 2, 3 …; each version replaces the one before. */
  version: z.number().int().min(1),
  /** Version of the knowledge it was made with. */
  knowledge: text.optional(),
});

/** A step was done, or not, on a day, with what differed. `about`: [plan]. One slot a step. */
export const planStepDone = z.strictObject({
  step: id,
  state: z.enum(["done", "not-done"]),
  on: day,
  /** As it was in fact, where it was measured. Colonies left out: all of the plan. */
  colonies: z.array(id).optional(),
  gramsInAll: z.number().positive().optional(),
  dailyHighCelsius: z.number().min(-60).max(60).optional(),
  deviation: longText.optional(),
});
