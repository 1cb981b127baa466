/** Results told of a specimen that cannot hold the answer: from elsewhere in the hive, or of a colony dead by then. */
import { describe, expect, it } from "vitest";
import { needsLiveBees, type TestFact, tests } from "../../knowledge/index.ts";
import { type DifferentialInput, differential, type TestInput } from "./index.ts";

const ask = (given: readonly TestInput[], more: Partial<DifferentialInput> = {}) => {
  const result = differential({ season: "summer", findings: {}, draws: 40, ...more, tests: given });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result;
};

describe("from elsewhere in the hive", () => {
  const fromNowhere = ask([]).value;
  const madeOnComb = (Object.values(tests) as TestFact[]).flatMap(({ id, places }) => (places ? [id] : []));

  it("[DX82] the tests that are made on comb are these", () => {
    expect(madeOnComb.sort()).toEqual(
      [
        ...["uncap-brood", "bump-test", "rope-test", "milk-test", "afb-strip", "efb-strip"],
        ...["smear-microscopy", "test-frame"],
      ].sort(),
    );
  });

  it.each([
    [{ test: "efb-strip", result: "found", takenFrom: "D", kept: "dry" }, "bees found dead (D)"],
    [{ test: "afb-strip", result: "found", takenFrom: "F" }, "the entrance (F)"],
    [{ test: "rope-test", result: "none-found", takenFrom: "F" }, "the entrance (F)"],
  ] as const)("[DX82] %o counts for nothing, given and expected are named", (test, given) => {
    const { value, problems } = ask([test]);
    expect(problems).toEqual([
      expect.objectContaining({
        code: "specimen-unfit",
        severity: "warned",
        field: "tests[0].takenFrom",
        given,
        expected: "the super (S), the honey edge (E) or the brood (B)",
      }),
    ]);
    expect(value.conditions).toEqual(fromNowhere.conditions);
  });

  it("[DX82] brood strays: from brood, the edge or a super a strip is weighed without a word", () => {
    for (const takenFrom of ["S", "E", "B"] as const) {
      const { value, problems } = ask([{ test: "efb-strip", result: "found", takenFrom }]);
      expect(problems).toEqual([]);
      expect(value.conditions[0]?.id).toBe("european_foulbrood");
    }
  });

  it("[DX25] a find that must be reported is to be reported all the same", () => {
    const { value } = ask([{ test: "afb-strip", result: "found", takenFrom: "F" }]);
    expect(value.mustNotMiss).toEqual([expect.objectContaining({ condition: "american_foulbrood", report: true })]);
  });
});

describe("of a dead colony", () => {
  const dead = {
    date: "2026-07-10",
    latitude: 45,
    season: "summer",
    colony: { state: "dead", daysSinceDeath: 10 },
  } as const;
  const undated = { season: "summer", colony: { state: "dead" } } as const;
  const frame = { test: "test-frame", result: "found" } as const;
  const told = (given: TestInput, more: Partial<DifferentialInput>) =>
    ask([given], more).problems.map(({ code, field, given: was }) => [code, field, was]);

  it("[DX83] what only live bees allow counts for nothing, and is told", () => {
    expect(told(frame, undated)).toEqual([["test-needs-live-bees", "tests[0].date", null]]);
    expect(told({ ...frame, date: "2026-07-01" }, dead)).toEqual([
      ["test-needs-live-bees", "tests[0].date", "2026-07-01"],
    ]);
    expect(ask([frame], undated).value.conditions).toEqual(ask([], undated).value.conditions);
    for (const test of [
      { test: "bump-test", result: "none-found" },
      { test: "sugar-roll", mites: 2, bees: 300 },
    ] as const)
      expect(told(test, undated), test.test).toEqual([["test-needs-live-bees", "tests[0].date", null]]);
    expect(needsLiveBees).not.toContain("varroa-wash");
    expect(told({ test: "varroa-wash", mites: 20, bees: 300 }, undated)).toEqual([]);
  });

  it("[DX83] of a day up to the death it was made while they lived, and counts", () => {
    const before = { ...frame, date: "2026-06-30" };
    expect(told(before, dead)).toEqual([]);
    expect(ask([before], dead).value.conditions).not.toEqual(ask([], dead).value.conditions);
    // The day of the death alone does not tell: without it nobody knows which came first.
    expect(told(before, { ...dead, colony: { state: "dead" } })).toHaveLength(1);
  });

  it("[DX16] mites in a sugar roll that is set aside are mites where there should be none", () => {
    const roll = { test: "sugar-roll", mites: 2, bees: 300 } as const;
    const { value, problems } = ask([roll], { ...undated, region: { varroa: "absent" } });
    expect(problems.map(({ code }) => code)).toEqual(["test-needs-live-bees", "exotic-found"]);
    expect(value.mustNotMiss).toEqual([expect.objectContaining({ condition: "varroa_pms", report: true })]);
  });
});
