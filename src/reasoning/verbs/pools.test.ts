/** Bees tested together: printed and independently computed figures come out of the verbs. */
import { expect, it } from "vitest";
import dorfman from "../../../tests/golden/dorfman-1943.json" with { type: "json" };
import detect from "../../../tests/golden/epir-manual-pools.json" with { type: "json" };
import checks from "../../../tests/golden/pooled-check-values.json" with { type: "json" };
import { poolRetest } from "./pool-retest.ts";
import { poolSize } from "./pool-size.ts";
import { pools } from "./pools.ts";
import { poolsToDetect } from "./pools-to-detect.ts";
import type { AnswerOf, Verb } from "./verb.ts";

function ask<V extends Verb>(verb: V, raw: object): AnswerOf<V> {
  const reply = verb.ask(raw);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<V>;
}
const troubles = (verb: Verb, raw: object) => verb.ask(raw).problems.map(({ code, field }) => `${field}: ${code}`);
const limitsOf = ({ limits }: AnswerOf<typeof pools>, method: string) => {
  const found = limits.find((each) => each.method === method);
  return [found?.low ?? Number.NaN, found?.high ?? Number.NaN];
};

it.each(checks.rows)("$groups.length sizes: likeliest $maximumLikelihood, Firth $firth (Python, R)", (row) => {
  const answer = ask(pools, { groups: row.groups });
  const values = Object.fromEntries(answer.points.map(({ method, value }) => [method, value ?? Number.NaN]));
  expect(values["maximum-likelihood"]).toBeCloseTo(row.maximumLikelihood, 8);
  expect(values.gart).toBeCloseTo(row.gart, 8);
  expect(values.firth).toBeCloseTo(row.firth, 8);
  for (const [method, limits] of [
    ["score", row.score],
    ["skew-score", row.skewScore],
    ["likelihood", row.likelihood],
  ] as const) {
    const [low, high] = limitsOf(answer, method);
    expect(low).toBeCloseTo(limits[0] ?? 0, 8);
    expect(high).toBeCloseTo(limits[1] ?? 0, 8);
  }
  expect(answer.estimate?.value).toBe(values.firth);
});

it("3 of 24 pools of 7: exact limits, and Burrows's estimate is Firth's (Python)", () => {
  const answer = ask(pools, pools.example);
  const [low, high] = limitsOf(answer, "clopper-pearson");
  expect(low).toBeCloseTo(0.0038380992602, 8);
  expect(high).toBeCloseTo(0.0543240825508, 8);
  expect(limitsOf(answer, "blaker")[1]).toBeCloseTo(0.0512908893491, 8);
  expect([answer.estimate?.low, answer.estimate?.high]).toEqual([low, high]);
  expect(answer.points.at(-1)?.value).toBeCloseTo(0.0185442233672, 10);
});

it("none of 12 pools of 10: 0, an exact upper limit only, whether of one size or not", () => {
  const answer = ask(pools, { groups: [{ positive: 0, pools: 12, size: 10 }] });
  expect(answer.estimate).toMatchObject({ value: 0, low: 0 });
  expect(answer.estimate?.high).toBeCloseTo(0.030272972577, 10);
  expect(limitsOf(answer, "clopper-pearson")[1]).toBeCloseTo(0.030272972577, 10);
  const mixed = [
    { positive: 0, pools: 6, size: 10 },
    { positive: 0, pools: 3, size: 20 },
  ];
  // As many bees, all in negative pools: the same limit.
  expect(ask(pools, { groups: mixed }).estimate?.high).toBeCloseTo(0.030272972577, 10);
  expect(troubles(pools, { groups: mixed })).toEqual(["groups: no-pool-positive"]);
});

it("every pool positive: no estimate, a lower limit only, and it says so", () => {
  const all = { groups: [{ positive: 12, pools: 12, size: 10 }] };
  const answer = ask(pools, all);
  expect(answer.estimate).toBeNull();
  expect(limitsOf(answer, "clopper-pearson")[0]).toBeGreaterThan(0);
  expect(limitsOf(answer, "clopper-pearson")[1]).toBe(1);
  expect(answer.points.find(({ method }) => method === "firth")?.value).toBeNull();
  expect(troubles(pools, all)).toEqual(["groups: all-pools-positive"]);
});

it("4 of 20 pools of 10 with a test that errs: 0.0237 (own numbers, Python); several sizes cannot be corrected", () => {
  const test = { sensitivity: 0.9, specificity: 0.99 };
  const { imperfect } = ask(pools, { groups: [{ positive: 4, pools: 20, size: 10 }], ...test });
  expect(imperfect?.value).toBeCloseTo(0.023728068239, 10);
  expect(imperfect?.low).toBeCloseTo(0.005450172003, 8);
  expect(imperfect?.high).toBeCloseTo(0.063181863577, 8);
  const mixed = { groups: checks.rows[1]?.groups, ...test };
  expect(ask(pools, mixed).imperfect).toBeNull();
  expect(troubles(pools, mixed)).toEqual(["groups: pool-sizes-differ"]);
});

it("names the field that cannot be", () => {
  expect(troubles(pools, { groups: [{ positive: 25, pools: 24, size: 7 }] })).toEqual([
    "groups[0].positive: fields-disagree",
  ]);
  const chance = { ...pools.example, sensitivity: 0.5, specificity: 0.5 };
  expect(troubles(pools, chance)).toEqual(["sensitivity: test-no-better-than-chance"]);
});

it("67 pools of 5 are enough where 70 are printed (epiR manual)", () => {
  const { size, prevalence, sensitivity, enough, reached } = detect.row;
  const answer = ask(poolsToDetect, { size, designPrevalence: prevalence, sensitivity });
  expect([answer.pools, answer.bees]).toEqual([enough, 5 * enough]);
  expect(answer.reached).toBeCloseTo(reached, 10);
  expect(troubles(poolsToDetect, { size: 0, designPrevalence: 0.01, sensitivity })).toEqual(["size: field-unfit"]);
});

it.each(dorfman.rows)("at $prevalence pools of $size take the fewest tests (Dorfman 1943)", (row) => {
  const { size, testsPerBee, bySize } = ask(poolRetest, { prevalence: row.prevalence, sizes: [row.size] });
  expect(size).toBe(row.size);
  expect(testsPerBee).toBeCloseTo(row.testsPerBee, 10);
  expect(bySize[0]?.testsPerBee).toBeCloseTo(row.testsPerBee, 10);
});

it("says when pools save nothing", () => {
  expect(ask(poolRetest, { prevalence: 0.4 }).testsPerBee).toBe(1);
  expect(troubles(poolRetest, { prevalence: 0.4 })).toEqual(["prevalence: pooling-saves-nothing"]);
});

it("a thinned signal: 24 bees in each of 11 pools for 198 (own model and numbers; Python)", () => {
  const { best, bees, sizes } = ask(poolSize, poolSize.example);
  expect([best.size, best.pools, bees]).toEqual([24, 11, 264]);
  expect(best.cost).toBeCloseTo(198, 9);
  expect(Math.min(...sizes.map(({ cost }) => cost))).toBe(best.cost);
  expect(troubles(poolSize, { ...poolSize.example, signal: 0 })).toEqual(["signal: field-unfit"]);
});
