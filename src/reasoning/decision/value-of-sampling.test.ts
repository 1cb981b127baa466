/** Worth of a sample against check values, its bounds, and a second way by direct summation. */
import fc from "fast-check";
import { expect, it } from "vitest";
import golden from "../../../tests/golden/decision-check-values.json" with { type: "json" };
import { beta, betaBinomial, integral } from "../../numerics/index.ts";
import { valueOfSampling } from "./value-of-sampling.ts";

const { sampling, imperfect } = golden;
const base = {
  belief: { a: sampling.a, b: sampling.b },
  lossAtFull: sampling.loss_per_p,
  actCost: sampling.cost_treat,
  costPerBee: sampling.cost_per_unit,
  fixedCost: sampling.cost_fixed,
};

it("[DE4] Beta(2, 18), L 300, C 45: now 30, knowing 3.2147611, best size of the list 30", () => {
  const found = valueOfSampling({ ...base, sizes: sampling.ns });
  expect(found.priorMean).toBeCloseTo(sampling.prior_mean, 12);
  expect(found.lossNow).toBeCloseTo(sampling.loss_now, 10);
  expect(found.threshold).toBeCloseTo(sampling.threshold_p, 12);
  expect(Math.abs(found.evpi - sampling.evpi)).toBeLessThan(1e-9);
  expect(found.bestSize).toBe(sampling.best_n);
});

it.each(sampling.rows)("[DE4] $n bees are worth $evsi, act from $treat_if_x_ge, net $engs", (row) => {
  const found = valueOfSampling({ ...base, sizes: [row.n] }).rows[0];
  expect(Math.abs((found?.evsi ?? Number.NaN) - row.evsi)).toBeLessThan(1e-9);
  expect(Math.abs((found?.net ?? Number.NaN) - row.engs)).toBeLessThan(1e-9);
  expect(found?.actFrom).toBe(row.treat_if_x_ge);
});

it("[DE4] an imperfect bench, against integration", () => {
  const found = valueOfSampling({
    ...base,
    sizes: [imperfect.n],
    sensitivity: imperfect.se,
    specificity: imperfect.sp,
  });
  expect(Math.abs((found.rows[0]?.evsi ?? Number.NaN) - imperfect.evsi)).toBeLessThan(1e-5);
});

it("[DE4] a second way: posterior means for a perfect test, quadrature for an imperfect one", () => {
  const [a, b, n, loss, cost] = [0.7, 5, 12, 200, 22];
  const belief = { a, b };
  const worth = (sensitivity: number, specificity: number) =>
    valueOfSampling({
      belief,
      lossAtFull: loss,
      actCost: cost,
      sizes: [n],
      costPerBee: 0,
      fixedCost: 0,
      sensitivity,
      specificity,
    }).rows[0]?.evsi;
  const now = Math.min(cost, (loss * a) / (a + b));
  let perfect = now;
  const truth = betaBinomial({ n, a, b });
  for (let x = 0; x <= n; x++) perfect -= truth.pmf(x) * Math.min(cost, (loss * (a + x)) / (a + b + n));
  expect(worth(1, 1)).toBeCloseTo(perfect, 9);

  const [se, sp] = [0.8, 0.95];
  const density = beta({ a: a + 1, b }); // p·Beta(a, b) ∝ Beta(a + 1, b): no infinity at 0
  const choose = (x: number) => {
    let c = 1;
    for (let i = 0; i < x; i++) c *= (n - i) / (i + 1);
    return c;
  };
  let imperfectWorth = now;
  for (let x = 0; x <= n; x++) {
    const likelihood = (p: number) => {
      const theta = p * se + (1 - p) * (1 - sp);
      return choose(x) * theta ** x * (1 - theta) ** (n - x);
    };
    const mean = a / (a + b);
    const lossPart =
      loss * mean * integral({ f: (p) => likelihood(p) * density.pdf(p), low: 0, high: 1, relative: 1e-10 }).value;
    // chance of x: substitute p = u^(1/a) to take the infinity at 0 away
    const b0 = beta({ a, b });
    const chance = integral({
      f: (u) => {
        const p = u ** (1 / a);
        return p === 0 ? 0 : (likelihood(p) * b0.pdf(p) * p) / (a * u);
      },
      low: 0,
      high: 1,
      relative: 1e-10,
    }).value;
    imperfectWorth -= Math.min(cost * chance, lossPart);
  }
  expect(worth(se, sp)).toBeCloseTo(imperfectWorth, 6);
});

it("[DE4] never worth less than nothing, never more than knowing, never less with more bees", () => {
  for (const belief of [
    { a: 0.5, b: 0.5 },
    { a: 3, b: 3 },
    { a: 1, b: 40 },
  ]) {
    // biome-ignore format: short
    for (const [sensitivity, specificity] of [[1, 1], [0.8, 0.97]] as const) { // biome-ignore format: short
      const found = valueOfSampling({
        ...base,
        belief,
        sizes: [1, 2, 3, 5, 8, 13, 21, 34, 55],
        sensitivity,
        specificity,
      });
      let before = 0;
      for (const { evsi } of found.rows) {
        expect(evsi).toBeGreaterThanOrEqual(before - 1e-10);
        expect(evsi).toBeLessThanOrEqual(found.evpi + 1e-10);
        before = evsi;
      }
    }
  }
  const many = valueOfSampling({ ...base, sizes: [900] });
  expect(many.evpi - (many.rows[0]?.evsi ?? 0)).toBeLessThan(0.1); // tends to knowing
});

it("[DE4] whatever is believed, asked and priced: 0 to the worth of knowing, rising with bees towards it", () => {
  const shape = fc.double({ min: 0.2, max: 30, noNaN: true });
  const chance = fc.double({ min: 0.6, max: 1, noNaN: true });
  const cost = fc.double({ min: 0.5, max: 300, noNaN: true });
  fc.assert(
    fc.property(shape, shape, chance, chance, cost, (a, b, sensitivity, specificity, actCost) => {
      const { evpi, rows } = valueOfSampling({
        ...base,
        belief: { a, b },
        actCost,
        sizes: [0, 1, 2, 4, 8, 16, 32, 64, 128],
        sensitivity,
        specificity,
      });
      const slack = 1e-9 * base.lossAtFull; // sums of up to 129 terms of that size
      for (const [i, { evsi }] of rows.entries()) {
        expect(evsi).toBeGreaterThanOrEqual((rows[i - 1]?.evsi ?? 0) - slack);
        expect(evsi).toBeLessThanOrEqual(evpi + slack);
      }
      // A perfect test of 1000 bees leaves a spread of the share below 0.016, and so at most a part of that of the loss.
      const many = valueOfSampling({ ...base, belief: { a, b }, actCost, sizes: [1000] });
      expect(evpi - (many.rows[0]?.evsi ?? 0)).toBeLessThan(0.016 * base.lossAtFull * 0.1);
    }),
    { seed: 1961, numRuns: 40 },
  );
});

it("[DE202] prices that are no numbers and a bench that tells nothing are refused by name", () => {
  for (const [wrong, named] of [
    [{ costPerBee: Number.NaN }, "costPerBee"],
    [{ fixedCost: -1 }, "fixedCost"],
    [{ sensitivity: 2 }, "sensitivity"],
    [{ sensitivity: 0.3, specificity: 0.6 }, "sensitivity"],
  ] as const) {
    expect(() => valueOfSampling({ ...base, sizes: [5], ...wrong })).toThrow(`${named} must be`);
  }
});

it("[DE4] refuses what makes no sense", () => {
  expect(() => valueOfSampling({ ...base, sizes: [] })).toThrow("sizes");
  expect(() => valueOfSampling({ ...base, sizes: [1.5] })).toThrow("sizes");
  expect(() => valueOfSampling({ ...base, belief: { a: 0, b: 1 }, sizes: [1] })).toThrow("belief.a");
});

it("[DE4] at an exact tie nobody acts: Beta(2, 18) with x of n bees has the mean 0.15 of the threshold", () => {
  for (let bees = 20; bees <= 200; bees += 20) {
    const tied = 0.15 * (20 + bees) - 2; // a whole number for these n
    expect(valueOfSampling({ ...base, sizes: [bees] }).rows[0]?.actFrom).toBe(Math.round(tied) + 1);
  }
  // here the two sides differ in the last bit: without slack 4 of 15 would act
  const rounded = valueOfSampling({ ...base, belief: { a: 1, b: 9 }, lossAtFull: 10, actCost: 2, sizes: [15, 20, 50] });
  expect(rounded.rows.map(({ actFrom }) => actFrom)).toEqual([5, 6, 12]);
});
