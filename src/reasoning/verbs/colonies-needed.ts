/** `colonies-needed`: how many colonies, or apiaries, to sample so that the share over all is known within a margin. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { coloniesForPrecision } from "../sampling/index.ts";
import { count, level, openShare, share } from "./fields.ts";
import { verb } from "./verb.ts";

const bees = count.min(1).max(10_000);

const input = z.strictObject({
  expectedPrevalence: openShare.describe("Share of infested bees that is expected. Half asks for the most."),
  margin: z.number().min(0.0001).lt(1).describe("Half the length of the interval wanted, as a share."),
  intraclass: share.describe("How alike bees of one colony are: intraclass correlation, 0 to 1. It has no default."),
  beesPerColony: bees.describe("Bees read of each colony."),
  level: level.default(0.95).describe("Probability content of the interval wanted."),
  otherBees: z
    .array(bees)
    .max(200)
    .default([1, 5, 10, 20, 50, 100])
    .describe("Other numbers of bees from each colony for which to tell the colonies."),
});

const output = z.strictObject({
  colonies: z.number().int().describe("colonies to sample"),
  bees: z.number().int().describe("bees of all those colonies"),
  designEffect: z.number().describe("1 + (bees from each − 1)·ICC"),
  simpleBees: z.number().describe("bees of a simple sample; not rounded"),
  clusteredBees: z.number().describe("the same times the design effect; not rounded"),
  others: z
    .array(z.strictObject({ beesPerColony: z.number().int(), colonies: z.number().int(), bees: z.number().int() }))
    .describe("what other numbers of bees from each colony would ask for"),
  level: z.number(),
  method: z.string(),
  rule: z.string(),
});

export const coloniesNeeded = verb({
  name: "colonies-needed",
  family: "clusters",
  summary: "How many colonies or apiaries to sample, bees of one being alike.",
  assumptions: [
    "There are many colonies to draw from, and as many bees are read of each.",
    "Normal approximation: for shares near 0 or 1 and few bees the margin is not kept.",
    "The likeness of bees within a colony is known from elsewhere, such as an earlier round.",
  ],
  source:
    "Bennett, Woods, Liyanage & Smith 1991, World Health Statistics Quarterly 44:98–106, p. 102 (as quoted in a software manual).",
  example: { expectedPrevalence: 0.2, margin: 0.05, intraclass: 0.02, beesPerColony: 20 },
  input,
  output,
  run: ({ otherBees, ...design }) => {
    const { colonies, designEffect, simpleBees, bees: clusteredBees } = coloniesForPrecision(design);
    return answered({
      colonies,
      bees: colonies * design.beesPerColony,
      designEffect,
      simpleBees,
      clusteredBees,
      others: otherBees.map((beesPerColony) => {
        const other = coloniesForPrecision({ ...design, beesPerColony }).colonies;
        return { beesPerColony, colonies: other, bees: other * beesPerColony };
      }),
      level: design.level,
      method: "normal-approximation",
      rule: "SD161",
    });
  },
});
