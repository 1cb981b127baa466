/** Bodies of the entries about how a programme reasons (root: programme): changes of the evidence, settings. */
import * as z from "zod";
import { day, id, longText, text } from "./parts.ts";

/** A probability that can be reckoned with: never certain. */
const rate = z.number().gt(0).lt(1);
const season = z.enum(["winter", "spring", "summer", "autumn"]);
const bySeason = z.strictObject({ winter: rate, spring: rate, summer: rate, autumn: rate });
/** Colonies that the source looked at. */
const outOf = z.number().int().min(1).max(1_000_000);
const minutes = z.number().min(0).max(10_000);

/** One thing that is added or changed. */
const change = z.discriminatedUnion("what", [
  z.strictObject({
    what: z.literal("source"),
    source: id,
    title: text,
    authors: text.optional(),
    year: z.number().int().min(1500).max(2200).optional(),
    where: text,
    /** What of the work was read. */
    read: text,
  }),
  z.strictObject({
    what: z.literal("condition"),
    condition: id,
    term: text,
    role: z.enum(["cause", "secondary", "syndrome", "normal"]),
    rollUp: z.enum(["varroa_and_viruses", "queen_trouble", "nosema", "brood_disease", "normal"]).nullable(),
    urgency: z.enum(["same-day", "within-a-week", "within-a-month", "next-season"]),
    /** Needed for a condition of the programme's own. */
    prior: bySeason.optional(),
  }),
  z.strictObject({
    what: z.literal("finding"),
    finding: id,
    term: text,
    kind: z.enum(["sign", "circumstance"]),
    /** Findings of one group measure nearly the same thing: a published group, or one of the programme's own. */
    group: id.nullable(),
    question: text,
    lookFor: text,
    minutes,
    /** Needed for a finding of the programme's own. */
    healthy: bySeason.optional(),
  }),
  z.strictObject({
    what: z.literal("frequency"),
    condition: id,
    finding: id,
    rate,
    /** The condition makes the finding rarer than in a well colony. */
    suppresses: z.boolean(),
    outOf: outOf.optional(),
  }),
  z.strictObject({ what: z.literal("prior"), condition: id, season, rate, outOf: outOf.optional() }),
  z.strictObject({ what: z.literal("healthy-rate"), finding: id, season, rate, outOf: outOf.optional() }),
]);

/** The programme reckons with another figure, or with a thing of its own. `about`: [programme]. One slot a thing. */
export const evidenceChanged = z.strictObject({
  change,
  /** On whose word: a source on record, or none; where in it; how it was read. */
  citation: z.strictObject({
    source: id.nullable(),
    at: text,
    read: z.enum(["seen", "memory", "common-practice", "judgement", "computed"]),
  }),
  on: day,
  reason: longText.optional(),
});

/** How the programme reasons; what is left out stays as the program has it. `about`: [programme]. One slot. */
export const reasoningSet = z.strictObject({
  on: day,
  thresholds: z
    .strictObject({
      /** The lower end of a range must exceed it before a cause is named. */
      leading: rate.optional(),
      /** A primary cause at or above it is open. */
      open: rate.optional(),
    })
    .optional(),
  /** Prior probability that nothing is wrong. */
  nothingWrong: rate.optional(),
  /** What the programme's own closed cases may change; left out: nothing. */
  experience: z
    .strictObject({
      frequencies: z.boolean(),
      healthyRates: z.boolean(),
      priors: z.boolean(),
      /** How many times its own counts the start is worth: 1 as its width says. */
      strength: z.number().min(0.1).max(10),
    })
    .optional(),
  reason: longText.optional(),
});
