/** What a question about a season is asked with: place, start, counts, sizes, actions. */
import * as z from "zod";
import {
  assumedError,
  drawsRange,
  inUse,
  leastOverdispersion,
  mostCounted,
  mostVarroa,
  oneSidedShare,
  pattyReduction,
  sizeBounds,
  startBees,
  stockRange,
  unitingFigures,
  usualSizes,
  varroaFigures,
} from "../dynamics/index.ts";
import { dailyMaxCelsius, day, highAboveMeanCelsius } from "./fields.ts";

const share = z.number().min(0).max(1);
const stock = z.number().min(stockRange.least).max(stockRange.most);

const site = z.strictObject({
  monthlyMeanCelsius: z
    .array(z.number())
    .exactOptional()
    .describe(
      "Twelve means of day and night of an ordinary year, January first. Left out: an invented cool-temperate site.",
    ),
  dailyMaxCelsius: dailyMaxCelsius.describe(
    "Highest temperature of days, in place of the means; warmth is then that of the invented site.",
  ),
  highAboveMeanCelsius: highAboveMeanCelsius.describe(
    `How far a day's high lies above its mean. Left out: ${inUse.highAboveMeanCelsius}, assumed without a source; windows, which must not promise warmth, takes the mean itself then.`,
  ),
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
  bees: z.number().describe(`Adult bees in the colony, ${startBees.least} to ${startBees.most}.`),
  infestedShare: share.describe("Share of bees with living tracheal mites, as best known before the counts."),
  brood: z
    .enum(["usual", "none"])
    .default("usual")
    .describe("usual: brood and ages of that day. none: a winter cluster."),
});

/** Bees of one colony, as they are counted. */
const count = z.number().int().min(0).max(mostCounted);

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

/** What is done to a colony and leaves its queen and its bees where they are. */
const putIn = [
  z.strictObject({ kind: z.literal("menthol"), from: day }),
  z.strictObject({ kind: z.literal("formic"), from: day }),
  z.strictObject({
    kind: z.literal("oil-patty"),
    from: day,
    to: day,
    reduction: share.exactOptional().describe(`Share of contact that it takes away. Left out: ${pattyReduction}.`),
  }),
  z
    .strictObject({ kind: z.literal("brood-break"), from: day, to: day })
    .describe(
      "First and last day on which the queen is kept from laying. No published figure: what follows from the model.",
    ),
] as const;

/** An action of the season, by kind. */
export const seasonAction = z.discriminatedUnion("kind", [
  ...putIn,
  z.strictObject({
    kind: z.literal("requeen"),
    from: day,
    susceptibility: stock.describe("Of the new queen's stock; 1 is the stock the model was tuned to."),
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
          .describe("What was done to it until then."),
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
  stockSusceptibility: stock.default(1).describe("Of the colony's stock; 1 is the stock the model was tuned to."),
  counts: counts.describe(
    `Dissections of this colony while it lived, each of at most ${mostCounted} bees: bees with mites of bees that could be read; unreadable bees are in none. No bees of a colony that is dead.`,
  ),
  sizes: z
    .array(
      z.strictObject({
        date: day,
        what: z.enum(["bees", "brood"]),
        frames: z
          .number()
          .gt(0)
          .max(sizeBounds.frames)
          .describe("Frames covered with bees or full of brood, both sides."),
        perFrame: z
          .number()
          .gt(0)
          .max(sizeBounds.perFrame)
          .exactOptional()
          .describe(
            `Bees on a covered frame, cells in a full one. Left out: ${usualSizes.perFrame.bees} and ${usualSizes.perFrame.brood}, common practice without a source.`,
          ),
        scatter: z
          .number()
          .min(sizeBounds.leastScatter)
          .max(sizeBounds.scatter)
          .exactOptional()
          .describe(
            `Standard deviation of the logarithm of such an estimate. Left out: ${usualSizes.scatter}, assumed without a source.`,
          ),
      }),
    )
    .max(25)
    .exactOptional()
    .describe("How large the colony was seen to be while it lived."),
  countError: z
    .strictObject({
      ...{ sensitivity: share, specificity: share, overdispersion: z.number().min(leastOverdispersion).lt(1) },
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
  varroa: z
    .strictObject({
      mitesPer100: z
        .number()
        .min(0)
        .max(mostVarroa.mitesPer100)
        .describe("Varroa on 100 bees on the first day, as a wash counts them."),
      gain: z
        .number()
        .min(0)
        .max(mostVarroa.gain)
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
  draws: z
    .number()
    .int()
    .default(1000)
    .describe(
      `Particles behind the ranges, ${drawsRange.least} to ${drawsRange.most}, fewer over many days or with colonies united; more make them steadier.`,
    ),
  seed: z.number().int().min(0).default(1),
};
