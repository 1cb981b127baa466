/** Pool designs: printed cases, brute force over sizes and over what a pool holds. */
import fc from "fast-check";
import { expect, it } from "vitest";
import dorfman from "../../../tests/golden/dorfman-1943.json" with { type: "json" };
import printed from "../../../tests/golden/epir-manual-pools.json" with { type: "json" };
import { binomial } from "../../numerics/index.ts";
import { detectionSampleSize, dorfmanPools, poolDilution, poolsToDetect } from "./index.ts";

it("[SD109] 67 pools of 5 are enough where 70 are printed, 66 are not", () => {
  const { enough, reached, printed: shown, ...wanted } = printed.row;
  const design = poolsToDetect(wanted);
  expect(design.pools).toBe(enough);
  expect(design.reached).toBeCloseTo(reached, 12);
  const missedByOne = 1 - wanted.sensitivity * (1 - (1 - wanted.prevalence) ** wanted.size);
  expect(1 - missedByOne ** (enough - 1)).toBeLessThan(0.95);
  expect(1 - missedByOne ** shown).toBeGreaterThan(0.95);
});

it("[SD109] pools of one bee are bees", () => {
  const design = { confidence: 0.95, sensitivity: 0.8 };
  expect(poolsToDetect({ size: 1, prevalence: 0.05, ...design }).pools).toBe(
    detectionSampleSize({ designPrevalence: 0.05, ...design }),
  );
  expect(() => poolsToDetect({ size: 0, prevalence: 0.05, ...design })).toThrow("size");
});

it.each(dorfman.rows)("[SD110] at $prevalence pools of $size", ({ prevalence, size, testsPerBee }) => {
  const found = dorfmanPools({ prevalence });
  if (!found.ok) throw new Error("no answer");
  expect(found.value.size).toBe(size);
  expect(found.value.testsPerBee).toBeCloseTo(testsPerBee, 10);
  for (let other = 2; other <= 60; other += 1) {
    const tests = 1 / other + 1 - (1 - prevalence) ** other;
    expect(tests).toBeGreaterThanOrEqual(found.value.testsPerBee - 1e-15);
  }
});

it("[SD110] beyond 1 − 3^(−1/3) = 0.3066 pools save nothing", () => {
  const at = (prevalence: number) => dorfmanPools({ prevalence });
  expect(at(0.306).problems).toEqual([]);
  expect(at(0.307).problems[0]?.code).toBe("pooling-saves-nothing");
  expect(at(0.307)).toMatchObject({ ok: true, value: { size: 3, testsPerBee: 1 } });
});

const priced = { confidence: 0.95, costPerPool: 12, costPerBee: 0.25 };

it("[SD111] the chance to react is the sum over the infested bees in the pool", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.001, max: 0.9, noNaN: true }),
      fc.double({ min: 0.1, max: 100, noNaN: true }),
      (prevalence, signal) => {
        const { sizes, limit } = poolDilution({ prevalence, signal, ...priced, largest: 40 });
        let before = 0;
        for (const { size, reacts } of sizes) {
          const { pmf } = binomial({ n: size, p: prevalence });
          let sum = 0;
          for (let j = 1; j <= size; j += 1) sum += pmf(j) * (1 - Math.exp((-signal * j) / size));
          expect(reacts).toBeCloseTo(sum, 12);
          expect(reacts).toBeGreaterThanOrEqual(before - 1e-15);
          expect(reacts).toBeLessThanOrEqual(limit + 1e-15);
          before = reacts;
        }
      },
    ),
    { seed: 1943, numRuns: 50 },
  );
});

it("[SD112] no size is cheaper; equal costs go to the smaller", () => {
  const { best, sizes } = poolDilution({ prevalence: 0.02, signal: 20, ...priced });
  expect(best).toMatchObject({ size: 24, pools: 11, cost: 198 });
  for (const { size, cost } of sizes) {
    expect(cost).toBeGreaterThanOrEqual(best.cost);
    if (size < best.size) expect(cost).toBeGreaterThan(best.cost);
  }
  // 48 pools of 5 or 44 of 6 for 528 each.
  const tied = poolDilution({ prevalence: 0.02, signal: 5, confidence: 0.95, costPerPool: 6, costPerBee: 1 });
  expect(tied.best).toMatchObject({ size: 5, pools: 48, cost: 528 });
  expect(tied.sizes[5]).toMatchObject({ size: 6, pools: 44, cost: 528 });
  const cents = poolDilution({ prevalence: 0.02, signal: 5, confidence: 0.95, costPerPool: 0.6, costPerBee: 0.1 });
  expect(cents.best.size).toBe(5);
  // Bees for nothing: the smallest size that needs the fewest pools.
  const free = poolDilution({ prevalence: 0.02, signal: 20, ...priced, costPerBee: 0 });
  expect(free.best.pools).toBe(Math.min(...free.sizes.map(({ pools }) => pools)));
  expect(free.sizes[free.best.size - 2]?.pools).toBeGreaterThan(free.best.pools);
});
