/** `season`: where a colony and its tracheal mites go from what was counted, with and without action, each day a range. */
import * as z from "zod";
import type { Result } from "../../units/index.ts";
import {
  assumedError,
  colonyForecast,
  type Forecast,
  type ForecastQuestion,
  oneSidedShare,
  pattyReduction,
  unitingFigures,
  usualSizes,
  varroaFigures,
} from "../dynamics/index.ts";
import { count, day } from "./fields.ts";
import { type Reply, verb } from "./verb.ts";

const share = z.number().min(0).max(1);

const site = z.strictObject({
  monthlyMeanCelsius: z
    .array(z.number())
    .length(12)
    .exactOptional()
    .describe("Means of day and night of an ordinary year, January first. Left out: an invented cool-temperate site."),
  highAboveMeanCelsius: z.number().min(0).max(30).exactOptional().describe("How far a day's high lies above its mean."),
  latitude: z
    .number()
    .min(-90)
    .max(90)
    .exactOptional()
    .describe("Degrees, north positive; the south has the year of the north half a year later."),
  flows: z
    .array(
      z.strictObject({
        day: z.number().min(1).max(365).describe("Day of the year of its height."),
        spreadDays: z.number().gt(0).max(365).describe("Standard deviation, days."),
        strength: share.describe("Height."),
      }),
    )
    .max(20)
    .exactOptional()
    .describe("Nectar flows as bells over the year. Left out: those of the invented site."),
});

/** How a colony stood on a day. */
const start = z.strictObject({
  date: day,
  bees: z.number().describe("Adult bees in the colony."),
  infestedShare: share.describe("Share of bees with living tracheal mites, as best known before the counts."),
  brood: z
    .enum(["usual", "none"])
    .default("usual")
    .describe("usual: brood and ages of that day. none: a winter cluster."),
});

/** Dissections, as counts. */
const counts = z
  .array(
    z.strictObject({
      ...{ date: day, infested: count, examined: count },
      stop: z
        .strictObject({ infested: count, examined: count })
        .exactOptional()
        .describe("Reading ended at so many infested or so many read. Left out: the number to read was fixed."),
      oneSided: z
        .strictObject({ infested: count, examined: count })
        .exactOptional()
        .describe("Further bees of which one trachea alone could be read."),
    }),
  )
  .max(100)
  .default([]);

/** What is put into a colony. */
const putIn = [
  z.strictObject({ kind: z.literal("menthol"), from: day }),
  z.strictObject({ kind: z.literal("formic"), from: day }),
  z.strictObject({
    kind: z.literal("oil-patty"),
    from: day,
    to: day,
    reduction: share.exactOptional().describe(`Share of contact that it takes away. Left out: ${pattyReduction}.`),
  }),
] as const;

/** An action of the season, by kind. */
export const seasonAction = z.discriminatedUnion("kind", [
  ...putIn,
  z.strictObject({
    kind: z.literal("requeen"),
    from: day,
    susceptibility: z
      .number()
      .min(0.1)
      .max(3)
      .describe("Of the new queen's stock; 1 is the stock the model was tuned to."),
  }),
  z.strictObject({
    kind: z.literal("unite"),
    from: day,
    donor: z
      .strictObject({
        start,
        counts: counts.exactOptional().describe("Dissections of it until then."),
        actions: z
          .array(z.discriminatedUnion("kind", putIn))
          .max(20)
          .exactOptional()
          .describe("What was put into it until then."),
      })
      .describe("The other colony as it stood on a day before; its bees, their mites and its brood are added."),
    lost: share
      .exactOptional()
      .describe(
        `Share of the other colony's adult bees lost to fighting and to flying home. Left out: ${unitingFigures.lost}, judgement without a source.`,
      ),
  }),
]);

/** Fields that every question about a season has. */
export const seasonInput = {
  site: site.default({}),
  start,
  stockSusceptibility: z
    .number()
    .min(0.1)
    .max(3)
    .default(1)
    .describe("Of the colony's stock; 1 is the stock the model was tuned to."),
  counts: counts.describe(
    "Dissections of this colony: bees with mites of bees that could be read; unreadable bees are in none.",
  ),
  sizes: z
    .array(
      z.strictObject({
        date: day,
        what: z.enum(["bees", "brood"]),
        frames: z.number().gt(0).max(200).describe("Frames covered with bees or full of brood, both sides."),
        perFrame: z
          .number()
          .gt(0)
          .max(20_000)
          .exactOptional()
          .describe(
            `Bees on a covered frame, cells in a full one. Left out: ${usualSizes.perFrame.bees} and ${usualSizes.perFrame.brood}, common practice without a source.`,
          ),
        scatter: z
          .number()
          .gt(0)
          .max(2)
          .exactOptional()
          .describe(
            `Standard deviation of the logarithm of such an estimate. Left out: ${usualSizes.scatter}, assumed without a source.`,
          ),
      }),
    )
    .max(25)
    .exactOptional()
    .describe("How large the colony was seen to be."),
  countError: z
    .strictObject({
      ...{ sensitivity: share, specificity: share, overdispersion: z.number().gt(0).lt(1) },
      oneSided: share
        .exactOptional()
        .describe(
          `Share of what both tracheae show that one shows. Left out: ${oneSidedShare}, from bees with mites in both.`,
        ),
    })
    .exactOptional()
    .describe(
      `How a count scatters. Left out: ${assumedError.sensitivity}, ${assumedError.specificity} and ${assumedError.overdispersion}, assumed without a source.`,
    ),
  broodBreaks: z
    .array(z.strictObject({ from: day, to: day }))
    .max(20)
    .exactOptional()
    .describe(
      "First and last day on which the queen was kept from laying. No published figure: it follows from the model.",
    ),
  varroa: z
    .strictObject({
      mitesPer100: z.number().min(0).max(200).describe("Varroa on 100 bees on the first day, as a wash counts them."),
      gain: z
        .number()
        .min(0)
        .max(5)
        .exactOptional()
        .describe(`Mites that leave a cell for each that entered. Left out: ${varroaFigures.gain}.`),
    })
    .exactOptional()
    .describe("Makes bees parasitised in their cells more susceptible; varroa's own harm is left out."),
  isStopped: z
    .boolean()
    .exactOptional()
    .describe("Something was seen that is to be reported: nothing may be united. Left out: no."),
  until: day.describe("Last morning asked about."),
  draws: z.number().int().default(1000).describe("Particles behind the ranges."),
  seed: z.number().int().min(0).default(1),
};

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

/** Parts of the answer about a season. */
export const seasonRange = {
  range,
  survival: z.strictObject({ ...range, mean: z.number() }),
  countTaken: z.strictObject({
    ...{ date: z.string(), infested: z.number(), examined: z.number() },
    ...{ stop: readOut.exactOptional(), oneSided: readOut.exactOptional() },
    ...{ logLikelihood: z.number(), effectiveShare: z.number(), surprise: z.number() },
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
      "every morning; q05 to q95 hold 90 in 100 of the draws, q25 to q75 half of them; survival is the chance of not being lost to cold by then",
    ),
  counts: z
    .array(seasonRange.countTaken)
    .describe(
      "what each count did: ln of its chance, share of the particles it left worth, deviations off what was expected",
    ),
  sizes: z
    .array(
      z.strictObject({
        ...{ date: z.string(), what: z.string(), frames: z.number(), perFrame: z.number(), scatter: z.number() },
        ...{ logLikelihood: z.number(), effectiveShare: z.number(), surprise: z.number() },
      }),
    )
    .describe("what each size did, with what was left out filled in"),
  logLikelihood: z.number().describe("of all counts and sizes together"),
});

export const season = verb({
  name: "season",
  family: "case",
  summary: "Where a colony and its tracheal mites go from what was counted, as ranges.",
  assumptions: [
    "A model tuned by hand and not tried in the field: shapes and differences, not promises for one colony.",
    "The ranges hold the model's own doubt of start, contact and noise, all of it assumed; they do not hold the doubt about the model.",
    "Survival counts loss to cold alone, and rests on little.",
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
