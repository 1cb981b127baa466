/** The rule of three against the exact limits, and the shortcut for a small group. */
import { expect, it } from "vitest";
import checks from "../../../tests/golden/detection-check-values.json" with { type: "json" };
import { cannonRoeLimitOfZero, finiteUpperLimitOfZero, limitsOfZero } from "./index.ts";

it.each(checks.upperLimitOfZero)("[SD100] none of $examined", ({ examined, oneSided, twoSided }) => {
  const limits = limitsOfZero({ examined, level: 0.95 });
  if (!limits.ok) throw new Error("no answer");
  expect(limits.value.exactOneSided).toBeCloseTo(oneSided, 9);
  expect(limits.value.exactTwoSided).toBeCloseTo(twoSided, 9);
  expect(limits.value.ruleOfThree).toBe(3 / examined);
  // −ln 0.05 = 2.9957 < 3, and ln(1 − x) < −x: the order holds for every n
  expect(limits.value.exactOneSided).toBeLessThan(limits.value.logShortcut);
  expect(limits.value.logShortcut).toBeLessThan(limits.value.ruleOfThree);
  expect(limits.value.jeffreysOneSided).toBeLessThan(limits.value.exactOneSided);
});

it("[SD100] none of none says nothing", () => {
  expect(limitsOfZero({ examined: 0, level: 0.95 }).problems[0]?.code).toBe("nothing-examined");
});

it("[SD101] none of 20 from 60: 6 exactly, the shortcut 7.02", () => {
  const zero = { population: 60, examined: 20, level: 0.95 };
  expect(finiteUpperLimitOfZero({ ...zero, sensitivity: 1 })).toMatchObject({ value: 6 });
  expect(cannonRoeLimitOfZero(zero)).toBeCloseTo(7.02497120374739, 12);
  expect(() => cannonRoeLimitOfZero({ ...zero, examined: 61 })).toThrow("examined");
});
