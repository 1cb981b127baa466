/** `freedom`: rounds in which none was found: how sure one may be that the region is not infested. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { freedomEquilibrium, freedomSeries, sensitivityForTarget } from "../surveillance/index.ts";
import { count, level, share } from "./fields.ts";
import { verb } from "./verb.ts";

const mostRounds = 1000;
const readings = ["first-round", "period-before"] as const;

const input = z
  .strictObject({
    priorFree: z
      .number()
      .min(0)
      .lt(1)
      .describe("Chance before the first round that the region is not infested. 0.5 says that nothing is known."),
    sensitivities: z
      .array(share)
      .min(1)
      .max(200)
      .describe("For each round, the chance to find at least one if the region is infested. They have no default."),
    times: count.min(1).max(200).default(1).describe("How many times the list of rounds is gone through."),
    introduction: share.describe("Chance that infestation comes in between two rounds. It has no default."),
    priorAt: z
      .enum(readings)
      .default("first-round")
      .describe(
        "Where the first chance holds: at the first round, or in the period before, so that what came in since is taken off.",
      ),
    target: level.default(0.95).describe("Chance of not infested to be reached."),
  })
  .refine(({ sensitivities, times }) => sensitivities.length * times <= mostRounds, {
    message: `no more than ${mostRounds} rounds in all`,
    path: ["times"],
  });

const output = z.strictObject({
  probabilityFree: z.number().describe("of not infested after the last round"),
  otherReading: z
    .strictObject({ priorAt: z.enum(readings), probabilityFree: z.number() })
    .describe("the same where the first chance is read the other way"),
  rounds: z.array(
    z.strictObject({
      round: z.number().int(),
      sensitivity: z.number(),
      before: z.number(),
      after: z.number().describe("after none was found"),
      afterIntroduction: z.number().describe("after what may come in until the next round"),
    }),
  ),
  priorAt: z.enum(readings),
  target: z.number(),
  reachedAt: z.number().int().nullable().describe("first round after which the target holds; null when none does"),
  settles: z
    .strictObject({ sensitivity: z.number(), before: z.number(), after: z.number() })
    .nullable()
    .describe("where rounds like the last one lead in the end; null when nothing ever changes"),
  inOneRound: z
    .strictObject({
      sensitivityNeeded: z.number().describe("that one round must have to reach the target; 0 when it holds already"),
      raw: z.number().describe("the same as it comes: below 0 when the target holds already"),
      priorAfterIntroduction: z.number(),
    })
    .describe("the prior read as of the period before"),
  method: z.string(),
  rule: z.string(),
});

export const freedom = verb({
  name: "freedom",
  family: "freedom",
  summary: "How sure one may be that a region is not infested, after rounds of none found.",
  assumptions: [
    "Infested means at the design prevalence or above: lower infestation is not spoken of.",
    "Rounds are independent of each other given the state of the region, and find nothing where nothing is.",
    "The first chance and the chance of introduction are judgements, and the answer moves with them.",
  ],
  source: "Martin, Cameron & Greiner 2007, Preventive Veterinary Medicine 79:71–97; where rounds settle: own algebra.",
  example: { priorFree: 0.5, sensitivities: [0.5], times: 12, introduction: 0.01 },
  input,
  output,
  run: ({ priorFree, sensitivities, times, introduction, priorAt, target }) => {
    const every = Array.from({ length: times }, () => sensitivities).flat();
    const design = { priorFree, sensitivities: every, introduction };
    const otherAt = priorAt === "first-round" ? "period-before" : "first-round";
    const series = freedomSeries({ ...design, priorAt });
    const other = freedomSeries({ ...design, priorAt: otherAt });
    if (!series.ok) return series;
    if (!other.ok) return other;
    const last = every.at(-1) ?? 0;
    const needed = sensitivityForTarget({ priorFree, introduction, target });
    return answered({
      probabilityFree: series.value.at(-1)?.after ?? priorFree,
      otherReading: { priorAt: otherAt, probabilityFree: other.value.at(-1)?.after ?? priorFree },
      rounds: series.value.map((each, index) => ({ ...each, sensitivity: every[index] ?? 0 })),
      priorAt,
      target,
      reachedAt: series.value.find(({ after }) => after >= target)?.round ?? null,
      settles:
        last > 0 || introduction > 0
          ? { sensitivity: last, ...freedomEquilibrium({ sensitivity: last, introduction }) }
          : null,
      inOneRound: {
        sensitivityNeeded: needed.needed,
        raw: needed.raw,
        priorAfterIntroduction: needed.priorAfterIntroduction,
      },
      method: "bayes-by-round",
      rule: priorAt === "first-round" ? "SV150" : "SV151",
    });
  },
});
