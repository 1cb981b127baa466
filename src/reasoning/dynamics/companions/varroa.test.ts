/** Varroa by itself against the root of its equation, and what it does to the course of tracheal mites. */
import { describe, expect, it } from "vitest";
import { varroaGrowth } from "../closed-forms/growth-roots.ts";
import { colonyCourse, mostVarroa } from "../course.ts";
import { courseOf, november } from "../runs-for-tests.ts";
import { type VarroaDay, varroaDay, varroaFigures } from "./varroa.ts";

const none: VarroaDay = { onBees: 1, inCells: new Array<number>(12).fill(0) };
const grown = (days: number, sealed: number, gain: number, from = none): VarroaDay => {
  let now = from;
  for (let day = 0; day < days; day++) now = varroaDay(now, sealed, gain);
  return now;
};

describe("varroa", () => {
  it.each([1.4, 1.5, 1.6, 1.8])("[SE130] beside brood it grows by the root of its equation: gain %s", (gain) => {
    const z = varroaGrowth({ invasion: varroaFigures.invasion, gain, survival: varroaFigures.survival });
    const [before, now] = [grown(1500, 5000, gain).onBees, grown(1501, 5000, gain).onBees];
    expect(Math.abs(now / before - z)).toBeLessThan(1e-12);
  });

  it("[SE130] without brood it only dies, and what was in cells still comes out", () => {
    const { onBees } = grown(30, 0, 1.5);
    expect(onBees).toBeCloseTo(varroaFigures.survival ** 30, 12);
    const full = { onBees: 0, inCells: new Array<number>(12).fill(1) };
    expect(grown(12, 0, 1.5, full).onBees).toBeGreaterThan(12 * 1.5 * varroaFigures.survival ** 12);
    expect(grown(12, 0, 1.5, full).inCells).toEqual(none.inCells);
  });

  it("[SE131] more varroa never means fewer tracheal mites, none changes nothing, and all bees parasitised is 1.8 times", () => {
    const course = (mitesPer100: number) => courseOf({ ...november, varroa: { mitesPer100 } });
    const alone = courseOf(november);
    const [zero, some, many] = [0, 1, 5].map(course);
    for (const [day, { infestedShare, bees }] of alone.entries()) {
      const shares = [zero, some, many].map((each) => each?.[day]?.infestedShare ?? Number.NaN);
      // No varroa: another layout with all ages, whose sums round in another order.
      expect(Math.abs((shares[0] ?? 0) / infestedShare - 1)).toBeLessThan(1e-9);
      expect(zero?.[day]?.bees).toBeCloseTo(bees, 5);
      expect(shares[1]).toBeGreaterThanOrEqual((shares[0] ?? 0) - 1e-12);
      expect(shares[2]).toBeGreaterThanOrEqual((shares[1] ?? 0) - 1e-12);
    }
    const swamped = courseOf({ ...november, varroa: { mitesPer100: mostVarroa.mitesPer100 } });
    const susceptible = courseOf({ ...november, stockSusceptibility: varroaFigures.susceptibility });
    // From bees that emerge a year on: all are parasitised, as if the stock were so.
    expect((swamped.at(-1)?.infestedShare ?? 0) / (susceptible.at(-1)?.infestedShare ?? 1)).toBeGreaterThan(0.9);
    expect(varroaFigures.susceptibility).toBeCloseTo(1.8, 3);
  });

  it("[SE131] what cannot be is refused by name, and what is left out is told", () => {
    const problems = (varroa: { mitesPer100: number; gain?: number }) =>
      colonyCourse({ ...november, varroa }).problems.map(({ code, field }) => `${code} ${field}`);
    expect(problems({ mitesPer100: mostVarroa.mitesPer100 + 1 })).toEqual([
      "season-varroa-out-of-range varroa.mitesPer100",
    ]);
    expect(problems({ mitesPer100: -1 })).toEqual(["season-varroa-out-of-range varroa.mitesPer100"]);
    expect(problems({ mitesPer100: 2, gain: 9 })).toEqual(["season-varroa-out-of-range varroa.gain"]);
    expect(problems({ mitesPer100: 2 })).toContain("season-varroa-harm-left-out varroa");
  });
});
