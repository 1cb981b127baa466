/** One wash: value, exact limits, recovery. */
import { expect, it } from "vitest";
import { poisson } from "../../numerics/index.ts";
import { washEstimate } from "./wash.ts";

const of = (wash: Parameters<typeof washEstimate>[0]) => {
  const result = washEstimate(wash);
  if (!result.ok) throw new Error("refused");
  return result.value;
};

it("[BE11] nine mites on 300 bees: 3 per 100, limits where each Poisson tail is 2.5 %", () => {
  const { value, low, high } = of({ mites: 9, bees: 300 });
  expect(value).toBeCloseTo(0.03, 12);
  expect(poisson({ mean: 300 * low }).sf(8)).toBeCloseTo(0.025, 10);
  expect(poisson({ mean: 300 * high }).cdf(9)).toBeCloseTo(0.025, 10);
});

it("[BE11] no mites: from 0 to −ln(0.025) mites in the vial", () => {
  const { value, low, high } = of({ mites: 0, bees: 300 });
  expect([value, low]).toEqual([0, 0]);
  expect(high).toBeCloseTo(-Math.log(0.025) / 300, 12);
});

it("[BE11] a known recovery corrects all three figures; an unknown one is said to be missing", () => {
  const [plain, corrected] = [of({ mites: 9, bees: 300 }), of({ mites: 9, bees: 300, recovery: 2313 / 2343 })];
  for (const key of ["value", "low", "high"] as const) {
    expect(corrected[key]).toBeCloseTo((plain[key] * 2343) / 2313, 12);
  }
  const codes = (recovery?: number) =>
    washEstimate({ mites: 9, bees: 300, ...(recovery === undefined ? {} : { recovery }) }).problems.map((p) => p.code);
  expect(codes()).toEqual(["one-wash-one-vial", "recovery-not-given"]);
  expect(codes(0.9)).toEqual(["one-wash-one-vial"]);
});

it("[BE11] more mites than bees are possible; no bees are not", () => {
  expect(of({ mites: 12, bees: 10 }).value).toBe(1.2);
  expect(washEstimate({ mites: 0, bees: 0 })).toMatchObject({ ok: false, problems: [{ code: "nothing-examined" }] });
  expect(() => washEstimate({ mites: 1, bees: 10, recovery: 0 })).toThrow("recovery");
});
