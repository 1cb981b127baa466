/** Places and time, asked: kept figures of other programs come out, and what has no maximum is a lawful refusal. */
import { expect, it } from "vitest";
import { answerTo, objected } from "../../../tests/answer-to.ts";
import { keptCase } from "../../../tests/reference/kept.ts";
import { smoothRates } from "./smooth-rates.ts";
import { trend } from "./trend.ts";
import { trendInGroups } from "./trend-in-groups.ts";

type Lists = Readonly<Record<string, readonly number[]>>;
type Figures = Readonly<Record<string, number>>;

const near = (got: number | null | undefined, wanted: number | undefined, relative: number) => {
  if (got == null || wanted === undefined) throw new Error("no figure");
  expect(Math.abs(got - wanted)).toBeLessThanOrEqual(relative * Math.abs(wanted));
};

it("Auckland, 167 areas (Marshall 1991): global, both local readings, and the Poisson–gamma fit, as kept", () => {
  interface Map {
    readonly y: readonly number[];
    readonly n: readonly number[];
    readonly nb: readonly (readonly number[])[];
  }
  const global = keptCase<Map, Lists & Figures>("mapping_trend", "auck_global").expected;
  const { input, expected: local } = keptCase<Map, Lists>("mapping_trend", "auck_local");
  const fit = keptCase<object, Lists & Figures>("mapping_trend", "auck_ck").expected;
  const pairs = input.nb.flatMap((each, one) =>
    each.filter((other) => other > one).map((other) => ({ area: one + 1, neighbour: other + 1 })),
  );
  const answer = answerTo(smoothRates, {
    areas: input.y.map((cases, index) => ({ cases, population: input.n[index] })),
    neighbours: pairs,
  });
  // closed formulas to 1e-10, fits to 1e-4 of the figure, as the kept cases state
  near(answer.mean, global.m, 1e-10);
  near(answer.variance, global.s2, 1e-10);
  near(answer.excessVariance, global.A, 1e-10);
  near(answer.poissonGamma?.byLikelihood.shape, fit.ml_nu, 1e-4);
  near(answer.poissonGamma?.byLikelihood.rate, fit.ml_alpha, 1e-4);
  near(answer.poissonGamma?.byMoments?.shape, fit.moment_nu, 1e-4);
  expect(answer.areas).toHaveLength(167);
  for (const [index, each] of answer.areas.entries()) {
    near(each.global, global.eb?.[index], 1e-10);
    near(each.localByFocalMean, local.eb_focal_mean?.[index], 1e-10);
    near(each.localByOwnMeans, local.eb_own_mean?.[index], 1e-10);
    near(each.relativeRiskByLikelihood, fit.ml_eb?.[index], 1e-4);
  }
});

it("areas that differ no more than chance have one rate, and say so once; one area and no case are refused", () => {
  const areas = [5, 6, 4].map((cases) => ({ cases, population: 100 }));
  const reply = smoothRates.ask({ areas });
  expect(objected(reply)).toEqual(["areas-no-more-than-chance at areas: noted"]);
  expect(reply).toMatchObject({ kind: "answered", value: { poissonGamma: null, areas: [{ global: 0.05 }, {}, {}] } });
  expect(objected(smoothRates.ask({ areas: areas.slice(0, 1) }))).toEqual(["too-few-areas at areas: blocked"]);
  expect(objected(smoothRates.ask({ areas: areas.map((each) => ({ ...each, cases: 0 })) }))).toEqual([
    "nothing-counted at areas: blocked",
  ]);
  expect(objected(smoothRates.ask({ areas, neighbours: [{ area: 1, neighbour: 4 }] }))).toEqual([
    "fields-disagree at neighbours: blocked",
  ]);
});

it("Cochran and Armitage over four years: z 3.0415, as kept; scores moved and stretched change nothing", () => {
  const { expected } = keptCase<object, Figures>("mapping_trend", "trend1");
  const answer = answerTo(trend, trend.example);
  near(answer.z, expected.z, 1e-10);
  near(answer.chiSquare, expected.chi2, 1e-10);
  near(answer.pValue, expected.p, 1e-9); // of the tail, one digit less
  const groups = answer.groups.map((_, index) => ({
    positive: [12, 18, 22, 30][index],
    examined: [200, 210, 190, 205][index],
  }));
  near(answerTo(trend, { groups }).z, expected.z, 1e-10);
  const years = groups.map((each, index) => ({ ...each, score: 2020 + 2 * index }));
  near(answerTo(trend, { groups: years }).z, expected.z, 1e-10);
});

it("a trend over one group, over none found, or with more positive than read is refused by its field", () => {
  const groups = [
    { positive: 0, examined: 10 },
    { positive: 0, examined: 12 },
  ];
  expect(objected(trend.ask({ groups }))).toEqual(["trend-not-defined at groups: blocked"]);
  expect(objected(trend.ask({ groups: groups.slice(1) }))).toEqual(["too-few-groups at groups: blocked"]);
  expect(objected(trend.ask({ groups: [{ positive: 11, examined: 10 }, ...groups] }))).toEqual([
    "fields-disagree at groups: blocked",
  ]);
});

it("sugar cane disease, 45 varieties in 4 blocks: coefficients, spread and likelihood of another program, as kept", () => {
  interface Rows {
    readonly x: readonly number[];
    readonly n: readonly number[];
    readonly group: readonly string[];
    readonly X: readonly (readonly number[])[];
  }
  const { input, expected } = keptCase<
    Rows,
    {
      readonly beta: readonly number[];
      readonly se: readonly number[];
      readonly sigma: number;
      readonly loglik: number;
    }
  >("mapping_trend", "cane_re");
  const counts = input.x.map((positive, index) => ({
    group: Number(input.group[index]),
    positive,
    examined: input.n[index],
    period: 1 + Math.max(0, (input.X[index] ?? []).indexOf(1, 1)),
  }));
  const answer = answerTo(trendInGroups, { counts });
  expect(answer.groups).toBe(45);
  for (const [index, each] of answer.coefficients.entries()) {
    near(each.estimate, expected.beta[index], 1e-4);
    near(each.standardError, expected.se[index], 1e-4);
  }
  near(answer.sigma, expected.sigma, 1e-4);
  expect(answer.logLikelihood).toBeCloseTo(expected.loglik, 6);
  near(answer.oddsRatios[0]?.value, Math.exp(expected.beta[1] ?? 0), 1e-4);
  near(answer.shares[0]?.value, 1 / (1 + Math.exp(-(expected.beta[0] ?? 0))), 1e-3); // 1e-4 of the logit, −2.2
  const moved = (expected.beta[0] ?? 0) + (expected.beta[2] ?? 0);
  near(answer.shares[2]?.value, 1 / (1 + Math.exp(-moved)), 1e-3);
});

it("with two periods a line and steps are the same question; groups alike are one group, and said to be", () => {
  const counts = [2, 5, 9, 12, 1, 3].map((positive, index) => ({
    group: Math.floor(index / 2),
    positive,
    examined: 20,
    period: 2025 + (index % 2),
  }));
  const [steps, line] = (["steps", "line"] as const).map((shape) => answerTo(trendInGroups, { counts, shape }));
  near(line?.oddsRatios[0]?.value, steps?.oddsRatios[0]?.value, 1e-6);
  near(line?.shares[1]?.low, steps?.shares[1]?.low, 1e-6);
  near(line?.change.statistic, steps?.change.statistic, 1e-6);
  const alike = counts.map((each) => ({ ...each, positive: each.period === 2025 ? 4 : 8 }));
  expect(trendInGroups.ask({ counts: alike })).toMatchObject({
    kind: "answered",
    value: { sigma: 0 },
    problems: [{ code: "groups-no-more-than-chance", severity: "warned" }],
  });
  expect(objected(trendInGroups.ask({ counts: counts.filter(({ period }) => period === 2025) }))).toEqual([
    "fields-disagree at counts: blocked",
  ]);
  expect(objected(trendInGroups.ask({ counts: counts.filter(({ group }) => group === 0) }))).toEqual([
    "too-few-groups at counts: blocked",
  ]);
});
