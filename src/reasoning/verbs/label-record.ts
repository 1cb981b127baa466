/** What a printed label allows, typed from it by the user. The program supplies none. */
import * as z from "zod";
import { day } from "./fields.ts";

const text = z.string().trim().min(1).max(4000);

/** The same fields as the journal's label record, so that one JSON value serves both. */
export const labelRecord = z
  .strictObject({
    jurisdiction: text.describe("Where the label is law."),
    activeIngredient: text.describe("Active ingredient, never a trade name."),
    concentration: text.exactOptional(),
    registrationNumber: text.exactOptional(),
    doseGramsPerColony: z.number().positive().describe("Grams for one colony and one application."),
    applications: z.number().int().min(1).max(20),
    daysBetweenApplications: z
      .number()
      .int()
      .min(0)
      .max(365)
      .describe("From one application to the next; 0 when there is one."),
    minDailyHighCelsius: z.number().min(-20).max(60).describe("Lowest daily high the label allows."),
    maxDailyHighCelsius: z.number().min(-20).max(60).describe("Highest daily high the label allows."),
    durationDays: z.number().int().min(1).max(365).describe("Days one application lies in the hive."),
    supersAllowed: z.boolean().describe("Whether honey supers may be on."),
    daysBeforeSupers: z
      .number()
      .int()
      .min(0)
      .max(365)
      .describe("Waiting days from the end of treatment until supers go on."),
    placement: text.describe("Where in the hive, as the label shows."),
    protectiveEquipment: text.exactOptional(),
    prescriptionNeeded: z.boolean().exactOptional(),
    readOn: day.describe("Day on which the label was read."),
    validUntil: day.exactOptional().describe("Last day on which the registration holds."),
    source: text.describe("The label or page it was typed from."),
    invented: z.boolean().exactOptional().describe("True for a record made up for a demonstration."),
  })
  .refine((label) => label.minDailyHighCelsius <= label.maxDailyHighCelsius, {
    path: ["minDailyHighCelsius"],
    message: "no higher than the highest daily high",
  });
