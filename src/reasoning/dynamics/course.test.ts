/** Questions as people put them: counts, starts, what cannot be, what is warned of and told. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { placeWinterColony } from "./colony.ts";
import {
  bringTo,
  type CourseQuestion,
  colonyCourse,
  dayOfYear,
  logChanceOfCount,
  mostInfestedShare,
  oneDayForAll,
  rateYear,
  seeColony,
  shortestLayout,
  specified,
  usualColony,
} from "./index.ts";
import { benchColony, courseOf, november } from "./runs-for-tests.ts";

const { count } = JSON.parse(readFileSync("tests/golden/season/closed-forms.json", "utf8"));
const layout = shortestLayout(specified);
const usualOn = (day: number) =>
  usualColony(
    { parameters: specified, layout, rates: rateYear(specified) },
    { dayOfYear: day, southern: false, contactRate: 1.7, stockSusceptibility: 1 },
  );
const troubles = (question: CourseQuestion) => colonyCourse(question).problems.map(({ code }) => code);
const blockedBy = (question: CourseQuestion) => {
  const answer = colonyCourse(question);
  return answer.ok ? null : answer.problems.map(({ code, field }) => `${code} ${field}`);
};
const started = (start: Partial<CourseQuestion["start"]>): CourseQuestion => ({
  ...november,
  start: { ...november.start, ...start },
});

describe("counts", () => {
  it("[SE50] three of fifty as printed", () => {
    const error = { sensitivity: 1, specificity: 1, overdispersion: count.overdispersion };
    expect(Math.abs(Math.exp(logChanceOfCount(count, count.infestedShare, error)) - count.chance)).toBeLessThan(
      0.50001e-10,
    );
  });

  it("[SE50] all counts together make 1, at any share, with and without error", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        (share, accuracy) => {
          const error = { sensitivity: accuracy, specificity: accuracy, overdispersion: 0.02 };
          let sum = 0;
          for (let infested = 0; infested <= 20; infested++)
            sum += Math.exp(logChanceOfCount({ infested, examined: 20 }, share, error));
          expect(Math.abs(sum - 1)).toBeLessThan(1e-10); // 21 terms, each right to about 1e-12
        },
      ),
      { seed: 1948, numRuns: 100 },
    );
  });

  it("[SE50] what cannot be seen has no chance: a positive bee in a clean colony read without error", () => {
    const error = { sensitivity: 1, specificity: 1, overdispersion: 0.02 };
    expect(logChanceOfCount({ infested: 1, examined: 5 }, 0, error)).toBe(-Infinity);
    expect(logChanceOfCount({ infested: 0, examined: 5 }, 0, error)).toBe(0);
    expect(logChanceOfCount({ infested: 4, examined: 5 }, 1, error)).toBe(-Infinity);
  });
});

describe("starts", () => {
  it("[SE51] any day of the year, any bees, any share below the most: exactly that", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 365 }),
        fc.double({ min: 500, max: 100000, noNaN: true }),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (day, bees, part) => {
          const state = usualOn(day);
          const infestedShare = part * mostInfestedShare(state, 0, layout);
          expect(bringTo(state, 0, layout, { bees, infestedShare })).toBe(true);
          const seen = seeColony(state, 0, layout);
          expect(Math.abs(seen.bees / bees - 1)).toBeLessThan(1e-12);
          expect(Math.abs(seen.infestedShare - infestedShare)).toBeLessThan(1e-12);
          expect([...state].every((each) => Number.isFinite(each) && each >= 0)).toBe(true);
        },
      ),
      { seed: 1101, numRuns: 25 },
    );
  });

  it("[SE51] its own bees and share change nothing", () => {
    const state = usualOn(213);
    const before = [...state];
    const { bees, infestedShare } = seeColony(state, 0, layout);
    bringTo(state, 0, layout, { bees, infestedShare });
    state.forEach((each, place) => {
      expect(Math.abs(each - (before[place] ?? 0))).toBeLessThanOrEqual(1e-11 * Math.abs(each)); // a root to 1e-13 in logs
    });
  });

  it("[SE51] a share no summer colony can have is refused with the most it can", () => {
    const answer = colonyCourse(started({ date: "2026-06-15", infestedShare: 0.999, brood: "usual" }));
    expect(answer.ok).toBe(false);
    const slots = answer.problems[0]?.slots;
    expect(answer.problems[0]?.code).toBe("season-share-out-of-range");
    expect(Number(slots?.most)).toBeGreaterThan(0.9);
    expect(Number(slots?.most)).toBeLessThan(0.999);
  });
});

describe("questions that cannot be", () => {
  const means = [-3, -2, 3, 9, 15, 19, 22, 21, 17, 10, 4, -1];
  it("[SE52] each is refused by its name, at its field", () => {
    expect(blockedBy(started({ bees: 0 }))).toEqual(["season-bees-out-of-range start.bees"]);
    expect(blockedBy(started({ bees: Number.NaN }))).toEqual(["season-bees-out-of-range start.bees"]);
    expect(blockedBy(started({ bees: 1e9, infestedShare: -0.1 }))).toEqual([
      "season-bees-out-of-range start.bees",
      "season-share-out-of-range start.infestedShare",
    ]);
    expect(blockedBy(started({ infestedShare: Number.NaN }))).toEqual([
      "season-share-out-of-range start.infestedShare",
    ]);
    expect(blockedBy({ ...november, stockSusceptibility: 0 })).toEqual([
      "season-stock-out-of-range stockSusceptibility",
    ]);
    expect(blockedBy(started({ date: "2025-02-29" }))).toEqual(["season-day-unknown start.date"]);
    expect(blockedBy({ ...november, until: "2025-11-01" })).toEqual(["season-span-out-of-range until"]);
    expect(blockedBy({ ...november, until: "2045-11-01" })).toEqual(["season-span-out-of-range until"]);
  });

  it("[SE52] months that are missing, flows that are none, a latitude off the earth", () => {
    const at = (site: CourseQuestion["site"]) => blockedBy({ ...november, site });
    expect(at({ monthlyMeanCelsius: means.slice(1) })).toEqual(["monthly-means-not-twelve site.monthlyMeanCelsius"]);
    expect(at({ monthlyMeanCelsius: means.with(4, Number.NaN) })).toEqual([
      "month-mean-not-a-number site.monthlyMeanCelsius[4]",
    ]);
    expect(at({ monthlyMeanCelsius: means.map((each) => each * 1.8 + 32) })).toEqual([
      "temperatures-look-like-fahrenheit site.monthlyMeanCelsius",
    ]);
    expect(at({ highAboveMeanCelsius: Number.NaN })).toEqual([
      "high-above-mean-out-of-range site.highAboveMeanCelsius",
    ]);
    expect(at({ flows: [{ day: 125, spreadDays: 0, strength: 1 }] })).toEqual([
      "season-flow-out-of-range site.flows[0]",
    ]);
    expect(at({ latitude: 91 })).toEqual(["season-latitude-out-of-range site.latitude"]);
    expect(at({ monthlyMeanCelsius: means, latitude: 45 })).toBeNull();
  });

  it("[SE149] a colony that dwindles is told by its own name, one that is small and grows is not", () => {
    const hot = [20, 22, 25, 29, 33, 35, 36, 36, 34, 30, 25, 21];
    const desert = { site: { monthlyMeanCelsius: hot, latitude: 25 } };
    const summer = { date: "2025-08-01", brood: "usual", infestedShare: 0.08 } as const;
    const dwindling = { ...started({ ...summer, bees: 30_000 }), ...desert, until: "2026-03-31" };
    const course = colonyCourse(dwindling);
    const [end] = course.ok ? course.value.slice(-1) : [];
    expect(end?.survival).toBeGreaterThan(0.99);
    expect(end?.bees).toBeLessThan(1000);
    expect(troubles(dwindling)).toContain("season-colony-dwindles");
    const growing = {
      ...started({ date: "2026-05-01", bees: 900, infestedShare: 0, brood: "usual" }),
      until: "2026-08-01",
    };
    expect(troubles(growing)).not.toContain("season-colony-dwindles");
    expect(troubles(started({ bees: 22_000 }))).not.toContain("season-colony-dwindles");
  });

  it("[SE149] months that the calendar was not made for are warned of, at their field; those at its bounds are not", () => {
    const warned = (monthlyMeanCelsius: readonly number[]) => {
      const { problems } = colonyCourse({ ...november, site: { monthlyMeanCelsius } });
      return problems.flatMap(({ code, field, severity }) =>
        code === "season-months-outside" ? [`${severity} ${field}`] : [],
      );
    };
    const year = (coldest: number, warmest: number) => [coldest, ...new Array<number>(10).fill(coldest), warmest];
    const told = ["warned site.monthlyMeanCelsius"];
    expect(warned(new Array<number>(12).fill(-80))).toEqual(told);
    for (const [coldest, warmest] of [
      [-25.1, 20],
      [10.1, 20],
      [0, 9.9],
      [0, 30.1],
    ] as const)
      expect(warned(year(coldest, warmest))).toEqual(told);
    for (const [coldest, warmest] of [
      [-25, 10],
      [10, 30],
      [-4, 22],
    ] as const)
      expect(warned(year(coldest, warmest))).toEqual([]);
    expect(warned(means)).toEqual([]);
  });

  it("[SE53] half lost before the end is warned of; within weeks of the start it has its own name", () => {
    expect(troubles(started({ infestedShare: 0.5 }))).toContain("season-colony-likely-lost");
    expect(troubles(started({ bees: 800 }))).toContain("season-colony-lost-at-once");
    expect(troubles(november).filter((code) => code.startsWith("season-colony-l"))).toEqual([]);
  });

  it("[SE55] an invented site is told, and the calendar of a cool-temperate place always", () => {
    expect(troubles(november)).toEqual(["season-site-invented", "season-calendar-cool-temperate"]);
    expect(troubles({ ...november, site: { monthlyMeanCelsius: means } })).toEqual([
      "ordinary-year",
      "season-calendar-cool-temperate",
    ]);
  });
});

describe("never NaN", () => {
  it("[SE54] a colony without bees stays one, in expected numbers and in whole bees", () => {
    const empty = benchColony({ layout, bees: 0, infestedShare: 0 });
    empty.step(400);
    expect(empty.see()).toMatchObject({ bees: 0, infestedShare: 0, clearedShare: 0, brood: 0 });
    const state = new Float64Array(layout.length);
    placeWinterColony(state, 0, layout, { bees: 3, infestedShare: 1, contactRate: 1.7 });
    for (let elapsed = 0; elapsed < 700; elapsed++)
      oneDayForAll(
        state,
        { first: 0, count: 1 },
        empty.model,
        { dayOfYear: (elapsed % 365) + 1, elapsed },
        { seed: 1, wholeBees: true, noise: null },
      );
    expect([...state].every(Number.isFinite)).toBe(true);
  });

  it("[SE54] in the hottest and the coldest place, with everything done at once, all numbers are numbers in their range", () => {
    const actions = [
      { kind: "oil-patty", from: "2025-11-01", to: "2027-11-01", reduction: 1 },
      { kind: "menthol", from: "2026-07-01" },
      { kind: "requeen", from: "2026-07-01", susceptibility: 3 },
    ] as const;
    for (const celsius of [-79, -20, 0, 20, 42])
      for (const infestedShare of [0, 1]) {
        const site = { monthlyMeanCelsius: new Array<number>(12).fill(celsius) };
        for (const day of courseOf({ ...started({ infestedShare }), site, actions, stockSusceptibility: 3 })) {
          expect(day.bees).toBeGreaterThanOrEqual(0);
          expect(day.bees).toBeLessThan(1e6);
          for (const share of [day.infestedShare, day.clearedShare, day.survival]) {
            expect(share).toBeGreaterThanOrEqual(0);
            expect(share).toBeLessThanOrEqual(1);
          }
        }
      }
  });
});

describe("the calendar", () => {
  it("[SE56] 29 February shares the place of the 28th; every other date has its own in every year", () => {
    expect(dayOfYear("2028-02-28")).toBe(59);
    expect(dayOfYear("2028-02-29")).toBe(59);
    expect(dayOfYear("2028-03-01")).toBe(dayOfYear("2026-03-01"));
    expect(dayOfYear("2028-12-31")).toBe(365);
    expect(dayOfYear("2026-12-31")).toBe(365);
  });
});
