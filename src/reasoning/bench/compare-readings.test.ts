/** Two readers: the held result, the difference that is chance, the difference that does not matter. */
import { expect, it } from "vitest";
import { compareReadings, mcnemarExact } from "./compare-readings.ts";

const of = (readings: Parameters<typeof compareReadings>[0]) => {
  const result = compareReadings(readings);
  if (!result.ok) throw new Error("refused");
  return { ...result.value, codes: result.problems.map(({ code }) => code) };
};
const share = (positive: number, examined = 50) => ({ positive, examined });

it("[BE14] 3 of 50 and 14 of 50 across a border of 10 %: a third reader", () => {
  const found = of({ first: share(3), second: share(14), border: 0.1 });
  expect(found).toMatchObject({
    method: "fisher",
    classesDiffer: true,
    thirdReader: true,
    codes: ["readers-disagree"],
  });
  expect(found.pValue).toBeLessThan(0.01);
});

it("[BE14] a difference of chance across the border, or a real one on one side of it, holds nothing", () => {
  expect(of({ first: share(4), second: share(6), border: 0.1 })).toMatchObject({
    classesDiffer: true,
    thirdReader: false,
    codes: [],
  });
  expect(of({ first: share(10), second: share(30), border: 0.1 })).toMatchObject({
    classesDiffer: false,
    thirdReader: false,
  });
});

it("[BE14] bee by bee McNemar finds what the totals cannot", () => {
  const totals = { first: share(3), second: share(9), border: 0.1 };
  expect(of(totals).thirdReader).toBe(false);
  const paired = of({ ...totals, onlyFirst: 0, onlySecond: 6 });
  expect(paired).toMatchObject({ method: "mcnemar-exact", thirdReader: true });
  expect(paired.pValue).toBeCloseTo(2 / 64, 12);
});

it("[BE14] 1 against 9 gives .021484375; none differing gives 1; even gives 1", () => {
  expect(mcnemarExact(1, 9)).toBeCloseTo(0.021484375, 12);
  expect(mcnemarExact(0, 0)).toBe(1);
  expect(mcnemarExact(4, 4)).toBe(1);
  expect(() => mcnemarExact(-1, 4)).toThrow("onlyFirst");
});

it("[BE14] refuses impossible counts", () => {
  expect(compareReadings({ first: share(0, 0), second: share(1), border: 0.1 }).problems[0]?.code).toBe(
    "nothing-examined",
  );
  expect(compareReadings({ first: share(51), second: share(1), border: 0.1 }).problems[0]?.code).toBe(
    "positives-exceed-examined",
  );
  expect(() => compareReadings({ first: share(1), second: share(1), border: 1 })).toThrow("border");
});
