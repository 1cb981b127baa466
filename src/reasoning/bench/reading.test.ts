/** The bands, the gaps between them, and sources that do not agree. */
import { expect, it } from "vitest";
import type { Season } from "../../units/index.ts";
import { prevalence } from "./prevalence.ts";
import { reading } from "./reading.ts";

const read = (positive: number, examined: number, season: Season = "autumn") => {
  const estimate = prevalence({ positive, examined });
  if (!estimate.ok) throw new Error("refused");
  const result = reading(estimate.value, season);
  if (!result.ok) throw new Error("refused");
  return { ...result.value, codes: result.problems.map(({ code }) => code) };
};

it("[BE13] 17 of 50: damage likely, but the interval reaches from act in autumn to below high winter risk", () => {
  const found = read(17, 50);
  expect(found.band?.means).toBe("damage likely");
  expect(found.lowBand).toBeNull(); // 21.2 % lies where nothing is said
  expect(found.bandsCrossed.map(({ means }) => means)).toEqual(["damage likely"]);
  expect(found.codes).toContain("interval-spans-bands");
});

it("[BE13] many bees settle it: 700 of 2000 lies inside one band", () => {
  const found = read(700, 2000);
  expect(found.band?.means).toBe("damage likely");
  expect(found.bandsCrossed).toHaveLength(1);
  expect(found.codes).toEqual(["sources-disagree"]); // over the autumn rule, under the line of one half
});

it("[BE13] each line of each source is named with where the share stands, its limits and its citation", () => {
  const found = read(700, 2000);
  const at = (id: string) => found.statements.find((each) => each.id === id);
  expect(at("tracheal-autumn-rule")).toMatchObject({ position: "over", fromPercent: 15, toPercent: 25 });
  expect(at("tracheal-half")).toMatchObject({ position: "under", fromPercent: 50 });
  expect(at("tracheal-britain")).toMatchObject({ position: "either", fromPercent: 30, toPercent: 40 });
  expect(found.statements.length).toBeGreaterThanOrEqual(7);
  for (const { citations, words } of found.statements) {
    expect(citations.length).toBeGreaterThan(0);
    expect(words.length).toBeGreaterThan(10);
  }
});

it("[BE13] a share in the gap between bands has no band", () => {
  expect(read(500, 2000).band).toBeNull();
  expect(read(900, 2000).band).toBeNull();
  expect(read(0, 2000).band?.means).toBe("low");
  expect(read(2000, 2000).band?.means).toBe("high winter risk");
});

it("[BE13] the bands are for autumn and winter: spring and summer are told", () => {
  for (const season of ["spring", "summer"] as const)
    expect(read(3, 50, season).codes).toContain("bands-out-of-season");
  for (const season of ["autumn", "winter"] as const) {
    expect(read(3, 50, season).codes).not.toContain("bands-out-of-season");
  }
});

it("[BE13] refuses what is no share", () => {
  const estimate = { level: 0.95, interval: "confidence", method: "x", rule: "x", n: 1 } as const;
  expect(() => reading({ ...estimate, value: 0.5, low: 0.6, high: 0.7 }, "autumn")).toThrow("estimate");
  expect(() => reading({ ...estimate, value: 0.5, low: 0.4, high: 1.7 }, "autumn")).toThrow("estimate");
});
