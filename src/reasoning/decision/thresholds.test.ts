/** Thresholds and utilities against check values, and against each other. */
import fc from "fast-check";
import { expect, it } from "vitest";
import golden from "../../../tests/golden/decision-check-values.json" with { type: "json" };
import { expectedUtilities, testThresholds, treatmentThreshold, valueOfKnowingState } from "./thresholds.ts";

const stakes = (row: { benefit: number; harm: number; se: number; sp: number; test_cost: number }) => ({
  benefit: row.benefit,
  harm: row.harm,
  sensitivity: row.se,
  specificity: row.sp,
  testCost: row.test_cost,
});

it.each(golden.thresholds)("[DE1] B $benefit, R $harm, Se $se, Sp $sp, cost $test_cost", (row) => {
  const found = testThresholds(stakes(row));
  expect(found.treatment).toBeCloseTo(row.treat_threshold, 10);
  expect(found.testing).toBeCloseTo(row.testing_threshold, 10);
  expect(found.testTreatment).toBeCloseTo(row.test_treat_threshold, 10);
  expect(found.largestTestCost).toBeCloseTo(row.max_test_cost, 10);
  expect(found.worthTesting).toBe(row.test_ever_useful);
  expect(treatmentThreshold(row)).toBe(found.treatment);
});

it.each(golden.utilities)("[DE1] utilities at $p: best $best", (row) => {
  const found = expectedUtilities({ ...stakes(row), probability: row.p });
  expect(found.wait).toBe(row.none);
  expect(found.testFirst).toBeCloseTo(row.test, 10);
  expect(found.actNow).toBeCloseTo(row.treat, 10);
});

it("[DE1] at each threshold two actions are worth the same, and a test dearer than the largest cost never pays", () => {
  const share = fc.double({ min: 0.05, max: 0.95, noNaN: true });
  const money = fc.double({ min: 0.5, max: 500, noNaN: true });
  fc.assert(
    fc.property(money, money, share, share, share, (benefit, harm, sensitivity, specificity, part) => {
      const base = { benefit, harm, sensitivity, specificity };
      const { largestTestCost, treatment } = testThresholds({ ...base, testCost: 0 });
      fc.pre(largestTestCost > 1e-6 * (benefit + harm));
      const testCost = part * largestTestCost;
      const found = testThresholds({ ...base, testCost });
      const at = (probability: number) => expectedUtilities({ ...base, testCost, probability });
      const scale = benefit + harm;
      expect(Math.abs(at(found.testing).testFirst) / scale).toBeLessThan(1e-10);
      const upper = at(found.testTreatment);
      expect(Math.abs(upper.testFirst - upper.actNow) / scale).toBeLessThan(1e-10);
      expect(Math.abs(at(treatment).actNow) / scale).toBeLessThan(1e-10);
      expect(found.worthTesting).toBe(true);
      expect(testThresholds({ ...base, testCost: largestTestCost * 1.001 }).worthTesting).toBe(false);
    }),
    { seed: 1980, numRuns: 300 },
  );
});

it("[DE2] three states and three actions: −54, −29.5, −24; knowing is worth 10.5", () => {
  const { prior, utilities, expected, best, evpi } = golden.discrete;
  const found = valueOfKnowingState({ chances: prior, utilities });
  for (const [i, each] of expected.entries()) expect(found.expected[i]).toBeCloseTo(each, 10);
  expect(found.best).toBe(best);
  expect(found.evpi).toBeCloseTo(evpi, 10);
});

it("[DE2] knowing is never worth less than nothing, and nothing when one action is best everywhere", () => {
  expect(valueOfKnowingState({ chances: [0.4, 0.6], utilities: [[1, 2], [0, 1]] }).evpi).toBeCloseTo(0, 12); // biome-ignore format: one line
  expect(() => valueOfKnowingState({ chances: [0.4, 0.5], utilities: [[1, 2]] })).toThrow("chances");
  expect(() => valueOfKnowingState({ chances: [0.4, 0.6], utilities: [[1]] })).toThrow("utilities");
  expect(() => testThresholds({ benefit: 0, harm: 1, sensitivity: 1, specificity: 1, testCost: 0 })).toThrow("benefit");
});

it("[DE1] stakes that leave a threshold undefined are refused by name, never answered NaN", () => {
  const base = { benefit: 100, sensitivity: 1, specificity: 1, testCost: 1 };
  expect(() => testThresholds({ ...base, harm: 0 })).toThrow("harm");
  expect(() => testThresholds({ ...base, harm: 10, sensitivity: 0 })).toThrow("sensitivity");
});
