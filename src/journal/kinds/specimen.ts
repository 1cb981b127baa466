/** Bodies of the entries about a specimen (root: specimen): label, receipt, readings, each bee. */
import * as z from "zod";
import { bodyOfBees, count, day, id, longText, preservative, text } from "./parts.ts";

/** A vial gets its label. `about`: [specimen, case, colony]. */
export const specimenLabelled = z.strictObject({
  code: text,
  case: id,
  colony: id,
  takenOn: day.nullable(),
  from: bodyOfBees,
  preservative,
  purpose: z.enum(["detect", "estimate", "recheck"]),
  collector: text.optional(),
});

/** The vial arrives. `about`: [specimen]. One slot. */
export const specimenReceived = z.strictObject({
  on: day,
  takenOn: day,
  /** 0 fresh, firm; 1 slightly soft; 2 soft, partly readable; 3 rotten or mouldy. */
  condition: z.number().int().min(0).max(3),
  beesReceived: count,
  aliveWhenTaken: z.boolean(),
  acceptance: z.enum(["accepted", "accepted-with-limits", "rejected"]),
  reason: text.optional(),
});

/** Someone sits down to read. `about`: [specimen, reading]. */
export const readingStarted = z.strictObject({
  reading: id,
  reader: text,
  on: day,
  method: text,
  target: count.min(1),
  /** Read under another number, without knowing colony, place or an earlier reading. */
  blindNumber: text.optional(),
  reagentLot: text.optional(),
});

/** One trunk: clear; mites with a clear, blotched or dark tube; dark without a mite; unreadable. */
export const trunk = z.enum(["clear", "mites", "mites-blotches", "mites-dark", "dark-no-mite", "unreadable"]);

const hasMites = (side: z.infer<typeof trunk> | null): boolean => side?.startsWith("mites") ?? false;

/** One bee. `about`: [specimen, reading]. Undone by an entry that withdraws it. */
export const beeRead = z
  .strictObject({
    reading: id,
    /** 1, 2, 3 … as read. */
    bee: count.min(1),
    /** A lost bee has no trunks; any other has both. */
    lost: z.boolean(),
    left: trunk.nullable(),
    right: trunk.nullable(),
    /** Mites in both trunks together, when they were counted. */
    mites: count.optional(),
    flagged: z.boolean().optional(),
  })
  .refine((bee) => bee.lost === (bee.left === null) && bee.lost === (bee.right === null), {
    path: ["lost"],
    message: "both trunks, or a lost bee",
  })
  .refine((bee) => bee.mites === undefined || bee.mites > 0 === (hasMites(bee.left) || hasMites(bee.right)), {
    path: ["mites"],
    message: "at least one mite where a trunk shows mites, else none",
  });

/** The reading is over and locked. `about`: [specimen, reading]. One slot a reading. */
export const readingFinished = z.strictObject({
  reading: id,
  on: day,
  stop: z.enum(["target-reached", "no-more-bees", "stopped-early"]),
  note: longText.optional(),
});
