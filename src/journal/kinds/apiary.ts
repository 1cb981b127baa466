/** Bodies of the entries about an apiary (root: apiary): the place, its colonies, weather, forage and supers. */
import * as z from "zod";
import { day, id, latitude, longitude, monthlyMeans, text } from "./parts.ts";

/** A place where colonies stand. `about`: [apiary]. */
export const apiaryRegistered = z.strictObject({
  code: text,
  name: text,
  place: text,
  latitude: latitude.optional(),
  longitude: longitude.optional(),
  coordinateUncertaintyMetres: z.number().positive().optional(),
  elevationMetres: z.number().optional(),
  registration: text.optional(),
});

/** A colony of bees at the apiary. `about`: [apiary, colony]. */
export const colonyRegistered = z.strictObject({
  code: text,
  installedOn: day.optional(),
  hiveType: text.optional(),
  /** Race or strain of the bees, as the keeper names it. */
  stock: text.optional(),
});

/** Weather of an ordinary year, or daily highs of a stated span. `about`: [apiary]. Slot: whole. */
export const weatherYearRecorded = z
  .strictObject({
    kind: z.enum(["monthly-means", "daily-highs"]),
    /** Twelve numbers, January first, mean of day and night, Celsius. */
    monthlyMeanCelsius: monthlyMeans.optional(),
    dailyMaxCelsius: z
      .array(z.strictObject({ date: day, value: z.number().min(-60).max(60) }))
      .min(1)
      .optional(),
    station: text.optional(),
    source: text,
  })
  .refine((weather) => (weather.kind === "monthly-means") === (weather.monthlyMeanCelsius !== undefined), {
    path: ["monthlyMeanCelsius"],
    message: "twelve monthly means, and only with the kind monthly-means",
  })
  .refine((weather) => (weather.kind === "daily-highs") === (weather.dailyMaxCelsius !== undefined), {
    path: ["dailyMaxCelsius"],
    message: "at least one daily high, and only with the kind daily-highs",
  });

/** What lives around the apiary, as the authority or the reader knows it. `about`: [apiary]. Slot: whole. */
export const regionRecorded = z.strictObject({
  varroa: z.enum(["present", "absent"]),
  acarapisWoodi: z.enum(["unknown", "found", "absent"]),
  smallHiveBeetle: z.enum(["absent", "present", "endemic"]),
  tropilaelaps: z.enum(["absent", "present", "endemic"]),
  vespa: z.enum(["absent", "established"]),
  source: text,
});

/** A nectar flow in an ordinary year. `about`: [apiary, flow]. */
export const flowRecorded = z.strictObject({ name: text, from: day, to: day });

/** Honey supers put on, and taken off when known. `about`: [apiary, supers]. Colonies empty: all. */
export const supersRecorded = z.strictObject({ on: day, off: day.nullable(), colonies: z.array(id) });

/** Something already put into hives. `about`: [apiary, treatment]. Colonies empty: all. */
export const treatmentRecorded = z.strictObject({
  activeIngredient: text,
  on: day,
  off: day.nullable(),
  /** Into one colony. */
  grams: z.number().positive().optional(),
  /** Into all these colonies together. */
  gramsInAll: z.number().positive().optional(),
  colonies: z.array(id),
});
