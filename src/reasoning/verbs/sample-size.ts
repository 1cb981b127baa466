/** `sample-size`: how many bees to examine so that an infestation is not missed, and what that number could still miss. */
import * as z from "zod";
import { answered, type Result } from "../../units/index.ts";
import {
  beesOfAColony,
  detectionProbability,
  detectionSampleSize,
  finiteDetectionDesign,
  finiteMissedCurve,
  missedCurve,
  samplingProblem,
  shortcutSizes,
  wholeShare,
} from "../sampling/index.ts";
import { couldMiss, count, level, positiveShare, prevalences } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

/** With a rarer positive no number of bees could be counted. */
const rarest = 1e-9;

const input = z
  .strictObject({
    designPrevalence: positiveShare.describe("Smallest share of infested bees that must not be missed."),
    sensitivity: positiveShare.describe("Share of infested bees that the bench finds. It has no default."),
    confidence: level
      .default(0.95)
      .describe("Wanted chance of at least one positive bee when the design prevalence is there."),
    population: count
      .min(1)
      .exactOptional()
      .describe("Bees, or colonies, in the whole group, when it is small. Left out: so many that it does not matter."),
    prevalences: prevalences.describe("Shares of infested bees for which to say what the sample could miss."),
  })
  .refine(({ designPrevalence, sensitivity }) => !(designPrevalence * sensitivity < rarest), {
    message: "with the sensitivity one positive bee in a thousand million or more: else no number can be counted",
    path: ["designPrevalence"],
  });

const output = z.strictObject({
  bees: z.number().int().describe("the smallest number that reaches the wanted confidence"),
  detectionProbability: z.number().describe("chance of at least one positive among them at the design prevalence"),
  infested: z
    .number()
    .int()
    .nullable()
    .describe("infested ones in the group at the design prevalence; null when the group is large"),
  couldMiss: z.array(couldMiss).describe("share of such samples in which none would be found, by prevalence"),
  approximations: z
    .strictObject({
      cannonRoe: z.number().int().describe("by Cannon and Roe's shortcut, which knows of no sensitivity"),
      macDiarmid: z.number().int().describe("by MacDiarmid's shortcut"),
    })
    .nullable()
    .describe("two shortcuts for a small group, rounded up: printed tables rest on them; plan with the exact number"),
  design: z.strictObject({
    designPrevalence: z.number(),
    sensitivity: z.number(),
    confidence: z.number(),
    population: z.number().int().nullable(),
  }),
  rule: z.string().describe("rule that fixes the method"),
});

type Input = z.output<typeof input>;

export const sampleSize = verb({
  name: "sample-size",
  family: "designs",
  summary: "How many bees to examine so that an infestation is not missed.",
  assumptions: [
    "Bees are drawn at random; bees that cluster by infestation need more.",
    "A mite seen in a trachea is a mite: no false positives.",
    "With a population, bees are drawn without putting back, and the infested ones are the smallest whole number that makes up the design prevalence.",
  ],
  source:
    "Pirk et al. 2013, BEEBOOK I, section 2.2 (large colony); hypergeometric sampling (small group); Cannon & Roe 1982, MacDiarmid 1988 (shortcuts).",
  example: { designPrevalence: 0.05, sensitivity: 0.8 },
  input,
  output,
  run: (design) => (design.population === undefined ? inLargeGroup(design) : inSmallGroup(design, design.population)),
});

function inLargeGroup(given: Input) {
  const { designPrevalence, sensitivity, confidence } = given;
  const bees = detectionSampleSize({ designPrevalence, confidence, sensitivity });
  const problems =
    bees > beesOfAColony ? [samplingProblem("more-bees-than-a-colony", "warned", "designPrevalence", { bees })] : [];
  const answer = {
    bees,
    detectionProbability: detectionProbability({ bees, designPrevalence, sensitivity }),
    infested: null,
    couldMiss: missedCurve({ bees, sensitivity, prevalences: given.prevalences }),
    approximations: null,
    design: { designPrevalence, sensitivity, confidence, population: null },
    rule: "SD1",
  };
  return answered(answer, problems);
}

function inSmallGroup(given: Input, population: number): Result<Deep<z.output<typeof output>>> {
  const { designPrevalence, sensitivity, confidence } = given;
  const infested = wholeShare(designPrevalence, population);
  const size = finiteDetectionDesign({ population, infested, confidence, sensitivity });
  if (!size.ok) return size;
  const { examined, reached } = size.value;
  const missed = finiteMissedCurve({ population, examined, sensitivity, prevalences: given.prevalences });
  if (!missed.ok) return missed;
  return answered({
    bees: examined,
    detectionProbability: reached,
    infested,
    couldMiss: missed.value,
    approximations: shortcutSizes({ population, infested, confidence, sensitivity }),
    design: { designPrevalence, sensitivity, confidence, population },
    rule: "SD6",
  });
}
