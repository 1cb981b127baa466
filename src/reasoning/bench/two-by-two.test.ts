/** Two-by-two tables against the Ontario paper, the SciPy manual, and brute force. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import danka from "../../../tests/golden/danka-villa-2005.json" with { type: "json" };
import fisher from "../../../tests/golden/fisher-check-values.json" with { type: "json" };
import ontario from "../../../tests/golden/guzman-novoa-2010-table-3.json" with { type: "json" };
import { fisherTest, type TwoByTwo } from "./fisher-test.ts";
import { association } from "./two-by-two.ts";

const of = (table: TwoByTwo) => {
  const result = association(table);
  if (!result.ok) throw new Error("refused");
  return result.value;
};
/** Dead is the outcome. */
const tableOf = ({ with: exposed, without }: { with: number[]; without: number[] }): TwoByTwo => ({
  a: exposed[1] as number,
  b: exposed[0] as number,
  c: without[1] as number,
  d: without[0] as number,
});

it.each(ontario.factors)("[BE9] Ontario, $factor: chi-square $statistic, P $printedP", (row) => {
  const { chiSquare, shares } = of(tableOf(row));
  expect(Math.abs(chiSquare.statistic - row.statistic)).toBeLessThan(0.0006);
  expect(100 * shares[0]).toBeCloseTo(row.deathPercent[0] as number, 1);
  expect(100 * shares[1]).toBeCloseTo(row.deathPercent[1] as number, 1);
  if (row.equals !== undefined) expect(Math.abs(chiSquare.pValue - row.equals)).toBeLessThanOrEqual(0.00005);
  else expect(chiSquare.pValue).toBeLessThan(row.below as number);
});

it("[BE9] the printed Ontario table adds up: 408 colonies, 111 dead, 27.2 %", () => {
  for (const row of ontario.factors) {
    const { a, b, c, d } = tableOf(row);
    expect([a + b + c + d, a + c]).toEqual([ontario.colonies, ontario.dead]);
  }
  expect((100 * ontario.dead) / ontario.colonies).toBeCloseTo(27.2, 1);
});

it("[BE9] the example file holds the same counts", () => {
  const text = readFileSync(new URL("../../../examples/ontario-2010/winter-deaths.csv", import.meta.url), "utf8");
  const lines = text.trim().split("\n").slice(1);
  const counts = lines.map((line) => line.split(",").slice(2, 4).map(Number));
  expect(counts).toEqual(ontario.factors.flatMap((row) => [row.with, row.without]));
});

it("[BE10] Ontario, tracheal mites: odds ratio, relative risk, Yates, Fisher", () => {
  const row = ontario.factors.find(({ factor }) => factor === "tracheal_mite");
  const found = of(tableOf(row as never));
  const { oddsRatio, relativeRisk, yatesP, fisherP } = ontario.trachealMite;
  expect([found.oddsRatio.value, found.oddsRatio.low, found.oddsRatio.high].map((x) => Number(x.toFixed(3)))).toEqual(
    oddsRatio,
  );
  expect(
    [found.relativeRisk.value, found.relativeRisk.low, found.relativeRisk.high].map((x) => Number(x.toFixed(3))),
  ).toEqual(relativeRisk);
  expect(found.yates.pValue).toBeCloseTo(yatesP, 4);
  expect(found.fisher.twoSided).toBeCloseTo(fisherP, 4);
  expect(found.oddsRatio).toMatchObject({ level: 0.95, method: "woolf-log", rule: "BE10", n: 408 });
});

it("[BE10] groomers: relative risk 4.0 (2.16 to 7.41)", () => {
  const { relativeRisk, fisher: exact } = of(danka.table);
  expect([relativeRisk.value, relativeRisk.low, relativeRisk.high].map((x) => Number(x.toFixed(2)))).toEqual(
    danka.relativeRisk,
  );
  expect(exact.twoSided / danka.fisherP).toBeCloseTo(1, 1);
});

it.each(fisher.tables)("[BE9] Fisher for $a, $b, $c, $d", ({ less, greater, twoSided, ...table }) => {
  const found = fisherTest(table);
  expect(Math.abs(found.less - less)).toBeLessThan(1e-9);
  expect(Math.abs(found.greater - greater)).toBeLessThan(1e-9);
  expect(Math.abs(found.twoSided - twoSided)).toBeLessThan(1e-9);
});

it("[BE9] Fisher agrees with counting all ways to deal out the outcome", () => {
  // 4 + 5 bees, 3 with the outcome: all C(9, 3) ways
  const ways = [0, 0, 0, 0];
  for (let mask = 0; mask < 512; mask++) {
    if (mask.toString(2).replaceAll("0", "").length !== 3) continue;
    const inFirst = (mask & 15).toString(2).replaceAll("0", "").length;
    ways[inFirst] = (ways[inFirst] as number) + 1;
  }
  const total = ways.reduce((sum, each) => sum + each, 0);
  for (let a = 0; a <= 3; a++) {
    const { less, greater, twoSided } = fisherTest({ a, b: 4 - a, c: 3 - a, d: 2 + a });
    const share = (wanted: (x: number) => boolean) =>
      ways.reduce((sum, each, x) => sum + (wanted(x) ? each : 0), 0) / total;
    expect(less).toBeCloseTo(
      share((x) => x <= a),
      12,
    );
    expect(greater).toBeCloseTo(
      share((x) => x >= a),
      12,
    );
    expect(twoSided).toBeCloseTo(
      share((x) => (ways[x] as number) <= (ways[a] as number)),
      12,
    );
  }
});

it("[BE10] a zero cell gets half a count for its limits and says so; an empty margin is refused", () => {
  const zero = association({ a: 0, b: 10, c: 5, d: 5 });
  expect(zero.problems.map(({ code }) => code)).toEqual(["half-added-to-cells", "chi-square-thin"]);
  expect(zero.ok && zero.value.oddsRatio).toMatchObject({ method: "woolf-log-half" });
  expect(association({ a: 0, b: 0, c: 5, d: 5 })).toMatchObject({
    ok: false,
    problems: [{ code: "table-has-empty-margin" }],
  });
  expect(() => association({ a: 1, b: 2, c: 3, d: 0.5 })).toThrow("d must be");
});

it("[BE10] turned around, the ratios turn over and the tests stay", () => {
  const [one, other] = [of({ a: 12, b: 13, c: 99, d: 284 }), of({ a: 99, b: 284, c: 12, d: 13 })];
  expect(one.oddsRatio.value * other.oddsRatio.value).toBeCloseTo(1, 12);
  expect(one.oddsRatio.low * other.oddsRatio.high).toBeCloseTo(1, 12);
  expect(one.relativeRisk.high * other.relativeRisk.low).toBeCloseTo(1, 12);
  expect(one.chiSquare.statistic).toBeCloseTo(other.chiSquare.statistic, 10);
  expect(one.fisher.twoSided).toBeCloseTo(other.fisher.twoSided, 10);
});
