/** Left and right: the identity on a published survey, the one-side table, and the warnings. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import garyPage from "../../../tests/golden/gary-page-1987-one-side.json" with { type: "json" };
import { drawIndex, randomStream } from "../../numerics/index.ts";
import { infestedFromSides, oneSideReading, sidesCheck } from "./sides.ts";

const survey = Object.fromEntries(
  readFileSync(new URL("../../../examples/tracheal-mite-mexico-1986/survey.csv", import.meta.url), "utf8")
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => [line.split(",")[0], Number(line.split(",")[1])]),
) as Record<string, number>;
const surveyed = (quantity: string): number => {
  const value = survey[quantity];
  if (value === undefined || Number.isNaN(value)) throw new Error(`not in the survey: ${quantity}`);
  return value;
};

it("[BE7] Mexico 1986: four printed figures agree with each other", () => {
  const left = surveyed("left_tracheae_infested");
  const right = surveyed("right_tracheae_infested");
  const bees = surveyed("bees_examined");
  const bothShare = surveyed("both_sides_infested_pct_of_infested_bees") / 100;
  const infested = infestedFromSides({ left, right, bothShare });
  expect(infested).toBeCloseTo(2710.1, 1);
  expect((100 * infested) / bees).toBeCloseTo(43.71, 2); // print: 44
  expect(surveyed("mites_total") / infested).toBeCloseTo(34.09, 2); // print: 34.2
  expect(bees).toBe(surveyed("samples_taken") * surveyed("bees_per_sample"));
});

it("[BE8] Mexico 1986: mites on both sides in 25.4 of 100 bees, 11.9 if sides were independent", () => {
  const result = sidesCheck({ left: 2138, right: 2144, both: 1572, infested: 2710, examined: 6200 });
  if (!result.ok) throw new Error("refused");
  expect((100 * 1572) / 6200).toBeCloseTo(25.4, 1);
  expect((100 * result.value.expectedFromSides) / 6200).toBeCloseTo(11.9, 1);
  expect(result.value.expectedFromPrevalence).toBeLessThan(result.value.expectedFromSides);
  expect(result.problems.map(({ code }) => code)).toEqual(["both-sides-far-exceed"]);
});

it.each(garyPage.rows)("[BE8] at $prevalence % one side finds $oneSide % of infested bees", (row) => {
  const found = oneSideReading(row.prevalence / 100);
  expect(100 * found.trunkShare).toBeCloseTo(row.trunk, 2);
  expect(100 * found.bothShare).toBeCloseTo(row.both, 2);
  expect(100 * found.sensitivity).toBeCloseTo(row.oneSide, 1);
});

it("[BE8] one side finds all bees where all bees have mites, half of them where few have", () => {
  expect(oneSideReading(1)).toEqual({ trunkShare: 1, bothShare: 1, sensitivity: 1 });
  expect(oneSideReading(1e-12).sensitivity).toBeCloseTo(0.5, 12);
  expect(() => oneSideReading(0)).toThrow("prevalenceOfBees");
});

it("[BE7] counts that break the identity are refused", () => {
  const code = (counts: Parameters<typeof sidesCheck>[0]) => sidesCheck(counts).problems[0]?.code;
  expect(code({ left: 5, right: 4, both: 2, infested: 8, examined: 50 })).toBe("sides-do-not-add-up");
  expect(code({ left: 2, right: 6, both: 3, infested: 5, examined: 50 })).toBe("sides-do-not-add-up");
  expect(code({ left: 30, right: 30, both: 0, infested: 60, examined: 50 })).toBe("positives-exceed-examined");
  expect(code({ left: 0, right: 0, both: 0, infested: 0, examined: 0 })).toBe("nothing-examined");
});

it("[BE8] an even mixture raises no alarm; one-sided findings do", () => {
  expect(sidesCheck({ left: 20, right: 22, both: 5, infested: 37, examined: 100 }).problems).toEqual([]);
  const lopsided = sidesCheck({ left: 20, right: 2, both: 1, infested: 21, examined: 100 });
  expect(lopsided.problems.map(({ code }) => code)).toEqual(["left-and-right-differ"]);
  expect(sidesCheck({ left: 0, right: 0, both: 0, infested: 0, examined: 50 })).toMatchObject({
    ok: true,
    value: { bothShare: 0, pValue: 1, leftRightPValue: 1 },
  });
});

it("[BE8] false alarms are rarer than the 1 in 100 of each test when sides are independent", () => {
  const stream = randomStream({ seed: 1987, stream: 1 });
  let alarms = 0;
  const runs = 1500;
  for (let run = 0; run < runs; run++) {
    let [left, right, both, infested] = [0, 0, 0, 0];
    for (let bee = 0; bee < 50; bee++) {
      const l = drawIndex(stream, 100) < 30;
      const r = drawIndex(stream, 100) < 30;
      left += l ? 1 : 0;
      right += r ? 1 : 0;
      both += l && r ? 1 : 0;
      infested += l || r ? 1 : 0;
    }
    if (sidesCheck({ left, right, both, infested, examined: 50 }).problems.length > 0) alarms++;
  }
  expect(alarms / runs).toBeLessThan(0.02);
});
