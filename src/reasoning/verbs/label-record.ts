/** What a printed label allows, typed from it by the user. The program supplies none. */
import * as z from "zod";
import { day } from "./fields.ts";

const text = z.string().trim().min(1).max(4000);

/** The same fields as the journal's label record, so that one JSON value serves both. */
export const labelRecord = z.strictObject({
  jurisdiction: text,
  activeIngredient: text.describe("Active ingredient, never a trade name."),
  concentration: text.exactOptional(),
  registrationNumber: text.exactOptional(),
  doseGramsPerColony: z.number().positive(),
  applications: z.number().int().min(1).max(20),
  daysBetweenApplications: z.number().int().min(0).max(365),
  minDailyHighCelsius: z.number().min(-20).max(60),
  maxDailyHighCelsius: z.number().min(-20).max(60),
  durationDays: z.number().int().min(1).max(365),
  supersAllowed: z.boolean(),
  daysBeforeSupers: z.number().int().min(0).max(365),
  placement: text,
  protectiveEquipment: text.exactOptional(),
  readOn: day,
  source: text,
  invented: z.boolean().exactOptional(),
});
