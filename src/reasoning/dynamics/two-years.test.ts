/** The expected day against an independent program: drivers, two years of ten courses, winters. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { daysInMonth } from "../../units/index.ts";
import { type Action, colonyCourse, driversOn, parameterFacts, specified } from "./index.ts";
import { courseOf, november } from "./runs-for-tests.ts";

const golden = (file: string) => JSON.parse(readFileSync(`tests/golden/season/${file}`, "utf8"));
const printed = golden("two-years.json");
const days: readonly { readonly day: number }[] = golden("drivers.json").days;
interface Winter {
  readonly bees: number;
  readonly infestedShare: number;
  readonly survival: number;
  readonly infestedPerHundredInMarch?: number;
}
const winters: readonly Winter[] = golden("winter-survival.json").winters;

const every = (kind: "menthol" | "formic", day: string): readonly Action[] =>
  ["2026", "2027"].map((year) => ({ kind, from: `${year}-${day}` }));
const patties: readonly Action[] = [{ kind: "oil-patty", from: "2025-11-01", to: "2027-11-01", reduction: 0.4 }];
const clean = { ...november, start: { ...november.start, infestedShare: 0 } };
const courses = {
  base: november,
  clean,
  susceptible: { ...november, stockSusceptibility: 1.25 },
  resistant: { ...november, stockSusceptibility: 0.7 },
  mentholSeptember: { ...november, actions: every("menthol", "09-01") },
  mentholMay: { ...november, actions: every("menthol", "05-17") },
  formicSeptember: { ...november, actions: every("formic", "09-01") },
  oil: { ...november, actions: patties },
  oilSusceptible: { ...november, actions: patties, stockSusceptibility: 1.25 },
  requeen: { ...november, actions: [{ kind: "requeen", from: "2026-07-01", susceptibility: 0.7 }] as const },
};

/** Half a unit of the last printed digit, and a crumb for figures that lie just between two. */
const half = (digits: number) => 0.50001 * 10 ** -digits;

describe("drivers", () => {
  it.each(days)("[SE1] day $day as printed", ({ day, ...rest }) => {
    const ours = driversOn(day, specified);
    for (const [name, value] of Object.entries(rest))
      expect(Math.abs(Reflect.get(ours, name) - Number(value)), name).toBeLessThan(half(6));
  });

  it("[SE1] monthly means of the same wave give the same course within 1 %", () => {
    const wave = (day: number) => driversOn(day, specified).celsius;
    let first = 1;
    const monthlyMeanCelsius = Array.from({ length: 12 }, (_, month) => {
      const length = daysInMonth(2026, month + 1);
      let sum = 0;
      for (let day = first; day < first + length; day++) sum += wave(day);
      first += length;
      return sum / length;
    });
    const ours = courseOf({ ...november, site: { monthlyMeanCelsius } }).at(-1);
    const theirs = courseOf(november).at(-1);
    // The spline follows a wave within 0.1 °C, as the rules of the site hold.
    expect(Math.abs((ours?.bees ?? 0) / (theirs?.bees ?? 1) - 1)).toBeLessThan(0.01);
    expect(Math.abs((ours?.infestedShare ?? 0) / (theirs?.infestedShare ?? 1) - 1)).toBeLessThan(0.01);
  });

  it("[SE10] every parameter has its unit, its mark and its place in the plausible range", () => {
    for (const [name, { value, low, high, unit, mark, source }] of Object.entries(parameterFacts)) {
      expect(unit, name).not.toBe("");
      expect(Number.isFinite(value), name).toBe(true);
      if (low !== null) expect(value, name).toBeGreaterThanOrEqual(low);
      if (high !== null) expect(value, name).toBeLessThanOrEqual(high);
      if (mark.startsWith("seen")) expect(source, name).not.toBeNull();
    }
  });
});

describe("two years", () => {
  const fromMarch = { firstMarch: 120, firstJuly: 242, secondMarch: 485 };
  it.each(Object.entries(courses))("[SE2] %s: each first of a month as printed", (name, question) => {
    const course = courseOf(question);
    for (const row of printed.rows) {
      const day = course[row.elapsed];
      const share = row.infestedPerHundred[name];
      const digits = name === "base" ? 5 : 4;
      expect(Math.abs(100 * (day?.infestedShare ?? -1) - share), `share on day ${row.elapsed}`).toBeLessThan(
        half(digits),
      );
      if (name !== "base") continue;
      expect(Math.abs((day?.bees ?? -1) - row.bees), `bees on day ${row.elapsed}`).toBeLessThan(half(3));
      expect(Math.abs((day?.brood ?? -1) - row.brood), `brood on day ${row.elapsed}`).toBeLessThan(half(3));
      expect(Math.abs((day?.survival ?? -1) - row.survival), `survival on day ${row.elapsed}`).toBeLessThan(half(5));
    }
  });

  it.each(Object.entries(courses))("[SE3] %s: bees and winters as printed", (name, question) => {
    const course = courseOf(question);
    const of = (day: number) => course[day] ?? { bees: -1, survival: -1 };
    const expected = printed.summary[name];
    expect(Math.abs(of(fromMarch.firstMarch).bees - expected.beesFirstMarch)).toBeLessThan(half(1));
    expect(Math.abs(of(fromMarch.firstJuly).bees - expected.beesFirstJuly)).toBeLessThan(half(1));
    expect(Math.abs(of(fromMarch.secondMarch).bees - expected.beesSecondMarch)).toBeLessThan(half(1));
    expect(Math.abs(of(181).survival - expected.firstWinter)).toBeLessThan(half(4));
    expect(Math.abs(of(546).survival / of(365).survival - expected.secondWinter)).toBeLessThan(half(4));
  });

  it.each(winters)(
    "[SE3] a winter from $bees bees, share $infestedShare",
    ({ bees, infestedShare, survival, ...rest }) => {
      const course = courseOf({
        ...november,
        start: { ...november.start, bees, infestedShare },
        until: "2026-05-01",
      });
      expect(Math.abs((course[181]?.survival ?? -1) - survival)).toBeLessThan(half(3));
      const inMarch = rest.infestedPerHundredInMarch;
      if (inMarch !== undefined)
        expect(Math.abs(100 * (course[120]?.infestedShare ?? -1) - inMarch)).toBeLessThan(half(1));
    },
  );

  it("[SE6] the more susceptible the stock, the more infested bees on every morning, and never fewer", () => {
    const stocks = [0.5, 0.7, 0.9, 1, 1.1, 1.25, 1.4];
    const runs = stocks.map((stockSusceptibility) => courseOf({ ...november, stockSusceptibility }));
    runs.slice(1).forEach((run, index) => {
      run.forEach(({ infestedShare }, day) => {
        expect(infestedShare).toBeGreaterThanOrEqual(runs[index]?.[day]?.infestedShare ?? Number.NaN);
      });
    });
  });

  it("[SE9] south of the equator the same comes half a year later", () => {
    const north = courseOf(november);
    // Half a year is 182 days, rounded down: 1 November of the bees is 3 May.
    const south = courseOf({
      ...november,
      site: { latitude: -40 },
      start: { ...november.start, date: "2026-05-03" },
      until: "2028-05-02",
    });
    expect(Math.abs((south[365]?.bees ?? 0) - (north[365]?.bees ?? 1))).toBeLessThan(1e-6);
    expect(colonyCourse({ ...november, site: { latitude: -40 } }).ok).toBe(true);
    expect(courseOf({ ...november, site: { latitude: -40 } })[60]?.bees).toBeGreaterThan(22000);
  });
});
