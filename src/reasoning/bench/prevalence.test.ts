/** Intervals of a share against print, check values, exact coverage and the laws of estimators. */
import { expect, it } from "vitest";
import newcombe from "../../../tests/golden/newcombe-1998-table-1.json" with { type: "json" };
import checks from "../../../tests/golden/proportion-interval-check-values.json" with { type: "json" };
import { obeysEstimatorLaws } from "../../../tests/laws/estimators.ts";
import { type PrevalenceMethod, prevalence, prevalenceMethods } from "./prevalence.ts";

const limits = (row: { positive: number; examined: number; method: string }) => {
  const result = prevalence({ ...row, method: row.method as PrevalenceMethod });
  if (!result.ok) throw new Error("refused");
  return result.value;
};

it.each(newcombe.intervals)("[BE5] $positive/$examined by $method as printed: $low to $high", (row) => {
  expect(limits(row).low).toBeCloseTo(row.low, 4);
  expect(limits(row).high).toBeCloseTo(row.high, 4);
});

it.each(checks.intervals)("[BE5] $positive/$examined by $method in full digits", (row) => {
  expect(Math.abs(limits(row).low - row.low)).toBeLessThan(1e-8);
  expect(Math.abs(limits(row).high - row.high)).toBeLessThan(1e-8);
});

it.each(checks.percent)("[BE5] $positive/$examined by $method: $low to $high %", (row) => {
  const half = 0.5 * 10 ** -row.digits + 1e-9; // half a unit of the last printed digit
  expect(Math.abs(100 * limits(row).low - row.low)).toBeLessThanOrEqual(half);
  expect(Math.abs(100 * limits(row).high - row.high)).toBeLessThanOrEqual(half);
});

it.each(checks.coverage)("[BE5] $method covers $prevalence in $coverage of samples of $examined", (row) => {
  let [covered, chance] = [0, (1 - row.prevalence) ** row.examined];
  for (let positive = 0; positive <= row.examined; positive++) {
    const { low, high } = limits({ positive, examined: row.examined, method: row.method });
    if (low <= row.prevalence && row.prevalence <= high) covered += chance;
    chance *= ((row.examined - positive) / (positive + 1)) * (row.prevalence / (1 - row.prevalence));
  }
  expect(Math.abs(covered - row.coverage)).toBeLessThan(1e-9);
});

const promises: Readonly<Record<PrevalenceMethod, Parameters<typeof obeysEstimatorLaws>[0]["coverage"]>> = {
  "clopper-pearson": "always",
  blaker: "always",
  "mid-p": "on average",
  wilson: "on average",
  "wilson-corrected": "not below on average",
  "agresti-coull": "not below on average",
  "likelihood-ratio": "on average",
  jeffreys: "on average",
};
for (const method of prevalenceMethods) {
  obeysEstimatorLaws({
    name: `[BE5] ${method}`,
    estimate: ({ x, n, level }) => prevalence({ positive: x, examined: n, level, method }),
    coverage: promises[method],
    ...(method === "agresti-coull" ? { isCut: true } : {}),
    ...(method === "blaker" ? { isStepped: true } : {}),
  });
}

it("[BE5] is Clopper–Pearson at 95 % unless told otherwise, and says which and by what rule", () => {
  expect(prevalence({ positive: 9, examined: 50 })).toMatchObject({
    ok: true,
    value: { value: 0.18, level: 0.95, method: "clopper-pearson", interval: "confidence", rule: "BE5", n: 50 },
  });
  expect(prevalence({ positive: 9, examined: 50, method: "jeffreys" })).toMatchObject({
    value: { interval: "credible" },
  });
});

it("[BE5] refuses more positives than bees, and no bees", () => {
  expect(prevalence({ positive: 34, examined: 30 })).toMatchObject({
    ok: false,
    problems: [{ code: "positives-exceed-examined", slots: { positive: 34, examined: 30 } }],
  });
  expect(prevalence({ positive: 0, examined: 0 })).toMatchObject({
    ok: false,
    problems: [{ code: "nothing-examined" }],
  });
  expect(() => prevalence({ positive: 1.5, examined: 3 })).toThrow("positive");
  expect(() => prevalence({ positive: 1, examined: 3, level: 1 })).toThrow("level");
});

it("[BE12] says that an interval is that of a stopped sample: 0 of 13 gives 0 to 24.7 %", () => {
  const result = prevalence({ positive: 0, examined: 13, stoppedEarly: true });
  expect(result.problems).toMatchObject([{ code: "stopped-early", severity: "warned" }]);
  expect(result.ok && result.value.high).toBeCloseTo(0.247, 3);
  expect(prevalence({ positive: 0, examined: 13 }).problems).toEqual([]);
});
