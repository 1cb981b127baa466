/** Small groups: printed rows, check values, brute force over all draws, ties and designs out of reach. */
import fc from "fast-check";
import { expect, it } from "vitest";
import cannonRoe from "../../../tests/golden/cannon-roe-1982-table-1.json" with { type: "json" };
import checks from "../../../tests/golden/detection-check-values.json" with { type: "json" };
import { logFactorial } from "../../numerics/index.ts";
import { cannonRoeSize, macDiarmidSize, shortcutSizes } from "./approximations.ts";
import { detectionSampleSize } from "./detection-sample-size.ts";
import { finiteDetectionProbability, finiteDetectionSampleSize, finiteUpperLimitOfZero } from "./finite-population.ts";

const value = <T>(result: { readonly ok: boolean; readonly value?: T }): T => {
  if (!result.ok || result.value === undefined) throw new Error(`no answer: ${JSON.stringify(result)}`);
  return result.value;
};

it.each(cannonRoe.finite)("[SD6] N = $population, D = $infested needs $examined", (row) => {
  expect(value(finiteDetectionSampleSize({ ...row, confidence: 0.95, sensitivity: 1 }))).toBe(row.examined);
  expect(cannonRoeSize({ ...row, confidence: 0.95 })).toBeCloseTo(row.shortcut, 9);
});

it.each(checks.finite)("[SD6] N = $population, D = $infested, Se $sensitivity: $reached and no more", (row) => {
  expect(value(finiteDetectionSampleSize({ ...row, confidence: 0.95 }))).toBe(row.examined);
  expect(Math.abs(value(finiteDetectionProbability(row)) - row.reached)).toBeLessThan(1e-9);
  const oneFewer = value(finiteDetectionProbability({ ...row, examined: row.examined - 1 }));
  expect(Math.abs(oneFewer - row.oneFewer)).toBeLessThan(1e-9);
});

it("[SD6] agrees with counting every possible draw of a group of nine", () => {
  const population = 9;
  for (let infested = 0; infested <= population; infested++) {
    for (const sensitivity of [0.3, 0.85, 1]) {
      for (let examined = 0; examined <= population; examined++) {
        let [draws, none] = [0, 0];
        for (let mask = 0; mask < 2 ** population; mask++) {
          const drawn = mask.toString(2).replaceAll("0", "").length;
          if (drawn !== examined) continue;
          const hit = (mask & (2 ** infested - 1)).toString(2).replaceAll("0", "").length;
          draws += 1;
          none += (1 - sensitivity) ** hit;
        }
        const found = value(finiteDetectionProbability({ population, infested, sensitivity, examined }));
        expect(found).toBeCloseTo(1 - none / draws, 13);
      }
    }
  }
});

it("[SD7] trap: an exact tie counts as reached: 1 infested in 100 needs 95, where rounding would ask for 96", () => {
  const design = { population: 100, infested: 1, confidence: 0.95 };
  expect(value(finiteDetectionSampleSize({ ...design, sensitivity: 1 }))).toBe(95);
  // By logarithms of factorials, and without slack, the chance of none among 95 comes out above 1 − 0.95.
  const log = (drawn: number) =>
    logFactorial(99) - logFactorial(99 - drawn) - logFactorial(100) + logFactorial(100 - drawn);
  expect(Math.exp(log(95))).toBeGreaterThan(1 - 0.95);
  expect(Math.exp(log(95)) / 0.05 - 1).toBeLessThan(1e-12);
  // one in N needs c·N exactly, whatever N
  for (let n = 20; n <= 2000; n += 20) {
    expect(value(finiteDetectionSampleSize({ ...design, population: n, sensitivity: 1 }))).toBe(0.95 * n);
  }
  // and c·N/Se with an imperfect bench: 0.9·80/0.96 = 75
  expect(value(finiteDetectionSampleSize({ population: 80, infested: 1, confidence: 0.9, sensitivity: 0.96 }))).toBe(
    75,
  );
});

it("[SD9] says how far a design can get that even every bee cannot reach", () => {
  const result = finiteDetectionSampleSize({ population: 30, infested: 1, confidence: 0.95, sensitivity: 0.8 });
  expect(result.ok).toBe(false);
  expect(result.problems).toHaveLength(1);
  expect(result.problems[0]?.code).toBe("confidence-out-of-reach");
  expect(result.problems[0]?.slots.reachable).toBeCloseTo(0.8, 12);
});

it("[SD9] refuses counts that cannot be", () => {
  const base = { population: 10, infested: 11, sensitivity: 1 };
  expect(finiteDetectionSampleSize({ ...base, confidence: 0.9 }).problems[0]?.code).toBe("infested-exceed-population");
  expect(finiteDetectionProbability({ ...base, examined: 2 }).problems[0]?.code).toBe("infested-exceed-population");
  expect(finiteDetectionProbability({ ...base, infested: 1, examined: 11 }).problems[0]?.code).toBe(
    "examined-exceed-population",
  );
  expect(finiteDetectionSampleSize({ ...base, infested: 0, confidence: 0.9 }).problems[0]?.code).toBe(
    "nothing-to-detect",
  );
  expect(() => finiteDetectionProbability({ ...base, infested: 1.5, examined: 2 })).toThrow("infested");
});

it("[SD6] is enough, and one fewer is not; never more than the large-colony size of the same share", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 400 }),
      fc.double({ min: 0.01, max: 1, noNaN: true }),
      fc.double({ min: 0.5, max: 0.99, noNaN: true }),
      fc.double({ min: 0.3, max: 1, noNaN: true }),
      (population, share, confidence, sensitivity) => {
        const infested = Math.max(1, Math.round(share * population));
        const result = finiteDetectionSampleSize({ population, infested, confidence, sensitivity });
        const at = (examined: number) =>
          value(finiteDetectionProbability({ population, infested, sensitivity, examined }));
        if (!result.ok) {
          expect(at(population)).toBeLessThan(confidence);
          return;
        }
        expect(at(result.value)).toBeGreaterThanOrEqual(confidence - 1e-11);
        expect(at(result.value - 1)).toBeLessThan(confidence);
        const large = detectionSampleSize({ designPrevalence: infested / population, confidence, sensitivity });
        expect(result.value).toBeLessThanOrEqual(large);
      },
    ),
    { seed: 1982, numRuns: 300 },
  );
});

it("[SD6] stays right where single terms underflow", () => {
  // population so large that drawing is as good as independent
  const found = value(finiteDetectionProbability({ population: 1e9, infested: 5e8, sensitivity: 0.01, examined: 600 }));
  expect(found).toBeCloseTo(1 - (1 - 0.005) ** 600, 5);
});

it("[SD10] none of 20 from 60 colonies leaves 6 possible, and 7 not", () => {
  expect(value(finiteUpperLimitOfZero({ population: 60, examined: 20, level: 0.95, sensitivity: 1 }))).toBe(6);
  const none = (infested: number) =>
    1 - value(finiteDetectionProbability({ population: 60, infested, sensitivity: 1, examined: 20 }));
  expect(none(6)).toBeGreaterThanOrEqual(0.05);
  expect(none(7)).toBeLessThan(0.05);
  expect(value(finiteUpperLimitOfZero({ population: 60, examined: 60, level: 0.95, sensitivity: 1 }))).toBe(0);
  expect(finiteUpperLimitOfZero({ population: 60, examined: 0, level: 0.95, sensitivity: 1 }).ok).toBe(false);
  expect(finiteUpperLimitOfZero({ population: 6, examined: 7, level: 0.95, sensitivity: 1 }).ok).toBe(false);
});

it.each(cannonRoe.shortcutOnly)("[SD11] the shortcut for N = $population prints $printed", (row) => {
  expect(cannonRoeSize(row)).toBeCloseTo(row.shortcut, 9);
  expect(Math.ceil(cannonRoeSize(row))).toBe(row.printed);
});

it.each(checks.macDiarmid)("[SD11] the shortcut with Se for N = $population prints $printed", (row) => {
  expect(Math.ceil(macDiarmidSize(row))).toBe(row.printed);
});

it("[SD11] trap: the shortcuts are approximations: Cannon and Roe's can be off by one, MacDiarmid's by more", () => {
  let off = 0;
  for (let infested = 1; infested <= 40; infested++) {
    const exact = value(finiteDetectionSampleSize({ population: 80, infested, confidence: 0.95, sensitivity: 1 }));
    const gap = Math.abs(Math.ceil(cannonRoeSize({ population: 80, infested, confidence: 0.95 })) - exact);
    expect(gap).toBeLessThanOrEqual(1);
    off += gap;
  }
  expect(off).toBeGreaterThan(0);
  // MacDiarmid's is farther off: 140 where 138 are enough.
  const wide = { population: 1000, infested: 20, confidence: 0.95, sensitivity: 1 };
  expect(value(finiteDetectionSampleSize(wide))).toBe(138);
  expect(shortcutSizes(wide)).toEqual({ cannonRoe: 138, macDiarmid: 140 });
});
