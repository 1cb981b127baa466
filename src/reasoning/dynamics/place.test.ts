/** The place of a run: its highs are those the planner takes, and what stands in for them is told. */
import { describe, expect, it } from "vitest";
import { addDays } from "../../units/index.ts";
import { temperaturesBetween } from "../site/index.ts";
import { type CourseSite, colonyCourse, inUse, readyRun } from "./index.ts";
import { courseOf, november } from "./runs-for-tests.ts";

/** Of the demonstration's kind: own numbers. */
const monthlyMeanCelsius = [-4, -3, 1, 7, 13, 18, 21, 20, 17, 10, 4, -1];
const menthol = [{ kind: "menthol", from: "2026-09-01" }] as const;
const asked = (site: CourseSite) => ({ ...november, until: "2027-01-01", parameters: inUse, site, actions: menthol });
const readyAt = (site: CourseSite) => {
  const ready = readyRun(asked(site));
  return ready.ok ? ready.value : expect.fail(JSON.stringify(ready.problems));
};
const shareAt = (site: CourseSite) => courseOf(asked(site)).at(-1)?.infestedShare ?? Number.NaN;
const codes = (site: CourseSite, actions: readonly (typeof menthol)[number][] = menthol) =>
  colonyCourse({ ...asked(site), actions }).problems.map(({ code }) => code);

describe("the highs of a place", () => {
  it.each([
    ["means with their height", { monthlyMeanCelsius, highAboveMeanCelsius: 8, latitude: 45 }, "mean-plus-given"],
    ["measured", { dailyMaxCelsius: [{ date: "2026-09-02", value: 27.5 }] }, "measured"],
  ] as const)("[SE145] are those of the planner's weather year: %s", (_, site, method) => {
    const { highs, days } = readyAt(site);
    expect(highs.method).toBe(method);
    const weather = temperaturesBetween(site, { from: november.start.date, to: addDays(november.start.date, days) });
    const known = new Map(weather.ok ? weather.value.days.map((each) => [each.date, each.highCelsius] as const) : []);
    expect(known.size).toBe(method === "measured" ? 1 : days + 1);
    const invented = readyAt({}).highs;
    expect(invented.method).toBe("invented");
    for (let elapsed = 0; elapsed <= days; elapsed++)
      expect(highs.on(elapsed)).toBe(known.get(addDays(november.start.date, elapsed)) ?? invented.on(elapsed));
  });

  it("[SE145] where only means are known lie 6 °C above those of the planner's weather year, which is told", () => {
    const { highs, days } = readyAt({ monthlyMeanCelsius });
    expect(highs.method).toBe("assumed");
    const to = addDays(november.start.date, days);
    const weather = temperaturesBetween({ monthlyMeanCelsius }, { from: november.start.date, to });
    if (!weather.ok) expect.fail("no weather");
    // A leap year's means lie a third of a day from an ordinary one's.
    for (const [elapsed, { meanCelsius }] of weather.value.days.entries())
      expect(Math.abs(highs.on(elapsed) - ((meanCelsius ?? Number.NaN) + 6))).toBeLessThan(0.2);
  });

  it("[SE145] of the invented site lie 6 °C above its means, as specified", () => {
    const { highs, model } = readyAt({});
    expect(highs.on(0) - (model.rates[305]?.drivers.celsius ?? 0)).toBeCloseTo(6, 12);
    expect(readyAt({ highAboveMeanCelsius: 9 }).highs.on(0) - highs.on(0)).toBeCloseTo(3, 12);
  });

  it("[SE145] move menthol: the warmer they are, the fewer mites are left; measured ones too", () => {
    const [means, six, ten] = [undefined, 6, 10].map((above) =>
      shareAt({ monthlyMeanCelsius, ...(above === undefined ? {} : { highAboveMeanCelsius: above }) }),
    ) as [number, number, number];
    expect(means).toBe(six);
    expect(six).toBeGreaterThan(ten);
    const measured = (value: number) =>
      shareAt({
        dailyMaxCelsius: Array.from({ length: 28 }, (_, day) => ({ date: addDays("2026-09-01", day), value })),
      });
    expect(measured(10)).toBeGreaterThan(measured(25));
  });

  it("[SE145] what stands in for them is told, means in place of highs where menthol hangs on it", () => {
    const rest = ["ordinary-year", "season-calendar-cool-temperate"];
    expect(codes({ monthlyMeanCelsius })).toEqual(["ordinary-year", "season-highs-assumed", rest[1]]);
    expect(codes({ monthlyMeanCelsius }, [])).toEqual(rest);
    expect(codes({ monthlyMeanCelsius, highAboveMeanCelsius: 6 })).toEqual(rest);
    expect(codes({ dailyMaxCelsius: [{ date: "2026-09-02", value: 20 }] })).toEqual(["season-highs-alone", rest[1]]);
    expect(codes({ dailyMaxCelsius: [{ date: "2026-09-02", value: 77 }] })).toEqual([
      "temperatures-look-like-fahrenheit",
    ]);
    expect(codes({ monthlyMeanCelsius, dailyMaxCelsius: [{ date: "2026-09-02", value: 20 }] })).toEqual([
      "two-temperature-lists",
    ]);
  });
});
