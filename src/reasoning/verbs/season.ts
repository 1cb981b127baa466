/** `season`: where a colony and its tracheal mites go from what was counted, with and without action, each day a range. */
import * as z from "zod";
import type { Result } from "../../units/index.ts";
import { colonyForecast, type Forecast, type ForecastQuestion, formicWindow } from "../dynamics/index.ts";
import { seasonAction, seasonInput } from "./season-fields.ts";
import { type Reply, verb } from "./verb.ts";

const { site: siteOf, start: startOf, stockSusceptibility, ...rest } = seasonInput;
const input = z.strictObject({
  ...{ site: siteOf, start: startOf, stockSusceptibility },
  actions: z
    .array(seasonAction)
    .max(20)
    .default([])
    .describe("What is done, each as the published trial did it. No dose and no label: see windows."),
  ...rest,
});

const readOut = z.strictObject({ infested: z.number(), examined: z.number() });
const range = { q05: z.number(), q25: z.number(), q50: z.number(), q75: z.number(), q95: z.number() };

/** What something seen did to the particles. */
const taking = {
  logLikelihood: z.number().nullable().describe("null: left out, no particle could give it"),
  effectiveShare: z.number(),
  surprise: z.number().nullable().describe("null where nothing scatters and it lies off that"),
};

/** Parts of the answer about a season. */
export const seasonRange = {
  range,
  survival: z.strictObject({ ...range, mean: z.number() }),
  countTaken: z.strictObject({
    ...{ date: z.string(), infested: z.number(), examined: z.number() },
    ...{ stop: readOut.exactOptional(), oneSided: readOut.exactOptional() },
    ...taking,
  }),
};

const output = z.strictObject({
  days: z
    .array(
      z.strictObject({
        date: z.string(),
        bees: z.strictObject(range),
        infestedShare: z.strictObject(range),
        survival: seasonRange.survival,
      }),
    )
    .describe(
      "every morning; q05 to q95 hold 90 in 100 of the draws, q25 to q75 half of them; survival is the chance of not being lost to cold by then, 1 until the last day on which a count or a size saw it alive; its ranges are wider than the draws by 0.1 on both sides (judgement: the curve behind it rests on chosen points), its mean and middle are the draws' own and no more exact than the ranges",
    ),
  counts: z
    .array(seasonRange.countTaken)
    .describe(
      "what each count did: ln of its chance in a colony still alive, share of the particles it left worth, deviations off what was expected",
    ),
  sizes: z
    .array(
      z.strictObject({
        ...{ date: z.string(), what: z.string(), frames: z.number(), perFrame: z.number(), scatter: z.number() },
        ...taking,
      }),
    )
    .describe("what each size did, with what was left out filled in"),
  logLikelihood: z
    .number()
    .nullable()
    .describe("of all counts and sizes together; null when one was left out, since no particle could give it"),
});

export const season = verb({
  name: "season",
  family: "case",
  summary: "Where a colony and its tracheal mites go from what was counted, as ranges.",
  assumptions: [
    "A model tuned by hand and not tried in the field: shapes and differences, not promises for one colony.",
    "The ranges hold the model's own doubt of start, contact and noise, all of it assumed; they do not hold the doubt about the model.",
    "Survival counts loss to cold alone, and rests on little.",
    `Formic acid does nothing on days with highs under ${formicWindow.least} °C: judgement made from its window.`,
    "The calendar of laying and of winter bees is that of a cool-temperate place.",
  ],
  source:
    "Own daily model with the sources of its parameters in docs/methods/season.md; particle filter: Gordon, Salmond & Smith 1993.",
  example: {
    site: { monthlyMeanCelsius: [-3.8, -2.9, 1.6, 7.7, 13.9, 18.8, 21.8, 21, 16.4, 10.2, 4.1, -1.2], latitude: 45 },
    start: { date: "2026-08-01", bees: 30000, infestedShare: 0.08 },
    actions: [{ kind: "oil-patty", from: "2026-09-01", to: "2026-11-15" }],
    counts: [{ date: "2026-10-15", infested: 6, examined: 50 }],
    until: "2027-03-01",
    draws: 200,
  },
  input,
  output,
  run: (asked, progress) => colonyForecast(questionOf(asked), progress),
});

const questionOf = ({ countError, ...asked }: z.output<typeof input>): ForecastQuestion => ({
  ...asked,
  ...(countError === undefined ? {} : { error: countError }),
});

/** Asks `season` with the forecast made elsewhere; null when it was stopped. */
export const askSeason = (
  raw: unknown,
  forecast: (question: ForecastQuestion) => Promise<Result<Forecast> | null>,
): Promise<Reply | null> => season.askThrough(raw, (asked) => forecast(questionOf(asked as z.output<typeof input>)));
