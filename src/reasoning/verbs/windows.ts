/** `windows`: the days on which a treatment may lie in the hives under a label record, and why not on the others. */
import * as z from "zod";
import { windows as controlWindows } from "../control/index.ts";
import { dailyMaxCelsius, day, highAboveMeanCelsius } from "./fields.ts";
import { labelRecord } from "./label-record.ts";
import { verb } from "./verb.ts";

const site = z
  .strictObject({
    dailyMaxCelsius: dailyMaxCelsius.describe("Highest temperature of each day."),
    monthlyMeanCelsius: z
      .array(z.number())
      .length(12)
      .exactOptional()
      .describe("Means of day and night of an ordinary year, January first."),
    highAboveMeanCelsius: highAboveMeanCelsius.describe(
      "How far the day's high lies above its mean at the station; only with monthly means. It has no default.",
    ),
    latitude: z.number().min(-90).max(90).exactOptional().describe("Degrees, north positive."),
  })
  .refine(
    ({ dailyMaxCelsius, monthlyMeanCelsius }) => (dailyMaxCelsius === undefined) !== (monthlyMeanCelsius === undefined),
    {
      message: "dailyMaxCelsius or monthlyMeanCelsius, one of the two",
    },
  );

const input = z
  .strictObject({
    site,
    labelRecord: labelRecord
      .nullable()
      .default(null)
      .describe("What the printed label in your hand allows. Without one every day is refused."),
    flows: z
      .array(z.strictObject({ from: day, to: day }))
      .max(200)
      .default([])
      .describe("Nectar flows."),
    supers: z
      .array(z.strictObject({ on: day, off: day.nullable() }))
      .max(200)
      .exactOptional()
      .describe("Honey supers on the hives. An empty list says that none are on; left out: nobody recorded it."),
    treatments: z
      .array(z.strictObject({ activeIngredient: z.string().min(1), on: day, off: day.nullable() }))
      .max(200)
      .default([])
      .describe("What was already put into the hives; off is null while it is still in."),
    from: day.describe("First day asked about."),
    to: day.describe("Last day asked about."),
  })
  .refine(({ from, to }) => from <= to, { message: "a day not before from", path: ["to"] });

const slots = z.record(z.string(), z.union([z.string(), z.number()]));

const output = z.strictObject({
  windows: z.array(
    z.strictObject({
      from: z.string(),
      to: z.string(),
      daysInRange: z.number().int(),
      latestStart: z.string().describe("last day on which a start leaves room for the whole treatment"),
      why: z.enum(["every-day-in-range", "means-in-range"]),
      rule: z.string(),
    }),
  ),
  refused: z
    .array(
      z.strictObject({
        date: z.string(),
        until: z.string(),
        days: z.number().int(),
        rule: z.string(),
        reason: z.string(),
        slots,
      }),
    )
    .describe("spans of days with the rule and the reason that speak against each"),
  daysNeeded: z.number().int().nullable().describe("days the whole treatment takes; null without a label record"),
  highs: z
    .enum(["measured", "mean-plus-given", "mean-in-place-of-high"])
    .nullable()
    .describe("where the daily highs come from; null without a label record"),
});

export const windows = verb({
  name: "windows",
  family: "case",
  summary: "Days on which a treatment may lie in the hives, and why not on the others.",
  assumptions: [
    "The label record is what the printed label says; the label is the law, and this program supplies none.",
    "Every day must lie within the label's temperatures, both limits included; one day outside ends the run.",
    "An ordinary year's means are no forecast, and a mean is cooler than the day's high: then days too hot cannot be told.",
  ],
  source: "The label record given; rules of the control step (CO1 to CO9).",
  example: {
    site: { monthlyMeanCelsius: [-2, 0, 5, 11, 16, 20, 23, 22, 18, 12, 5, 0], highAboveMeanCelsius: 6, latitude: 42 },
    labelRecord: {
      jurisdiction: "Invented county",
      activeIngredient: "menthol",
      doseGramsPerColony: 50,
      applications: 1,
      daysBetweenApplications: 0,
      minDailyHighCelsius: 21,
      maxDailyHighCelsius: 29,
      durationDays: 14,
      supersAllowed: false,
      daysBeforeSupers: 28,
      placement: "as the label shows",
      readOn: "2026-03-01",
      source: "invented for this example; not a label",
      invented: true,
    },
    flows: [{ from: "2026-05-10", to: "2026-07-05" }],
    supers: [{ on: "2026-05-10", off: "2026-08-10" }],
    from: "2026-04-01",
    to: "2026-10-31",
  },
  input,
  output,
  run: controlWindows,
});
