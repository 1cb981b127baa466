/** `trend`: does a share rise or fall over ordered groups, such as years or doses? */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { prevalence } from "../bench/index.ts";
import { trendTest } from "../surveillance/index.ts";
import { count, level } from "./fields.ts";
import { foundOf } from "./part.ts";
import { verb } from "./verb.ts";

const input = z
  .strictObject({
    groups: z
      .array(
        z.strictObject({
          positive: count,
          examined: count,
          score: z
            .number()
            .min(-1e6)
            .max(1e6)
            .exactOptional()
            .describe("where the group stands: year, dose, distance; left out: 1, 2, 3 and so on"),
        }),
      )
      .max(1000)
      .describe("One for each group in order: bees with mites, bees read, score."),
    level: level.default(0.95).describe("Probability content of each group's interval."),
  })
  .refine(({ groups }) => groups.every(({ positive, examined }) => positive <= examined), {
    message: "no more positive than examined in any group",
    path: ["groups"],
  })
  .refine(({ groups }) => new Set(groups.map(({ score }) => score === undefined)).size < 2, {
    message: "a score for every group, or for none",
    path: ["groups"],
  });

const output = z.strictObject({
  z: z.number().describe("above 0 when the share rises with the score"),
  chiSquare: z.number(),
  pValue: z.number().describe("two-sided"),
  groups: z.array(
    z.strictObject({
      score: z.number(),
      value: z.number().describe("share"),
      low: z.number().describe("exact limits"),
      high: z.number(),
    }),
  ),
  level: z.number(),
  method: z.string(),
  rule: z.string(),
});

export const trend = verb({
  name: "trend",
  family: "places",
  summary: "Whether a share rises or falls over years, doses or distances.",
  assumptions: [
    "Bees, or colonies, are independent within and between groups; where they come in clusters the p-value is too small.",
    "The test looks for a steady rise or fall over the scores; a share that rises and falls again can escape it.",
  ],
  source: "Cochran 1954, Biometrics 10:417–451; Armitage 1955, Biometrics 11:375–386; limits: Clopper & Pearson 1934.",
  example: {
    groups: [
      { positive: 12, examined: 200, score: 0 },
      { positive: 18, examined: 210, score: 1 },
      { positive: 22, examined: 190, score: 2 },
      { positive: 30, examined: 205, score: 3 },
    ],
  },
  input,
  output,
  run: ({ groups, level }) => {
    const scored = groups.map((each, index) => ({ ...each, score: each.score ?? index + 1 }));
    const found = trendTest(scored);
    if (!found.ok) return found;
    return answered({
      ...found.value,
      groups: scored.flatMap(({ score, ...counts }) => {
        const share = foundOf(prevalence({ ...counts, level }));
        return share ? [{ score, value: share.value, low: share.low, high: share.high }] : [];
      }),
      level,
      method: "cochran-armitage",
      rule: "SV165",
    });
  },
});
