/** Every interval for a share under the law kit: those of numerics, and what is made of them. */
import { describe, expect, it } from "vitest";
import * as numerics from "../../src/numerics/index.ts";
import { bench } from "../../src/reasoning/index.ts";
import type { Result } from "../../src/units/index.ts";
import { type IntervalUnderLaw, obeysIntervalLaws } from "./estimators.ts";

const of = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problems.map(({ code }) => code).join(", "));
  return result.value;
};

type Laws = Omit<IntervalUnderLaw, "name" | "interval">;
const close: Laws = { coverage: "on average" };
const sure: Laws = { coverage: "always" };

/** Exported name → rule and laws. Wilson's correction and mid-P lie on the safe side on average, but are not sure. */
const intervals = {
  wilsonInterval: ["NU11", close],
  clopperPearsonInterval: ["NU12", sure],
  jeffreysInterval: ["NU11", close],
  wilsonCorrectedInterval: ["NU103", { coverage: "not below on average" }],
  midPInterval: ["NU103", close],
  likelihoodRatioInterval: ["NU103", close],
  agrestiCoullInterval: ["NU103", { coverage: "not below on average", isCut: true }],
  blakerInterval: ["NU106", { ...sure, isStepped: true }],
  effectiveWilsonInterval: ["NU150", close],
  effectiveClopperPearsonInterval: ["NU150", sure],
} as const satisfies Record<string, readonly [string, Laws]>;

describe("intervals of numerics", () => {
  it("[NU11] no interval that numerics offers is missing here", () => {
    const offered = Object.keys(numerics).filter((name) => name.endsWith("Interval"));
    expect(offered.sort()).toEqual(Object.keys(intervals).sort());
  });

  const offered = new Map(Object.entries(numerics));
  for (const [name, [rule, laws]] of Object.entries(intervals)) {
    const interval = offered.get(name) as IntervalUnderLaw["interval"];
    obeysIntervalLaws({ name: `[${rule}] ${name}`, interval, ...laws });
  }
});

describe("limits made of them", () => {
  const perfect = { sensitivity: 1, specificity: 1 };
  for (const [method, laws] of [
    ["clopperPearson", sure],
    ["blaker", { ...sure, isStepped: true }],
    ["wilson", close],
  ] as const) {
    obeysIntervalLaws({
      name: `[BE103] true prevalence with a perfect test, ${method}`,
      interval: ({ x, n, level }) => of(bench.truePrevalence({ positive: x, examined: n, level, ...perfect }))[method],
      ...laws,
    });
  }

  for (const [method, laws] of [
    ["clopper-pearson", sure],
    ["blaker", { ...sure, isStepped: true }],
    ["mid-p", close],
    ["wilson", close],
    ["jeffreys", close],
  ] as const) {
    obeysIntervalLaws({
      name: `[BE111] pools of one bee, ${method}`,
      interval: ({ x, n, level }) =>
        of(bench.equalPoolLimits({ groups: [{ size: 1, pools: n, positive: x }], method, level })),
      ...laws,
    });
  }
});
