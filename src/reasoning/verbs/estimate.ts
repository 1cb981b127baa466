/** `estimate`: from counts, or from the bees as read, to honest shares: what was found and what could have been missed. */
import * as z from "zod";
import { answered, blocked, type Estimate, type Problem, problem, type Result } from "../../units/index.ts";
import {
  abundance,
  intensity,
  prevalence,
  prevalenceMethods,
  type SidesCheck,
  sidesCheck,
  type Tally,
  tally,
  washEstimate,
} from "../bench/index.ts";
import { missedCurve } from "../sampling/index.ts";
import { couldMiss, count, estimate as estimateShape, level, positiveShare, prevalences } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const trunk = z.enum(["clear", "mites", "mites-blotches", "mites-dark", "dark-no-mite", "unreadable"]);

const reading = z.strictObject({
  left: trunk.nullable().default(null),
  right: trunk.nullable().default(null),
  lost: z.boolean().default(false),
  mites: count.exactOptional(),
});

const input = z
  .strictObject({
    positive: count.exactOptional().describe("Bees with mites in either trunk."),
    examined: count.exactOptional().describe("Bees that count: positive or clear on both sides."),
    readings: z
      .array(reading)
      .max(20_000)
      .exactOptional()
      .describe("Each bee as read, in place of positive and examined."),
    mites: count.exactOptional().describe("Mites washed from bees, in place of positive and examined."),
    bees: count.exactOptional().describe("Bees in the wash."),
    recovery: positiveShare
      .exactOptional()
      .describe("Share of the mites that the wash brings down. It has no default."),
    level: level.default(0.95).describe("Probability content of the interval."),
    method: z
      .enum(prevalenceMethods)
      .default("clopper-pearson")
      .describe("Interval of a share. The default keeps at least its level whatever the truth."),
    stoppedEarly: z.boolean().default(false).describe("Reading stopped because of what had been found."),
    sensitivity: positiveShare
      .exactOptional()
      .describe(
        "Share of infested bees that the bench finds; tells what the sample could have missed. It has no default.",
      ),
    prevalences: prevalences.describe("Shares of infested bees for which to say what the sample could miss."),
  })
  .refine(asksOneThing, {
    message: "one of: positive and examined; readings; mites and bees",
    path: ["positive"],
  })
  .refine(({ positive, examined }) => positive === undefined || examined === undefined || positive <= examined, {
    message: "no more than the bees examined",
    path: ["positive"],
  });

function asksOneThing(given: Readonly<Record<string, unknown>>): boolean {
  const has = (name: string) => given[name] !== undefined;
  const shares = has("positive") || has("examined");
  const wash = has("mites") || has("bees") || has("recovery");
  const chosen = [shares, has("readings"), wash].filter(Boolean).length;
  return chosen === 1 && has("positive") === has("examined") && has("mites") === has("bees");
}

const output = z.strictObject({
  quantity: z.enum(["share-of-bees-infested", "mites-per-bee"]),
  estimate: estimateShape,
  tally: z
    .strictObject({
      read: z.number(),
      positive: z.number(),
      clear: z.number(),
      partlyRead: z.number(),
      unreadable: z.number(),
      lost: z.number(),
      darkNoMite: z.number(),
      mites: z.number().nullable(),
      contradictions: z.number(),
      bestCase: z.number().nullable(),
      worstCase: z.number().nullable(),
    })
    .nullable()
    .describe("counts of the readings; null when counts were given"),
  abundance: estimateShape
    .nullable()
    .describe("mites per bee read; null unless mites were counted in every positive bee"),
  intensity: estimateShape.nullable().describe("mites per infested bee; null unless mites were counted"),
  sides: z
    .strictObject({
      bothShare: z.number(),
      expectedFromSides: z.number(),
      expectedFromPrevalence: z.number(),
      pValue: z.number(),
      leftRightPValue: z.number(),
    })
    .nullable()
    .describe("left and right trunks against each other; null without readings"),
  couldMiss: z
    .array(couldMiss)
    .nullable()
    .describe("share of such samples in which none would be found, by prevalence; null without a sensitivity"),
});

type Input = z.output<typeof input>;

export const estimate = verb({
  name: "estimate",
  family: "shares",
  summary: "What counts of bees or mites amount to, and how sure that is.",
  assumptions: [
    "Bees were drawn at random from a large colony.",
    "Partly read, unreadable and lost bees are outside the denominator.",
    "The share is as found on the bench: nothing is corrected for mites the bench misses.",
    "A wash's limits are those of one count; colonies and vials vary more.",
  ],
  source:
    "Clopper & Pearson 1934; Blaker 2000; Wilson 1927; Newcombe 1998 (with continuity, mid-P, likelihood ratio); Brown, Cai & DasGupta 2001 (Jeffreys, Agresti–Coull); Garwood 1936 (wash); Bush et al. 1997 (abundance and intensity).",
  example: { positive: 0, examined: 50, sensitivity: 0.9 },
  input,
  output,
  run,
});

function run(given: Input): Result<Answer> {
  const { mites, bees, recovery, level: wanted } = given;
  if (mites !== undefined && bees !== undefined)
    return withEstimate(washEstimate({ mites, bees, level: wanted, ...(recovery === undefined ? {} : { recovery }) }), {
      quantity: "mites-per-bee",
    });
  const counted = given.readings ? tally(given.readings) : null;
  const positive = counted?.positive ?? given.positive ?? 0;
  const examined = counted?.read ?? given.examined ?? 0;
  const { level, method, stoppedEarly, sensitivity } = given;
  const found = prevalence({ positive, examined, level, method, stoppedEarly });
  const missed =
    sensitivity === undefined ? null : missedCurve({ bees: examined, sensitivity, prevalences: given.prevalences });
  const notes = sensitivity === undefined ? [problem("sensitivity-not-given", "noted", "sensitivity")] : [];
  if (!counted) return withEstimate(found, { quantity: "share-of-bees-infested", couldMiss: missed }, notes);
  const extras = fromReadings(counted, level);
  return withEstimate(found, { quantity: "share-of-bees-infested", couldMiss: missed, ...extras.parts }, [
    ...notes,
    ...extras.problems,
  ]);
}

type Answer = Deep<z.output<typeof output>>;
type Parts = Partial<Answer> & Pick<Answer, "quantity">;

function withEstimate(found: Result<Estimate>, parts: Parts, notes: readonly Problem[] = []): Result<Answer> {
  if (!found.ok) return blocked(...found.problems);
  const nothing = { tally: null, abundance: null, intensity: null, sides: null, couldMiss: null };
  return answered({ ...nothing, ...parts, estimate: found.value }, [...found.problems, ...notes]);
}

/** What the readings tell beside the share. A load that cannot be estimated is null, and its reason a note. */
function fromReadings(
  counted: Tally,
  level: number,
): { readonly parts: Partial<Parts>; readonly problems: readonly Problem[] } {
  const {
    mitesPerBee,
    leftInfested: _left,
    rightInfested: _right,
    bothInfested: _both,
    bothSidesRead,
    ...counts
  } = counted;
  const perBee = mitesPerBee ? abundance({ mitesPerBee, level }) : null;
  const perInfested = mitesPerBee ? intensity({ mitesPerBee, level }) : null;
  const sides = bothSidesRead.examined > 0 ? sidesCheck(bothSidesRead) : null;
  const known = <T>(result: Result<T> | null): T | null => (result?.ok ? result.value : null);
  return {
    parts: {
      tally: counts,
      abundance: known(perBee),
      intensity: known(perInfested),
      sides: known<SidesCheck>(sides),
    },
    problems: [perBee, perInfested, sides].flatMap((result) =>
      (result?.problems ?? []).map(
        (each): Problem => (each.severity === "blocked" ? { ...each, severity: "unknown" } : each),
      ),
    ),
  };
}
