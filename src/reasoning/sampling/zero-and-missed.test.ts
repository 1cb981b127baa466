/** What a zero leaves possible and what a sample could have missed. */
import { expect, it } from "vitest";
import checks from "../../../tests/golden/detection-check-values.json" with { type: "json" };
import { detectionSampleSize } from "./detection-sample-size.ts";
import { finiteMissedCurve, missedCurve } from "./missed-curve.ts";
import { upperLimitOfZero } from "./upper-limit-of-zero.ts";
import { zeroFound } from "./zero-found.ts";

const high = (examined: number, sides: "one" | "two", sensitivity = 1) => {
  const result = upperLimitOfZero({ examined, level: 0.95, sides, sensitivity });
  return result.ok ? result.value.high : Number.NaN;
};

it.each(checks.upperLimitOfZero)("[SD8] 0 of $examined leaves up to $oneSided or $twoSided", (row) => {
  expect(Math.abs(high(row.examined, "one") - row.oneSided)).toBeLessThan(1e-9);
  expect(Math.abs(high(row.examined, "two") - row.twoSided)).toBeLessThan(1e-9);
});

it("[SD8] 0 of 30 and 0 of 60, two sides: 11.57 % and 5.96 %", () => {
  expect(high(30, "two")).toBeCloseTo(0.1157, 4);
  expect(high(60, "two")).toBeCloseTo(0.0596, 4);
});

it("[SD8] a bench that finds half of them doubles the limit", () => {
  expect(high(50, "one", 0.5)).toBeCloseTo(2 * high(50, "one"), 12);
});

it("[SD8] carries method, level, rule and number, and mirrors the sample size", () => {
  const result = upperLimitOfZero({ examined: 59, level: 0.95, sides: "one", sensitivity: 1 });
  expect(result.ok && result.value).toMatchObject({ value: 0, low: 0, level: 0.95, n: 59, rule: "SD8" });
  // 59 bees are the fewest whose zero rules out 5 %
  expect(detectionSampleSize({ designPrevalence: 0.05, confidence: 0.95, sensitivity: 1 })).toBe(59);
  expect(high(59, "one")).toBeLessThan(0.05);
  expect(high(58, "one")).toBeGreaterThan(0.05);
});

it("[SD8] says so when the zero rules nothing out, and refuses a zero of nothing", () => {
  const one = upperLimitOfZero({ examined: 1, level: 0.95, sides: "one", sensitivity: 0.5 });
  expect(one.ok && one.value.high).toBe(1);
  expect(one.problems[0]).toMatchObject({ code: "zero-rules-nothing-out", severity: "warned" });
  const none = upperLimitOfZero({ examined: 0, level: 0.95, sides: "one", sensitivity: 1 });
  expect(none).toMatchObject({ ok: false, problems: [{ code: "nothing-examined" }] });
});

it("[SD12] twelve bees miss 5 in 100 about 54 times in 100; thirty 21 times", () => {
  const missed = (bees: number) => missedCurve({ bees, sensitivity: 1, prevalences: [0.05] })[0]?.missed;
  expect(missed(12)).toBeCloseTo(0.95 ** 12, 12);
  expect(missed(12)).toBeCloseTo(0.54, 3);
  expect(missed(30)).toBeCloseTo(0.2146, 4);
});

it("[SD12] falls with prevalence, from certain at 0", () => {
  const curve = missedCurve({ bees: 50, sensitivity: 0.9, prevalences: [0, 0.01, 0.1, 0.5, 1] });
  expect(curve[0]?.missed).toBe(1);
  for (let i = 1; i < curve.length; i++) {
    expect(curve[i]?.missed ?? Number.NaN).toBeLessThan(curve[i - 1]?.missed ?? Number.NaN);
  }
});

it("[SD21] 0 of 30 in July with patties 5 weeks: up to 11.6 %, one-sided 9.5 %; misses 5 in 100 21 times; weak", () => {
  const zero = { examined: 30, level: 0.95, sensitivity: 1, designPrevalence: 0.05 } as const;
  const july = zeroFound({ ...zero, season: "summer", treatmentDaysAgo: 0 });
  if (!july.ok) throw new Error("refused");
  expect(july.value.twoSided.high).toBeCloseTo(0.116, 3);
  expect(july.value.oneSided.high).toBeCloseTo(0.095, 3);
  expect(july.value.couldMiss.find(({ prevalence }) => prevalence === 0.05)?.missed).toBeCloseTo(0.21, 2);
  expect(july.value.strength).toBe("weak");
  expect(july.problems.map(({ code }) => code)).toEqual([
    "summer-zero-is-weak",
    "treated-before",
    "too-few-for-design",
  ]);
});

it("[SD21] is strong when enough bees were read in winter without treatment, and not one bee sooner", () => {
  const winter = {
    level: 0.95,
    sensitivity: 1,
    designPrevalence: 0.05,
    season: "winter",
    treatmentDaysAgo: null,
  } as const;
  const strength = (examined: number) => {
    const result = zeroFound({ ...winter, examined });
    return result.ok ? result.value.strength : result.problems[0]?.code;
  };
  expect(strength(59)).toBe("strong");
  expect(strength(58)).toBe("weak");
  expect(strength(0)).toBe("nothing-examined");
  expect(() => zeroFound({ ...winter, examined: 59, treatmentDaysAgo: -1 })).toThrow("treatmentDaysAgo");
});

it("[SD12] a counted group is missed exactly: 95 of 100 with one infested, and a large one as if uncounted", () => {
  const curve = (population: number, examined: number, prevalence: number) => {
    const rows = finiteMissedCurve({ population, examined, sensitivity: 0.9, prevalences: [prevalence] });
    return rows.ok ? rows.value[0]?.missed : null;
  };
  const one = finiteMissedCurve({ population: 100, examined: 95, sensitivity: 1, prevalences: [0.01] });
  expect(one.ok && one.value[0]?.missed).toBeCloseTo(0.05, 12); // the last 5 of 100 left: summed in floating point
  // Drawing 50 of ten million changes the chance by less than 50²/10⁷.
  expect(curve(10_000_000, 50, 0.02)).toBeCloseTo(
    missedCurve({ bees: 50, sensitivity: 0.9, prevalences: [0.02] })[0]?.missed ?? 0,
    4,
  );
  expect(finiteMissedCurve({ population: 10, examined: 11, sensitivity: 1, prevalences: [0.1] })).toMatchObject({
    ok: false,
    problems: [{ code: "examined-exceed-population", field: "examined" }],
  });
});
