/** The table of the faults: a fault whose test failed, or whose line did not arrive, is never told as held. */
import { expect, it } from "vitest";
import { faultsTable, type RunReport } from "../../scripts/faults-table.ts";
import type { Told } from "./count.ts";

const line = (fault: string, test: string): Told => ({ fault, tried: 7, against: "9 entries", test });
const told = [line("kill −9 of a writer", "a store > holds everything"), line("disk full", "goes on")];
const run = (tests: Readonly<Record<string, string>>, status = "passed"): RunReport => ({
  testResults: [
    {
      name: "a.test.ts",
      status,
      assertionResults: Object.entries(tests).map(([fullName, is]) => ({ fullName, status: is })),
    },
  ],
});
const whole = { "a store holds everything": "passed", "goes on": "passed", "has no line": "passed" };

it("says that nothing was lost after a run in which everything held, and only then", () => {
  const { lines, hasFailed } = faultsTable(told, run(whole), 0);
  expect(hasFailed).toBe(false);
  expect(lines.filter((each) => each.startsWith("held"))).toHaveLength(2);
  expect(lines.at(-1)).toBe("2 faults held, with 7 kills among them: no acknowledged entry lost, no silent change.");
});

it.each([
  [
    "a test that failed after its line",
    told,
    run({ ...whole, "goes on": "failed" }, "failed"),
    1,
    /^failed +7 +disk full/,
  ],
  [
    "a test that failed before its line",
    told.slice(0, 1),
    run({ ...whole, "goes on": "failed" }, "failed"),
    1,
    /^failed +goes on/,
  ],
  [
    "a test without any line that failed",
    told,
    run({ ...whole, "has no line": "failed" }, "failed"),
    1,
    /^failed +has no line/,
  ],
  ["a file that broke beside its tests", told, run(whole, "failed"), 1, /^failed +a\.test\.ts/],
  ["a run that ended without a report", told, null, null, /^failed +7 +kill/],
  ["a run in which nothing was tried", [], run({}), 0, /^FAILED/],
  ["a run that ended with a status of its own", told, run(whole), 1, /^FAILED/],
] as const)("tells %s as failed", (_, lines, report, status, says) => {
  const table = faultsTable(lines, report, status);
  expect(table.hasFailed).toBe(true);
  expect(table.lines.some((each) => says.test(each))).toBe(true);
  expect(table.lines.at(-1)).toMatch(/^FAILED/);
  expect(table.lines.join("\n")).not.toMatch(/no acknowledged entry lost/);
});

it("says how many passed that count nothing, and a run of those alone has not failed", () => {
  expect(faultsTable(told, run(whole), 0).lines.at(-2)).toBe("1 tests that count nothing passed.");
  expect(faultsTable([], run(whole), 0)).toMatchObject({ hasFailed: false });
});

it("says how many were not tried", () => {
  const { lines, hasFailed } = faultsTable(told, run({ ...whole, "needs a database": "skipped" }), 0);
  expect([hasFailed, lines.at(-2)]).toEqual([false, "1 tests were not tried here."]);
});
