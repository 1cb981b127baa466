/** `smooth-rates`: rates of small areas, drawn towards the mean of all, of their neighbours, or by a fitted law. */
import * as z from "zod";
import { answered, type Problem, type Result } from "../../units/index.ts";
import { claytonKaldor, marshallGlobal, marshallLocal } from "../surveillance/index.ts";
import { count } from "./fields.ts";
import { foundOf, noticesOf } from "./part.ts";
import { type Deep, verb } from "./verb.ts";

const mostAreas = 1000;
const mostCases = 200_000;
const area = count.min(1).max(mostAreas);

const input = z
  .strictObject({
    areas: z
      .array(
        z.strictObject({
          cases: count.max(mostCases).describe("infested colonies, or dead ones"),
          population: z.number().gt(0).max(1e9).describe("colonies, or colony-years, at risk"),
          expected: z
            .number()
            .gt(0)
            .max(1e9)
            .exactOptional()
            .describe("cases expected; left out: as many as the rate of all areas gives"),
        }),
      )
      .max(mostAreas)
      .describe("One for each area: cases, colonies at risk, and expected cases where another standard gives them."),
    neighbours: z
      .array(z.strictObject({ area, neighbour: area }))
      .max(20_000)
      .exactOptional()
      .describe("Pairs of areas that touch, by their places in the list, counted from 1. A pair holds both ways."),
  })
  .refine(({ areas }) => areas.reduce((sum, { cases }) => sum + cases, 0) <= mostCases, {
    message: `no more than ${mostCases} cases in all`,
    path: ["areas"],
  })
  .refine(({ areas }) => new Set(areas.map(({ expected }) => expected === undefined)).size < 2, {
    message: "expected cases for every area, or for none",
    path: ["areas"],
  })
  .refine(
    ({ areas, neighbours = [] }) =>
      neighbours.every((pair) => Math.max(pair.area, pair.neighbour) <= areas.length && pair.area !== pair.neighbour),
    { message: "pairs of two areas of the list, counted from 1", path: ["neighbours"] },
  );

const gamma = z.strictObject({ shape: z.number(), rate: z.number() });

const output = z.strictObject({
  mean: z.number().describe("cases over population, all areas together"),
  variance: z.number().describe("of the rates between areas, weighted by population"),
  excessVariance: z.number().describe("what of it chance does not explain; below 0 when chance explains more than all"),
  areas: z.array(
    z.strictObject({
      area: z.number().int(),
      rate: z.number(),
      global: z.number().describe("drawn towards the mean of all (Marshall)"),
      localMean: z.number().nullable().describe("rate of the area with its neighbours; null without neighbours"),
      localByFocalMean: z.number().nullable().describe("squares about the mean of the area's own neighbourhood"),
      localByOwnMeans: z.number().nullable().describe("squares about the mean of each member's own neighbourhood"),
      expected: z.number(),
      relativeRisk: z.number().describe("cases over expected cases"),
      relativeRiskByLikelihood: z.number().nullable().describe("Clayton and Kaldor, by likelihood"),
      relativeRiskByMoments: z.number().nullable().describe("the same, by moments"),
    }),
  ),
  poissonGamma: z
    .strictObject({ byLikelihood: gamma, logLikelihood: z.number(), byMoments: gamma.nullable() })
    .nullable()
    .describe("law of the relative risks; null where areas differ no more than chance"),
  method: z.string(),
  rule: z.string(),
});

type Input = z.output<typeof input>;
type Answer = Deep<z.output<typeof output>>;

export const smoothRates = verb({
  name: "smooth-rates",
  family: "places",
  summary: "Rates of small areas, with what chance explains taken off.",
  assumptions: [
    "Cases are Poisson given an area's true rate, and areas are independent.",
    "Marshall's rates assume no shape; Clayton and Kaldor's take relative risks as gamma distributed, and neighbours lend each other nothing.",
    "Locally the variance has two published readings; both are given.",
    "A smoothed rate is the best guess over all areas, not a finding about one.",
  ],
  source: "Marshall 1991, Applied Statistics 40:283–294; Clayton & Kaldor 1987, Biometrics 43:671–681.",
  example: {
    areas: [
      { cases: 8, population: 60 },
      { cases: 1, population: 25 },
      { cases: 0, population: 12 },
      { cases: 21, population: 80 },
      { cases: 6, population: 15 },
      { cases: 2, population: 45 },
    ],
    neighbours: [
      { area: 1, neighbour: 2 },
      { area: 2, neighbour: 3 },
      { area: 1, neighbour: 4 },
      { area: 4, neighbour: 5 },
      { area: 5, neighbour: 6 },
    ],
  },
  input,
  output,
  run,
});

function run({ areas, neighbours }: Input): Result<Answer> {
  const global = marshallGlobal(areas);
  if (!global.ok) return global;
  const { mean, variance, excessVariance, rates, smoothed } = global.value;
  const local = neighbours ? marshallLocal(withNeighbours(areas, neighbours)) : null;
  if (local && !local.ok) return local;
  const nearby = local?.value ?? null;
  const expected = areas.map((each) => each.expected ?? mean * each.population);
  const risks = claytonKaldor(areas.map(({ cases }, index) => ({ cases, expected: expected[index] ?? 0 })));
  const fitted = foundOf(risks);
  const moments = fitted ? foundOf(fitted.byMoments) : null;
  const notices = [...global.problems, ...noticesOf(risks), ...(fitted ? noticesOf(fitted.byMoments) : [])];
  const law = ({ shape, rate }: { readonly shape: number; readonly rate: number }) => ({ shape, rate });
  return answered(
    {
      mean,
      variance,
      excessVariance,
      areas: areas.map(({ cases }, index) => ({
        area: index + 1,
        rate: rates[index] ?? 0,
        global: smoothed[index] ?? 0,
        localMean: nearby?.means[index] ?? null,
        localByFocalMean: nearby?.byFocalMean[index] ?? null,
        localByOwnMeans: nearby?.byOwnMeans[index] ?? null,
        expected: expected[index] ?? 0,
        relativeRisk: cases / (expected[index] ?? 1),
        relativeRiskByLikelihood: fitted?.byLikelihood.smoothed[index] ?? null,
        relativeRiskByMoments: moments?.smoothed[index] ?? null,
      })),
      poissonGamma: fitted && {
        byLikelihood: law(fitted.byLikelihood),
        logLikelihood: fitted.byLikelihood.logLikelihood,
        byMoments: moments && law(moments),
      },
      method: "empirical-bayes",
      rule: "SV161",
    },
    notices.filter((each: Problem, index) => notices.findIndex(({ code }) => code === each.code) === index),
  );
}

function withNeighbours(areas: Input["areas"], pairs: NonNullable<Input["neighbours"]>) {
  const of = areas.map((): number[] => []);
  for (const { area: one, neighbour: other } of pairs) {
    of[one - 1]?.push(other - 1);
    of[other - 1]?.push(one - 1);
  }
  return areas.map((each, index) => ({ ...each, neighbours: of[index] ?? [] }));
}
