/** `none-found`: what none found in so many leaves possible, exactly and by the shortcuts people carry in the head. */
import * as z from "zod";
import { answered, blocked, type Problem, problem, type Result } from "../../units/index.ts";
import {
  cannonRoeLimitOfZero,
  finiteMissedCurve,
  finiteUpperLimitOfZero,
  limitsOfZero,
  missedCurve,
  upperLimitOfZero,
} from "../sampling/index.ts";
import { couldMiss, count, estimate, level, positiveShare, prevalences } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

const input = z.strictObject({
  examined: count.min(1).describe("Bees or colonies looked at, none of them positive."),
  level: level.default(0.95).describe("Probability content of the limits."),
  sensitivity: positiveShare
    .exactOptional()
    .describe("Share of infested ones that the bench finds. It has no default; left out, nothing is corrected."),
  population: count.min(1).exactOptional().describe("How many there are in all, when they are counted."),
  prevalences: prevalences.describe("Shares infested for which to say how often such a sample would hold none."),
});

const output = z.strictObject({
  oneSided: estimate.describe("exact, all of the doubt above: the usual way to report a zero"),
  twoSided: estimate.describe("exact, with the level of a two-sided range: Clopper and Pearson's upper end"),
  approximations: z
    .strictObject({
      logShortcut: z.number().describe("−ln(1 − level) / n; may lie above 1"),
      ruleOfThree: z.number().describe("3 / n, meant for a level of 0.95; may lie above 1"),
      jeffreys: z.number().describe("upper credible limit, one side, by Jeffreys's prior"),
    })
    .describe("for a large group and a perfect bench, beside the exact limits and never in their place"),
  ofCounted: z
    .strictObject({
      population: z.number().int(),
      infested: z.number().int().describe("the most that may be infested"),
      share: z.number().describe("the same as a share of all"),
      cannonRoe: z.number().describe("approximation by Cannon and Roe, for a perfect bench, not whole"),
      level: z.number(),
      method: z.string(),
      rule: z.string(),
    })
    .nullable()
    .describe("when all are counted: drawn without replacement; null without a population"),
  couldMiss: z.array(couldMiss).describe("share of such samples in which none would be found, by prevalence"),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Counted = z.output<typeof output>["ofCounted"];

export const noneFound = verb({
  name: "none-found",
  family: "shares",
  summary: "What none found in so many leaves possible.",
  assumptions: [
    "Those looked at were drawn at random; ones that cluster by infestation leave more possible.",
    "What is found positive is positive: no false positives.",
    "The limit of a counted group is the largest number infested of which a zero is not rarer than 1 − level.",
    "The shortcuts suppose a large group and a perfect bench.",
  ],
  source:
    "Clopper & Pearson 1934; Hanley & Lippman-Hand 1983 (3/n); Brown, Cai & DasGupta 2001 (Jeffreys); Cannon & Roe 1982 (counted group).",
  example: { examined: 50, sensitivity: 0.9 },
  input,
  output,
  run,
});

function run(given: Input): Result<Deep<z.output<typeof output>>> {
  const { examined, level, sensitivity = 1, population, prevalences } = given;
  const one = upperLimitOfZero({ examined, level, sides: "one", sensitivity });
  const two = upperLimitOfZero({ examined, level, sides: "two", sensitivity });
  const quick = limitsOfZero({ examined, level });
  const counted = population === undefined ? answered(null) : inCounted({ examined, level, sensitivity, population });
  const missed =
    population === undefined
      ? answered(missedCurve({ bees: examined, sensitivity, prevalences }))
      : finiteMissedCurve({ population, examined, sensitivity, prevalences });
  if (!one.ok) return one;
  if (!two.ok) return two;
  if (!quick.ok) return quick;
  if (!counted.ok) return counted;
  if (!missed.ok) return missed;
  const { logShortcut, ruleOfThree, jeffreysOneSided } = quick.value;
  const notes: Problem[] =
    given.sensitivity === undefined ? [problem("sensitivity-not-given", "noted", "sensitivity")] : [];
  return answered(
    {
      oneSided: one.value,
      twoSided: two.value,
      approximations: { logShortcut, ruleOfThree, jeffreys: jeffreysOneSided },
      ofCounted: counted.value,
      couldMiss: missed.value,
      method: "exact-upper-of-zero",
      rule: "SD8",
    },
    [...one.problems, ...notes],
  );
}

function inCounted(zero: {
  readonly examined: number;
  readonly level: number;
  readonly sensitivity: number;
  readonly population: number;
}): Result<Counted> {
  const most = finiteUpperLimitOfZero(zero);
  if (!most.ok) return blocked(...most.problems);
  const { population, level } = zero;
  const shared = { level, method: "hypergeometric", rule: "SD10" };
  return answered({
    population,
    infested: most.value,
    share: most.value / population,
    cannonRoe: cannonRoeLimitOfZero(zero),
    ...shared,
  });
}
