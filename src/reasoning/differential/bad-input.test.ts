/** Results that are a slip of the pen, or say less: each is told with what was given and what is expected. */
import { expect, it } from "vitest";
import { type TestFact, tests } from "../../knowledge/index.ts";
import { type DifferentialInput, differential, type TestInput } from "./index.ts";
import { lateResultDays } from "./judgements.ts";

const ask = (given: readonly TestInput[], more: Partial<DifferentialInput> = {}) =>
  differential({ season: "winter", findings: {}, draws: 40, ...more, tests: given });
const told = (...asked: Parameters<typeof ask>) =>
  ask(...asked).problems.map(({ code, severity, field, given, expected }) => [code, severity, field, given, expected]);

it.each([
  [
    { test: "tracheal-dissection", positive: 0, examined: 20, takenFrom: "D", daysSinceControl: 10 },
    "bees dead when taken; 10 days after a control; 20 bees",
    "bees alive when taken; more than 42 days after a control; 30 bees or more",
  ],
  [{ test: "varroa-wash", mites: 0, bees: 300, takenFrom: "F" }, "bees taken from F", "bees taken from S, E, B or D"],
  [{ test: "spore-count", sporesMillionsPerBee: 0, kept: "dry" }, "kept dry", "kept fresh, frozen or in alcohol"],
  [{ test: "bump-test", result: "none-found" }, "winter", "spring, summer or autumn"],
  [{ test: "residue-screen", result: "none-found", daysUntilFrozen: 4 }, "frozen after 4 days", "frozen within 1 day"],
  [{ test: "residue-screen", result: "none-found" }, "days until frozen not given", "frozen within 1 day"],
] as const)("[DX84] %o says less: given %s, expected %s", (test, given, expected) => {
  expect(told([test])).toEqual([["weak-answer", "warned", "tests[0]", given, expected]]);
});

it("[DX84] the sample that decides is told, among the tests as they were given", () => {
  const dry = { test: "tracheal-dissection", positive: 0, examined: 50, kept: "dry" } as const;
  const dead = { test: "tracheal-dissection", positive: 0, examined: 50, aliveWhenTaken: false } as const;
  const few = { test: "tracheal-dissection", positive: 0, examined: 5 } as const;
  expect(told([dry, dead, few]).map(([code, , field, given]) => [code, field, given])).toEqual([
    ["specimen-unfit", "tests[0].kept", "dry"],
    ["weak-answer", "tests[2]", "5 bees"],
  ]);
});

it("[DX85] what is a slip of the pen is refused, with both sides", () => {
  const opened = { test: "tracheal-dissection", positive: 5, examined: 50 } as const;
  expect(told([{ ...opened, unreadable: 500_000 }])).toEqual([
    [
      ...["wrong-value", "blocked", "tests[0].unreadable"],
      ...[500_000, "a whole number, 0 to 1000, beside the 50 bees that could be read"],
    ],
  ]);
  expect(told([{ test: "spore-count", sporesMillionsPerBee: 900 }])).toEqual([
    ["wrong-value", "blocked", "tests[0].sporesMillionsPerBee", 900, "millions of spores a bee, 0 to 500"],
  ]);
  expect(ask([{ ...opened, unreadable: 1000 }]).ok).toBe(true);
  expect(ask([{ test: "spore-count", sporesMillionsPerBee: 500 }]).ok).toBe(true);
});

it("[DX85] a result of long after the look is told, and weighed", () => {
  const look = { season: "summer", date: "2026-07-10", latitude: 45 } as const;
  const on = (date: string) => [{ test: "varroa-wash", mites: 3, bees: 300, date }] as const;
  expect(told(on("2027-01-10"), look)).toEqual([
    ...[["test-after-look", "noted", "tests[0].date", "2027-01-10", "at most 42 days after the look of 2026-07-10"]],
  ]);
  expect(told(on("2026-08-21"), look)).toEqual([]);
  const longest = Math.max(...(Object.values(tests) as TestFact[]).map(({ days }) => days.high));
  expect(lateResultDays).toBe(longest);
});
