/** `network`: a network of causes and signs of one's own, what was seen, and what to look at next. */
import * as z from "zod";
import { answered, type Problem, type Result } from "../../units/index.ts";
import { noisyOr } from "../differential/index.ts";
import { level, share } from "./fields.ts";
import { type Deep, verb } from "./verb.ts";

/** Every set of causes is listed, twice as many with each cause. */
const mostCauses = 10;
const mostSigns = 20;

const signs = z.array(z.number().int().min(1).max(mostSigns)).max(mostSigns).default([]);

const input = z
  .strictObject({
    priors: z.array(level).min(1).max(mostCauses).describe("Chance of each cause before anything was looked at."),
    leaks: z
      .array(z.number().min(0).lt(1))
      .min(1)
      .max(mostSigns)
      .describe("Chance of each sign with none of the causes."),
    links: z
      .array(z.array(share))
      .max(mostCauses)
      .describe("One row for each cause: chance that it brings each sign, above the leak."),
    present: signs.describe("Signs that were seen, numbered from 1."),
    absent: signs.describe("Signs that were looked for and not seen. What was not looked for is in neither list."),
  })
  .refine(
    ({ links, priors, leaks }) => links.length === priors.length && links.every((row) => row.length === leaks.length),
    { message: "one row for each cause, with as many numbers as there are signs", path: ["links"] },
  )
  .refine(({ present, leaks }) => present.every((sign) => sign <= leaks.length), {
    message: "numbers of signs that there are",
    path: ["present"],
  })
  .refine(({ absent, leaks }) => absent.every((sign) => sign <= leaks.length), {
    message: "numbers of signs that there are",
    path: ["absent"],
  })
  .refine(({ present, absent }) => !absent.some((sign) => present.includes(sign)), {
    message: "no sign that is in the list of those seen",
    path: ["absent"],
  });

const output = z.strictObject({
  evidenceProbability: z.number().describe("chance of just these signs, seen and not seen"),
  causes: z
    .array(z.strictObject({ cause: z.number().int(), before: z.number(), after: z.number() }))
    .describe("chance of each cause, numbered from 1"),
  noCause: z.number().describe("chance that none of the causes is there"),
  entropyBits: z.number().describe("what is still open about all causes together"),
  states: z
    .array(z.strictObject({ causes: z.array(z.number().int()), probability: z.number() }))
    .describe("likeliest sets of causes, ten at most"),
  next: z
    .array(
      z.strictObject({
        sign: z.number().int(),
        probability: z.number().describe("chance that it will be seen"),
        bits: z.number().describe("what looking for it tells on average, of all causes together"),
        bitsOfSingleCauses: z.number().describe("the same as a sum over causes one by one; may rank otherwise"),
      }),
    )
    .describe("signs not looked for, the most telling first"),
  method: z.string(),
  rule: z.string(),
});

type Answer = Deep<z.output<typeof output>>;

export const network = verb({
  name: "network",
  family: "readers",
  summary: "A network of causes and signs of your own, and what to look at next.",
  assumptions: [
    "Causes come independently, several may be there at once, and each brings each sign by itself (noisy-or with a leak).",
    "What was not looked for says nothing.",
    "Every chance is yours: the answer is as good as they are. It is no diagnosis.",
  ],
  source: "Pearl 1988; Shwe et al. 1991 (noisy-or with leak); every set of causes listed.",
  example: {
    priors: [0.15, 0.3, 0.1, 0.03, 0.08],
    leaks: [0.02, 0.01, 0.1, 0.02, 0.03, 0.02],
    links: [
      [0.35, 0.5, 0.6, 0.1, 0.15, 0],
      [0.15, 0.05, 0.7, 0.05, 0.02, 0.6],
      [0.25, 0.1, 0.5, 0.05, 0.6, 0],
      [0.3, 0.05, 0.4, 0.9, 0.05, 0],
      [0.02, 0, 0.8, 0.02, 0.02, 0],
    ],
    present: [1, 2],
    absent: [6],
  },
  input,
  output,
  refusals: ["evidence-contradicts-model"],
  run: ({ priors, leaks, links, present, absent }): Result<Answer> => {
    const evidence = new Map([
      ...present.map((sign) => [sign - 1, true]),
      ...absent.map((sign) => [sign - 1, false]),
    ] as [number, boolean][]);
    const found = noisyOr({ prior: priors, link: links, leak: leaks, evidence });
    if (!found.ok) return { ...found, problems: found.problems.map(atPresent) };
    const { evidenceProbability, posterior, noCondition, entropyBits, states, outlook } = found.value;
    return answered({
      evidenceProbability,
      causes: priors.map((before, index) => ({ cause: index + 1, before, after: posterior[index] ?? before })),
      noCause: noCondition,
      entropyBits,
      states: states.slice(0, 10).map(({ present: causes, probability }) => ({
        causes: causes.map((each) => each + 1),
        probability,
      })),
      next: outlook
        .map(({ finding, probability, jointBits, marginalBits }) => ({
          sign: finding + 1,
          probability,
          bits: jointBits,
          bitsOfSingleCauses: marginalBits,
        }))
        .sort((one, other) => other.bits - one.bits || one.sign - other.sign),
      method: "noisy-or",
      rule: "DX1",
    });
  },
});

const atPresent = (each: Problem): Problem => ({ ...each, field: "present" });
