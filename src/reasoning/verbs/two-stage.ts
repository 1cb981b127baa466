/** `two-stage`: how many colonies, and how many bees from each, so that an infested yard is not missed, and at what cost. */
import * as z from "zod";
import { answered, blocked, type Result } from "../../units/index.ts";
import { cheapestTwoStage, costedTwoStages, twoStageDesign } from "../sampling/index.ts";
import { count, level, positiveShare } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const cost = z.number().min(0).max(1_000_000_000);
const bees = count.min(1).max(1_000);
/** Smaller ones would ask for more colonies than can be counted. */
const rare = positiveShare.min(1e-6);

const input = z
  .strictObject({
    colonies: count.min(1).max(100_000).exactOptional().describe("Colonies in all. Left out: very many."),
    colonyPrevalence: rare.describe("Smallest share of infested colonies that must not be missed."),
    beePrevalence: rare.describe("Smallest share of infested bees in such a colony."),
    sensitivity: positiveShare.min(0.001).describe("Share of infested bees that the bench finds. It has no default."),
    confidence: level.default(0.95).describe("Wanted chance of at least one positive bee."),
    beesPerColony: bees.exactOptional().describe("Bees from each colony; left out, the cheapest number is looked for."),
    costPerColony: cost.exactOptional().describe("Cost of going to one colony, in any unit."),
    costPerBee: cost.exactOptional().describe("Cost of one bee on the bench, in the same unit."),
    mostBees: bees.default(150).describe("Bees from each colony up to which the cheapest is looked for."),
  })
  .refine(({ costPerColony, costPerBee }) => (costPerColony === undefined) === (costPerBee === undefined), {
    message: "both costs, or neither",
    path: ["costPerBee"],
  })
  .refine(({ beesPerColony, costPerColony }) => beesPerColony !== undefined || costPerColony !== undefined, {
    message: "a number of bees, or both costs to find the cheapest",
    path: ["beesPerColony"],
  });

const costed = z.strictObject({
  beesPerColony: z.number().int(),
  colonies: z.number().int(),
  cost: z.number(),
  colonySensitivity: z.number(),
});

const output = z.strictObject({
  beesPerColony: z.number().int(),
  colonies: z.number().int().describe("colonies to take: exact for counted colonies, else of very many"),
  bees: z.number().int().describe("bees in all"),
  colonySensitivity: z
    .number()
    .describe(
      "chance that an infested colony gives a positive bee: the one that so many bees attain, not a wanted one",
    ),
  ofMany: z.number().int().describe("colonies to take if there were very many"),
  infested: z.number().int().nullable().describe("infested colonies the design supposes; null of very many"),
  cost: z.number().nullable().describe("cost of this design; null without costs"),
  chosen: z.enum(["cheapest", "given"]).describe("the cheapest number of bees from each colony, or the one given"),
  cheapest: costed.nullable().describe("the cheapest design; null without costs"),
  near: z.array(costed).describe("designs within two bees of the cheapest"),
  byBees: z
    .array(costed.extend({ cost: z.number().nullable() }))
    .describe("every design that reaches the confidence, by bees from each colony; cost null without costs"),
  design: z.strictObject({
    colonies: z.number().int().nullable(),
    colonyPrevalence: z.number(),
    beePrevalence: z.number(),
    sensitivity: z.number(),
    confidence: z.number(),
  }),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;

export const twoStage = verb({
  name: "two-stage",
  family: "designs",
  summary: "How many colonies, and how many bees from each, to find an infested yard.",
  assumptions: [
    "Colonies are drawn at random, then bees from each; a colony is large.",
    "No false positives: a mite seen in a trachea is a mite.",
    "A colony counts with the sensitivity that its bees attain. Tables that enter the wanted one instead can ask for a colony more.",
    "Of counted colonies, drawn without putting back, the share infested is rounded to whole ones, at least 1.",
    "Costs are added up: so much for each colony, so much for each bee.",
  ],
  source: "Cameron & Baldock 1998, Preventive Veterinary Medicine 34:19–30; search over all numbers of bees (cost).",
  example: {
    colonies: 400,
    colonyPrevalence: 0.03,
    beePrevalence: 0.08,
    sensitivity: 0.9,
    costPerColony: 40,
    costPerBee: 1.2,
  },
  input,
  output,
  run,
});

function run(given: Input): Result<Answer> {
  const { colonies = null, colonyPrevalence, beePrevalence, sensitivity, confidence } = given;
  const stages = { colonies, colonyPrevalence, beePrevalence, sensitivity, confidence };
  const searched = { ...stages, mostBees: Math.max(given.mostBees, given.beesPerColony ?? 1) };
  const prices = pricesOf(given);
  const priced = prices === null ? null : cheapestTwoStage({ ...searched, ...prices });
  const best = priced?.ok ? priced.value : null;
  const beesPerColony = given.beesPerColony ?? best?.beesPerColony;
  if (beesPerColony === undefined) return blocked(...(priced?.problems ?? []));
  const { colonySensitivity, ofMany, ofCounted } = twoStageDesign({ ...stages, beesPerColony });
  const taken = ofCounted === null ? answered(ofMany) : ofCounted.colonies;
  if (!taken.ok) return blocked(...taken.problems);
  const byBees = costedTwoStages({ ...searched, ...(prices ?? unpriced) });
  const { near, ...cheapest } = best ?? { near: [] };
  return answered({
    beesPerColony,
    colonies: taken.value,
    bees: beesPerColony * taken.value,
    colonySensitivity,
    ofMany,
    infested: ofCounted?.infested ?? null,
    cost: prices === null ? null : (byBees.find((each) => each.beesPerColony === beesPerColony)?.cost ?? null),
    chosen: given.beesPerColony === undefined ? "cheapest" : "given",
    cheapest: "cost" in cheapest ? cheapest : null,
    near,
    byBees: prices === null ? byBees.map((each) => ({ ...each, cost: null })) : byBees,
    design: stages,
    method: ofCounted === null ? "binomial" : "hypergeometric",
    rule: given.beesPerColony === undefined ? "SD108" : colonies === null ? "SD106" : "SD107",
  });
}

const unpriced = { costPerColony: 0, costPerBee: 0 } as const;

/** Both costs; null when none are given. */
const pricesOf = ({ costPerColony, costPerBee }: Input) =>
  costPerColony === undefined || costPerBee === undefined ? null : { costPerColony, costPerBee };
