/** Days on which a treatment may lie in the hive. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { addDays, celsius, daysBetween } from "../../units/index.ts";
import type { LabelRecord } from "./label-record.ts";
import { treatmentDays } from "./label-record.ts";
import { shownBeside } from "./shown-beside.ts";
import { type WindowsInput, windows } from "./windows.ts";

/** An invented label record; no label says this. */
const inventedLabel: LabelRecord = {
  jurisdiction: "Invented Territory",
  activeIngredient: "menthol",
  doseGramsPerColony: 50,
  applications: 1,
  daysBetweenApplications: 0,
  minDailyHighCelsius: celsius(60),
  maxDailyHighCelsius: celsius(80),
  durationDays: 5,
  supersAllowed: false,
  daysBeforeSupers: 14,
  placement: "on the top bars",
  readOn: "2026-02-01",
  source: "invented for tests",
  invented: true,
};

/** Highs from a first day on, Celsius. */
const highs = (from: string, values: readonly number[]): WindowsInput["site"] => ({
  dailyMaxCelsius: values.map((value, index) => ({ date: addDays(from, index), value })),
});
const constant = (from: string, to: string, value: number) =>
  highs(from, new Array<number>(daysBetween(from, to) + 1).fill(value));

function answer(input: Partial<WindowsInput> & Pick<WindowsInput, "site" | "from" | "to">) {
  const result = windows({ labelRecord: inventedLabel, supers: [], ...input });
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return { ...result.value, problems: result.problems };
}

describe("windows", () => {
  it("[CO1] without a label record every day is refused, and that is an answer", () => {
    const { windows: found, refused } = answer({
      site: constant("2026-06-01", "2026-06-30", 22),
      labelRecord: null,
      from: "2026-06-01",
      to: "2026-06-30",
    });
    expect(found).toEqual([]);
    expect(refused).toEqual([
      { date: "2026-06-01", until: "2026-06-30", days: 30, rule: "CO1", reason: "no-label-record", slots: {} },
    ]);
  });

  it("[CO2] highs of 58 to 66 °F under a label of 60 to 80 °F leave too few days (scenario: too cold)", () => {
    const fahrenheit = [58, 59.9, 60, 62, 66, 59, 61, 63, 59.9, 58];
    const { windows: found, refused } = answer({
      site: highs("2026-05-01", fahrenheit.map(celsius)),
      from: "2026-05-01",
      to: "2026-05-10",
    });
    expect(found).toEqual([]);
    expect(refused.map(({ date, until, reason }) => [date.slice(8), until.slice(8), reason])).toEqual([
      ["01", "02", "too-cool"],
      ["03", "05", "too-few-days"],
      ["06", "06", "too-cool"],
      ["07", "08", "too-few-days"],
      ["09", "10", "too-cool"],
    ]);
    expect(refused[0]?.slots.warmestCelsius).toBe(celsius(59.9));
  });
  it("[CO2] both limits are included, and a change of unit moves no day across", () => {
    const at = (fahrenheitHigh: number) =>
      answer({
        site: constant("2026-05-01", "2026-05-05", celsius(fahrenheitHigh)),
        from: "2026-05-01",
        to: "2026-05-05",
      }).windows.length;
    expect([59.9, 59.99, 60, 80, 80.01].map(at)).toEqual([0, 0, 1, 1, 0]);
    fc.assert(
      fc.property(fc.integer({ min: 5000, max: 9000 }), (hundredths) => {
        const value = hundredths / 100;
        expect(at(value)).toBe(value >= 60 && value <= 80 ? 1 : 0);
      }),
      { seed: 60, numRuns: 200 },
    );
  });
  it("[CO3] a day without a temperature breaks a run", () => {
    const site = highs("2026-05-01", new Array<number>(10).fill(20));
    const holed = { dailyMaxCelsius: site.dailyMaxCelsius?.filter(({ date }) => date !== "2026-05-05") ?? [] };
    const { windows: found, refused } = answer({ site: holed, from: "2026-05-01", to: "2026-05-10" });
    expect(found.map(({ from, to }) => [from, to])).toEqual([["2026-05-06", "2026-05-10"]]);
    expect(refused.map(({ date, reason }) => [date, reason])).toEqual([
      ["2026-05-01", "too-few-days"],
      ["2026-05-05", "no-temperature"],
    ]);
  });

  it("[CO4] supers until 30 July: 29 July is refused and 30 July is not", () => {
    const { windows: found, refused } = answer({
      site: constant("2026-07-01", "2026-08-31", 22),
      supers: [{ on: "2026-05-01", off: "2026-07-30" }],
      from: "2026-07-01",
      to: "2026-08-31",
    });
    expect(refused).toEqual([
      {
        date: "2026-07-01",
        until: "2026-07-29",
        days: 29,
        rule: "CO4",
        reason: "supers-on",
        slots: { off: "2026-07-30" },
      },
    ]);
    expect(found[0]).toMatchObject({ from: "2026-07-30", to: "2026-08-31", latestStart: "2026-08-27" });
  });
  it("[CO4] a label that allows supers makes no fuss about them", () => {
    const { refused } = answer({
      site: constant("2026-07-01", "2026-07-31", 22),
      labelRecord: { ...inventedLabel, supersAllowed: true },
      supers: [{ on: "2026-05-01", off: null }],
      from: "2026-07-01",
      to: "2026-07-31",
    });
    expect(refused).toEqual([]);
  });
  it("[CO5] removal on the day after the last lawful day leaves just the label's days before supers", () => {
    const { windows: found, refused } = answer({
      site: constant("2026-04-01", "2026-05-31", 20),
      supers: [{ on: "2026-05-20", off: null }],
      from: "2026-04-01",
      to: "2026-05-19",
    });
    const last = found[0]?.to as string;
    expect(daysBetween(addDays(last, 1), "2026-05-20")).toBe(14);
    expect(refused.map(({ date, until, rule }) => [date, until, rule])).toEqual([
      [addDays(last, 1), "2026-05-19", "CO5"],
    ]);
  });
  it("[CO6] a flow bars the days only while nobody recorded supers", () => {
    const input = {
      site: constant("2026-06-01", "2026-06-30", 22),
      flows: [{ from: "2026-06-10", to: "2026-06-20" }],
      from: "2026-06-01",
      to: "2026-06-30",
    };
    const result = windows({ ...input, labelRecord: inventedLabel });
    expect(result.ok && result.value.refused.map(({ date, until, rule }) => [date, until, rule])).toEqual([
      ["2026-06-10", "2026-06-20", "CO6"],
    ]);
    expect(answer(input).refused).toEqual([]);
  });
  it("[CO24] a flow inside a window is warned of", () => {
    const { problems } = answer({
      site: constant("2026-06-01", "2026-06-30", 22),
      flows: [{ from: "2026-06-10", to: "2026-06-20" }],
      from: "2026-06-01",
      to: "2026-06-30",
    });
    expect(problems.map(({ code }) => code)).toContain("flow-in-window");
  });
  it("[CO7] another treatment still in the hive bars its days", () => {
    const { refused } = answer({
      site: constant("2026-06-01", "2026-06-30", 22),
      treatments: [
        { activeIngredient: "thymol", on: "2026-05-20", off: "2026-06-05" },
        { activeIngredient: "amitraz", on: "2026-06-20", off: null },
      ],
      from: "2026-06-01",
      to: "2026-06-30",
    });
    expect(refused.map(({ date, until, slots }) => [date, until, slots.activeIngredient])).toEqual([
      ["2026-06-01", "2026-06-04", "thymol"],
      ["2026-06-20", "2026-06-30", "amitraz"],
    ]);
  });
  it("[CO8] a menthol label that allows 10 °C still gets no window below 15 °C, another vapour does", () => {
    const cool = { ...inventedLabel, minDailyHighCelsius: 10 };
    const input = { site: constant("2026-05-01", "2026-05-10", 14.9), from: "2026-05-01", to: "2026-05-10" };
    expect(answer({ ...input, labelRecord: cool }).refused[0]).toMatchObject({
      reason: "vapour-too-weak",
      rule: "CO8",
    });
    expect(answer({ ...input, labelRecord: { ...cool, activeIngredient: "formic acid" } }).windows).toHaveLength(1);
  });

  it("[CO9] a run one day short is refused, and one at the end of the days asked about says so", () => {
    const site = highs("2026-05-01", [20, 20, 20, 20, 10, 20, 20, 20, 20, 20, 10, 20, 20]);
    const { windows: found, refused } = answer({ site, from: "2026-05-01", to: "2026-05-13" });
    expect(found).toEqual([
      {
        from: "2026-05-06",
        to: "2026-05-10",
        daysInRange: 5,
        latestStart: "2026-05-06",
        why: "every-day-in-range",
        rule: "CO9",
      },
    ]);
    expect(refused.filter(({ rule }) => rule === "CO9")).toMatchObject([
      { date: "2026-05-01", reason: "too-few-days", slots: { days: 4, needed: 5 } },
      { date: "2026-05-12", reason: "too-few-days-before-end", slots: { days: 2, needed: 5 } },
    ]);
  });
  it("[CO9] several applications need the days of them all", () => {
    const weekly = { ...inventedLabel, applications: 3, daysBetweenApplications: 7, durationDays: 7 };
    expect(treatmentDays(weekly)).toBe(21);
    const input = { site: constant("2026-06-01", "2026-06-20", 22), labelRecord: weekly, from: "2026-06-01" };
    expect(answer({ ...input, to: "2026-06-20" }).windows).toHaveLength(0);
    expect(answer({ ...input, site: constant("2026-06-01", "2026-06-21", 22), to: "2026-06-21" }).windows).toHaveLength(
      1,
    );
  });
  it("[CO10] every day is in a window or refused, and never both", () => {
    const high = fc.oneof(fc.double({ min: 10, max: 32, noNaN: true }), fc.constant(20));
    fc.assert(
      fc.property(
        fc.array(high, { minLength: 1, maxLength: 60 }),
        fc.integer({ min: 0, max: 40 }),
        fc.integer({ min: 1, max: 30 }),
        (values, superDay, length) => {
          const on = addDays("2026-05-01", superDay);
          const to = addDays("2026-05-01", values.length - 1);
          const { windows: found, refused } = answer({
            site: highs("2026-05-01", values),
            supers: [{ on, off: addDays(on, length) }],
            from: "2026-05-01",
            to,
          });
          values.forEach((_, index) => {
            const day = addDays("2026-05-01", index);
            const allowed = found.some((window) => day >= window.from && day <= window.to);
            const barred = refused.some(({ date, until }) => day >= date && day <= until);
            expect(allowed).toBe(!barred);
          });
          for (const window of found) expect(window.daysInRange).toBeGreaterThanOrEqual(inventedLabel.durationDays);
        },
      ),
      { seed: 1010, numRuns: 150 },
    );
  });
  it("[CO11] means in place of highs give a window that says so and warns of hot days", () => {
    const months = [0, 0, 5, 10, 14, 18, 21, 20, 16, 10, 5, 0];
    const input = { from: "2026-01-01", to: "2026-12-31" };
    const plain = answer({ ...input, site: { monthlyMeanCelsius: months } });
    expect(plain.windows[0]?.why).toBe("means-in-range");
    expect(plain.problems.map(({ code }) => code)).toContain("upper-limit-not-judged");
    const given = answer({ ...input, site: { monthlyMeanCelsius: months, highAboveMeanCelsius: 4 } });
    expect(given.windows[0]?.why).toBe("every-day-in-range");
    expect(given.problems.map(({ code }) => code)).not.toContain("upper-limit-not-judged");
    expect((given.windows[0]?.from as string) < (plain.windows[0]?.from as string)).toBe(true);
  });
  it("[CO22] what cannot be read blocks with its field", () => {
    const site = constant("2026-06-01", "2026-06-30", 22);
    const first = (input: Partial<WindowsInput>) => {
      const result = windows({ site, labelRecord: inventedLabel, from: "2026-06-01", to: "2026-06-30", ...input });
      return result.ok ? null : [result.problems[0]?.code, result.problems[0]?.field];
    };
    expect(first({ from: "2026-06-31" })).toEqual(["date-unknown", "from"]);
    expect(first({ to: "2026-05-01" })).toEqual(["span-ends-before-it-begins", "to"]);
    expect(first({ to: "2036-05-01" })).toEqual(["span-too-long", "to"]);
    expect(first({ supers: [{ on: "2026-06-10", off: "2026-06-01" }] })).toEqual([
      "span-ends-before-it-begins",
      "supers[0]",
    ]);
    expect(first({ flows: [{ from: "2026-06-10", to: "2026-6-11" }] })).toEqual(["date-unknown", "flows[0]"]);
    const label = (change: Partial<LabelRecord>) => first({ labelRecord: { ...inventedLabel, ...change } })?.[0];
    expect(label({ minDailyHighCelsius: 30 })).toBe("label-temperatures-crossed");
    expect(label({ minDailyHighCelsius: 60, maxDailyHighCelsius: 80 })).toBe("label-temperatures-look-like-fahrenheit");
    expect(label({ minDailyHighCelsius: Number.NaN })).toBe("label-temperatures-missing");
    expect(label({ durationDays: 0 })).toBe("label-duration-out-of-range");
    expect(label({ applications: 0 })).toBe("label-applications-out-of-range");
    expect(label({ applications: 2, daysBetweenApplications: 0 })).toBe("label-applications-without-days-between");
    expect(label({ daysBeforeSupers: -1 })).toBe("label-days-before-supers-out-of-range");
  });
});

describe("a figure beside its limit", () => {
  it("[CO20] keeps its side in the digits shown", () => {
    expect(shownBeside({ value: 59.96, limit: 60, digits: 0 })).toBe("59.96");
    expect(shownBeside({ value: celsius(58), limit: celsius(60), digits: 1 })).toBe("14.4");
    expect(shownBeside({ value: 60, limit: 60, digits: 0 })).toBe("60");
    fc.assert(
      fc.property(
        fc.double({ min: -40, max: 120, noNaN: true }),
        fc.double({ min: -40, max: 120, noNaN: true }),
        fc.integer({ min: 0, max: 2 }),
        (value, limit, digits) => {
          fc.pre(Math.abs(value - limit) > 1e-9); // closer figures are told apart only by the full number
          const shown = Number(shownBeside({ value, limit, digits }));
          expect(Math.sign(shown - limit)).toBe(Math.sign(value - limit));
        },
      ),
      { seed: 599, numRuns: 300 },
    );
  });
});
