/** None found: the exact limits, the shortcuts beside them, and the group that is counted. */
import { expect, it } from "vitest";
import checks from "../../../tests/golden/detection-check-values.json" with { type: "json" };
import { noneFound } from "./none-found.ts";
import type { AnswerOf } from "./verb.ts";

const ask = (raw: object): AnswerOf<typeof noneFound> => {
  const reply = noneFound.ask(raw);
  if (reply.kind !== "answered") throw new Error(JSON.stringify(reply.problems));
  return reply.value as AnswerOf<typeof noneFound>;
};

it.each(checks.upperLimitOfZero)("none of $examined leaves up to $oneSided or $twoSided (Python, R)", (row) => {
  const { oneSided, twoSided, approximations } = ask({ examined: row.examined, sensitivity: 1 });
  expect(oneSided.high).toBeCloseTo(row.oneSided, 9);
  expect(twoSided.high).toBeCloseTo(row.twoSided, 9);
  expect(approximations.ruleOfThree).toBe(3 / row.examined);
  expect(approximations.logShortcut).toBeGreaterThan(oneSided.high);
});

it("a bench that finds half doubles the limit, the shortcuts stay those of a perfect one", () => {
  const [half, all] = [ask({ examined: 50, sensitivity: 0.5 }), ask({ examined: 50, sensitivity: 1 })];
  expect(half.oneSided.high).toBeCloseTo(2 * all.oneSided.high, 12);
  expect(half.approximations).toEqual(all.approximations);
});

it("none of 20 from 60 leaves 6, by the shortcut 7.025 (own numbers, by Python)", () => {
  const { ofCounted } = ask({ examined: 20, sensitivity: 1, population: 60 });
  expect(ofCounted?.infested).toBe(6);
  expect(ofCounted?.share).toBe(0.1);
  expect(ofCounted?.cannonRoe).toBeCloseTo(7.0249712, 7);
});

it("says that nothing was corrected, and that so few rule nothing out", () => {
  const codes = (raw: object) => noneFound.ask(raw).problems.map(({ code }) => code);
  expect(codes({ examined: 50 })).toEqual(["sensitivity-not-given"]);
  expect(codes({ examined: 2, sensitivity: 0.5 })).toEqual(["zero-rules-nothing-out"]);
});

it("names the field that cannot be", () => {
  const fields = (raw: object) => noneFound.ask(raw).problems.map(({ code, field }) => `${field}: ${code}`);
  expect(fields({ examined: 0 })).toEqual(["examined: field-unfit"]);
  expect(fields({ examined: 61, population: 60 })).toEqual(["examined: examined-exceed-population"]);
});
