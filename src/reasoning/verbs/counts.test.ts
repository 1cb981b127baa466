/** Mites per bee, asked: printed and independent figures come out, and each part that does not exist is told by itself. */
import { expect, it } from "vitest";
import { answerTo, objected } from "../../../tests/answer-to.ts";
import golden from "../../../tests/golden/bliss-fisher-1953-red-mites.json" with { type: "json" };
import { keptCase } from "../../../tests/reference/kept.ts";
import { abundance } from "./abundance.ts";
import { compareMiteCounts } from "./compare-mite-counts.ts";
import { miteCounts } from "./mite-counts.ts";

type Figures = Readonly<Record<string, number>>;

it("red mites on 150 leaves: k 1.02459, as Bliss and Fisher 1953 print it, and as another program has the rest", () => {
  const { counts, leaves } = golden;
  const { expected } = keptCase<object, Figures>("counts", "bliss_fisher");
  const rows = counts.map((mites, index) => ({ mites, bees: leaves[index] as number }));
  const answer = answerTo(miteCounts, { counts: rows });
  expect(answer.aggregation.byLikelihood).toBeCloseTo(golden.k, 5);
  // 1e-4 of the figure, as the kept case states for a fit; logs within 1e-6
  expect(answer.aggregation.standardError).toBeCloseTo(expected.se_k ?? Number.NaN, 4);
  expect(answer.aggregation.byMoments).toBeCloseTo(expected.k_moment ?? Number.NaN, 10);
  expect(answer.aggregation.byZeros).toBeCloseTo(expected.k_zero_term ?? Number.NaN, 4);
  expect(answer.fit?.logLikelihood).toBeCloseTo(expected.loglik ?? Number.NaN, 6);
  expect(answer.fit?.logLikelihoodPoisson).toBeCloseTo(expected.loglik_poisson ?? Number.NaN, 6);
  expect(answer.fit?.prevalence).toBeCloseTo(expected.prevalence_from_mean_k ?? Number.NaN, 5);
  expect(answer.dispersion.statistic).toBeCloseTo(expected.index_dispersion ?? Number.NaN, 8);
  expect(answer.intensity?.value).toBeCloseTo(2.15, 12);
  expect(answer.classes.map(({ bees }) => bees)).toEqual([...leaves, 0]);
  const given = answer.classes.reduce((sum, each) => sum + (each.negativeBinomial ?? 0), 0);
  expect(given).toBeCloseTo(150, 9);
});

it("bees one by one are the same question as bees by their mites", () => {
  const rows = { counts: [{ mites: 0, bees: 3 }, { mites: 4 }, { mites: 2, bees: 2 }] };
  expect(answerTo(miteCounts, { mitesPerBee: [0, 2, 0, 4, 2, 0] })).toEqual(answerTo(miteCounts, rows));
});

it("counts no more uneven than chance have no k, and the answer says so", () => {
  const reply = miteCounts.ask({ mitesPerBee: [0, 1, 1, 2] });
  // one clear bee of four is less than e^−1, so the clear bees give no k either
  expect(objected(reply)).toEqual([
    "no-more-uneven-than-chance at mitesPerBee: unknown",
    "too-few-without-mites at mitesPerBee: unknown",
  ]);
  expect(reply).toMatchObject({ kind: "answered", value: { fit: null, method: "poisson" } });
});

it("no mites, no bees, both ways of typing at once: named at the field", () => {
  expect(objected(miteCounts.ask({ counts: [{ mites: 0, bees: 50 }] }))).toEqual([
    "no-mites-counted at counts: blocked",
  ]);
  expect(objected(miteCounts.ask({ mitesPerBee: [] }))).toEqual(["nothing-examined at mitesPerBee: blocked"]);
  expect(objected(miteCounts.ask({ counts: [{ mites: 1 }], mitesPerBee: [1] }))).toEqual([
    "fields-disagree at counts: blocked",
  ]);
});

it("one bee with mites of fifty has no range for its load; the rest stands", () => {
  const reply = miteCounts.ask({ counts: [{ mites: 0, bees: 49 }, { mites: 6 }] });
  expect(objected(reply)).toContain("too-few-to-estimate at counts: unknown");
  expect(reply).toMatchObject({ kind: "answered", value: { intensity: null, prevalence: { value: 0.02 } } });
});

it("three stocks of 20 bees (own numbers): the log means of another program, and its ratio test", () => {
  interface Regression {
    readonly y: readonly number[];
    readonly X: readonly (readonly number[])[];
  }
  const { input, expected } = keptCase<
    Regression,
    {
      readonly beta: readonly number[];
      readonly se: readonly number[];
      readonly theta: number;
      readonly loglik: number;
    }
  >("counts", "stocks");
  const groupOf = (row: readonly number[] = []) => 1 + row.indexOf(1, 1);
  const counts = input.y.map((mites, index) => ({ group: Math.max(1, groupOf(input.X[index])), mites }));
  const answer = answerTo(compareMiteCounts, { counts });
  expect(answer.groups.map(({ bees }) => bees)).toEqual([20, 20, 20]);
  // fits agree to 1e-4 of the figure, logs within 1e-6, as the kept case states
  for (const [index, beta] of expected.beta.entries()) {
    expect(answer.fit?.coefficients[index]).toBeCloseTo(beta, 4);
    expect(answer.fit?.standardErrors[index]).toBeCloseTo(expected.se[index] as number, 4);
  }
  expect(answer.fit?.aggregation).toBeCloseTo(expected.theta, 4);
  expect(answer.fit?.logLikelihood).toBeCloseTo(expected.loglik, 6);
  expect(answer.ratios[0]?.value).toBeCloseTo(Math.exp(expected.beta[1] as number), 3);
  expect(answer.test).toMatchObject({ degrees: 2 });
  // the other way round each ratio and its limits are the inverse, and the test is the same
  const turned = answerTo(compareMiteCounts, { counts, against: 2 });
  expect(turned.ratios[0]?.value).toBeCloseTo(1 / (answer.ratios[0]?.value ?? 0), 6);
  expect(turned.ratios[0]?.low).toBeCloseTo(1 / (answer.ratios[0]?.high ?? 0), 6);
  expect(turned.test?.statistic).toBeCloseTo(answer.test?.statistic ?? 0, 6);
  expect(turned.groups).toEqual(answer.groups);
});

it("a group without a mite: means stand, no ratio, and the reason beside them", () => {
  const counts = [0, 0, 0, 3, 1, 9].map((mites, index) => ({ group: index < 3 ? 1 : 2, mites }));
  const reply = compareMiteCounts.ask({ counts });
  expect(objected(reply)).toEqual(["group-without-mites at counts: unknown"]);
  expect(reply).toMatchObject({ kind: "answered", value: { ratios: [], test: null, groups: [{ mean: 0 }, {}] } });
  expect(objected(compareMiteCounts.ask({ counts, against: 3 }))).toEqual(["fields-disagree at against: blocked"]);
  expect(objected(compareMiteCounts.ask({ counts: counts.slice(0, 3) }))).toEqual([
    "fields-disagree at counts: blocked",
  ]);
});

it("prevalence from abundance and back, as the kept cases have it", () => {
  const there = (id: string) => keptCase<{ readonly mean: number; readonly k: number | null }, Figures>("counts", id);
  for (const { input, expected } of ["prev_ab_0.5_0.3", "prev_ab_2_0.8", "prev_ab_2_None"].map(there)) {
    const { mean, k } = input;
    const answer = answerTo(abundance, { mean, ...(k === null ? {} : { k }) });
    expect(answer.prevalence).toBeCloseTo(expected.prevalence ?? Number.NaN, 10);
    expect(answer.intensity).toBeCloseTo(expected.intensity ?? Number.NaN, 9);
    expect(answer.prevalenceAtRandom).toBeCloseTo(expected.poisson_prevalence ?? Number.NaN, 10);
  }
  const back = answerTo(abundance, { prevalence: 0.3, k: 0.5 });
  expect(back.mean).toBeCloseTo(0.5204081632653061, 12); // kept case ab_prev
  expect(back.prevalence).toBeCloseTo(0.3, 12);
  expect(objected(abundance.ask({ mean: 1, prevalence: 0.2 }))).toEqual(["fields-disagree at mean: blocked"]);
});
