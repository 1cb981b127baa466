/** The place: temperatures by day, supers and flows, day length, vapour. */

import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { daysInMonth } from "../../units/index.ts";
import {
  dailyMeans,
  dayLength,
  growingSpans,
  inYear,
  nextSupersOn,
  sineYear,
  supersAreOn,
  temperaturesBetween,
  vapourPressure,
  vapourRatio,
  weatherYear,
} from "./index.ts";

/** Camrose, Alberta: normals of examples/canada-windows. */
const camrose = [-11.6, -9.6, -4.1, 4.5, 10.5, 14.5, 16.8, 15.8, 10.4, 4.1, -5.1, -9.9];
const golden = (file: string) => JSON.parse(readFileSync(`tests/golden/${file}`, "utf8"));

function monthAverages(days: readonly number[], year: number): readonly number[] {
  let first = 0;
  return Array.from({ length: 12 }, (_, month) => {
    const length = daysInMonth(year, month + 1);
    const ofMonth = days.slice(first, first + length);
    first += length;
    return ofMonth.reduce((sum, each) => sum + each, 0) / length;
  });
}

describe("daily means", () => {
  const means = fc.array(fc.double({ min: -40, max: 40, noNaN: true }), { minLength: 12, maxLength: 12 });
  it("[SI1] any twelve means come back as the months' averages", () => {
    fc.assert(
      fc.property(means, fc.integer({ min: 1999, max: 2030 }), (months, year) => {
        const back = monthAverages(dailyMeans(months, year), year);
        back.forEach((mean, month) => {
          expect(Math.abs(mean - (months[month] as number))).toBeLessThan(1e-9); // exact but for rounding of sums
        });
      }),
      { seed: 1853, numRuns: 100 },
    );
  });
  it("[SI1] a leap year has 366 days and another year 365", () => {
    expect(dailyMeans(camrose, 2028)).toHaveLength(366);
    expect(dailyMeans(camrose, 2026)).toHaveLength(365);
  });
  it("[SI2] neighbouring days of a continental year differ by less than half a degree, also over New Year", () => {
    const days = dailyMeans(camrose, 2026);
    const steps = days.map((each, index) => Math.abs(each - (days[(index + 364) % 365] as number)));
    expect(Math.max(...steps)).toBeLessThan(0.5); // steepest between two months' means: 9.2 °C over 30 days
  });
  it("[SI2] a true wave is followed within 0.1 °C", () => {
    const wave = (day: number) => 9 - 13 * Math.cos((2 * Math.PI * (day - 20)) / 365);
    const truth = Array.from({ length: 365 }, (_, index) => wave(index + 1));
    const days = dailyMeans(monthAverages(truth, 2026), 2026);
    const worst = Math.max(...days.map((each, index) => Math.abs(each - (truth[index] as number))));
    expect(worst).toBeLessThan(0.1); // the spline follows a wave of 26 °C range to well under this
  });
  it("[SI11] the wave that was averaged by month is given back", () => {
    const months = Array.from({ length: 12 }, (_, month) => {
      // Exact averages over twelve equal months of 9 − 13·cos(2π(t − 20)/365).
      const [from, to] = [(month * 365) / 12, ((month + 1) * 365) / 12];
      const sine = (day: number) => Math.sin((2 * Math.PI * (day - 20)) / 365);
      return 9 - (13 * 365 * (sine(to) - sine(from))) / (2 * Math.PI * (to - from));
    });
    const wave = sineYear(months);
    expect(wave.meanCelsius).toBeCloseTo(9, 10);
    expect(wave.halfRangeCelsius).toBeCloseTo(13, 10);
    expect(wave.coldestDay).toBeCloseTo(20, 8);
  });
});

describe("weather", () => {
  const codes = (answer: { readonly problems: readonly { readonly code: string }[] }) =>
    answer.problems.map(({ code }) => code);

  it("[SI3] means stand in place of highs and the answer says so; a given height is added", () => {
    const plain = weatherYear({ monthlyMeanCelsius: camrose }, 2026);
    const given = weatherYear({ monthlyMeanCelsius: camrose, highAboveMeanCelsius: 6.5 }, 2026);
    if (!plain.ok || !given.ok) throw new Error("both answer");
    expect(plain.value.method).toBe("mean-in-place-of-high");
    expect(codes(plain)).toContain("mean-used-as-high");
    expect(plain.value.days.every(({ highCelsius, meanCelsius }) => highCelsius === meanCelsius)).toBe(true);
    expect(given.value.method).toBe("mean-plus-given");
    expect(codes(given)).not.toContain("mean-used-as-high");
    given.value.days.forEach(({ highCelsius }, index) => {
      expect(highCelsius).toBeCloseTo((plain.value.days[index]?.highCelsius as number) + 6.5, 12);
    });
    expect(weatherYear({ monthlyMeanCelsius: camrose, highAboveMeanCelsius: -1 }, 2026).ok).toBe(false);
  });
  it("[SI4] Camrose in Fahrenheit is refused, and says what it would be in Celsius", () => {
    const answer = weatherYear({ monthlyMeanCelsius: camrose.map((each) => each * 1.8 + 32) }, 2026);
    expect(answer.ok).toBe(false);
    expect(answer.problems[0]?.code).toBe("temperatures-look-like-fahrenheit");
    expect(answer.problems[0]?.slots.asCelsius).toBeCloseTo(16.8, 10);
  });
  it("[SI4] every published Canadian station passes in Celsius; in Fahrenheit each with a month above 42 °F is refused", () => {
    const stations = stationMeans();
    expect(stations.length).toBe(64);
    let refused = 0;
    for (const { months } of stations) {
      expect(weatherYear({ monthlyMeanCelsius: months }, 2026).ok).toBe(true);
      if (!weatherYear({ monthlyMeanCelsius: months.map((each) => each * 1.8 + 32) }, 2026).ok) refused += 1;
    }
    expect(refused).toBe(64);
  });
  it("[SI4] forecast highs in Fahrenheit are refused, by one hot day or by their average", () => {
    const highs = (values: readonly number[]) =>
      weatherYear({ dailyMaxCelsius: values.map((value, day) => ({ date: `2026-05-1${day}`, value })) }, 2026);
    expect(highs([58, 60, 66]).ok).toBe(false);
    expect(highs([48, 50, 52]).ok).toBe(false);
    expect(highs([14.4, 15.6, 18.9]).ok).toBe(true);
  });
  it("[SI5] a day that is not in the list is not in the answer", () => {
    const answer = temperaturesBetween(
      {
        dailyMaxCelsius: [
          { date: "2026-05-12", value: 18 },
          { date: "2026-05-10", value: 17 },
        ],
      },
      { from: "2026-05-10", to: "2026-05-12" },
    );
    expect(answer.ok && answer.value.days.map(({ date }) => date)).toEqual(["2026-05-10", "2026-05-12"]);
  });
  it("[SI6] lists that cannot be used are refused by name", () => {
    const one = [{ date: "2026-05-10", value: 17 }];
    const first = (site: Parameters<typeof weatherYear>[0]) => {
      const answer = weatherYear(site, 2026);
      return answer.ok ? "answered" : answer.problems[0]?.code;
    };
    expect(first({})).toBe("no-temperatures");
    expect(first({ dailyMaxCelsius: [] })).toBe("no-temperatures");
    expect(first({ dailyMaxCelsius: one, monthlyMeanCelsius: camrose })).toBe("two-temperature-lists");
    expect(first({ monthlyMeanCelsius: camrose.slice(1) })).toBe("monthly-means-not-twelve");
    expect(first({ monthlyMeanCelsius: [Number.NaN, ...camrose.slice(1)] })).toBe("month-mean-not-a-number");
    expect(first({ dailyMaxCelsius: [{ date: "2026-05-10", value: Number.NaN }] })).toBe("temperature-not-a-number");
    expect(first({ dailyMaxCelsius: [{ date: "2026-02-30", value: 1 }] })).toBe("temperature-date-unknown");
    expect(first({ dailyMaxCelsius: [...one, { date: "2026-05-10", value: 18 }] })).toBe("temperature-date-twice");
    expect(first({ dailyMaxCelsius: [...one, ...one] })).toBe("answered");
    expect(first({ dailyMaxCelsius: [{ date: "2026-05-10", value: -95 }] })).toBe("temperature-beyond-earth");
  });
  it("[SI7] a northern year under a southern latitude is warned of", () => {
    const north = weatherYear({ monthlyMeanCelsius: camrose, latitude: 53 }, 2026);
    const south = weatherYear({ monthlyMeanCelsius: camrose, latitude: -53 }, 2026);
    const tropics = weatherYear({ monthlyMeanCelsius: camrose, latitude: -10 }, 2026);
    expect(codes(north)).not.toContain("hemisphere-unlike-temperatures");
    expect(codes(south)).toContain("hemisphere-unlike-temperatures");
    expect(codes(tropics)).not.toContain("hemisphere-unlike-temperatures");
  });
  it("[SI14] growing weather is a run at or above the figure named", () => {
    const year = weatherYear({ monthlyMeanCelsius: camrose }, 2026);
    const highs = weatherYear({ dailyMaxCelsius: [{ date: "2026-05-10", value: 17 }] }, 2026);
    if (!year.ok || !highs.ok) throw new Error("both answer");
    const spans = growingSpans(year.value, 5);
    expect(spans).toHaveLength(1);
    const [span] = spans;
    expect(span?.from.slice(0, 7)).toBe("2026-04"); // normal 4.5 in April, 10.5 in May
    expect(span?.to.slice(0, 7)).toBe("2026-10"); // normal 10.4 in September, 4.1 in October
    expect(growingSpans(highs.value, 5)).toEqual([]);
  });
});

describe("calendar", () => {
  it("[SI9] the day supers come off counts as off, and the next day on is later than the day asked about", () => {
    const supers = [
      { on: "2026-05-01", off: "2026-07-30" },
      { on: "2026-09-01", off: null },
    ];
    expect(supersAreOn("2026-05-01", supers)).toBe(true);
    expect(supersAreOn("2026-07-29", supers)).toBe(true);
    expect(supersAreOn("2026-07-30", supers)).toBe(false);
    expect(supersAreOn("2027-01-01", supers)).toBe(true);
    expect(nextSupersOn("2026-05-01", supers)).toBe("2026-09-01");
    expect(nextSupersOn("2026-09-01", supers)).toBeNull();
  });
  it("[SI10] spans move by month and day", () => {
    expect(inYear({ from: "2024-02-29", to: "2024-05-01" }, 2026)).toEqual({ from: "2026-02-28", to: "2026-05-01" });
    expect(inYear({ from: "2024-11-20", to: "2025-01-10" }, 2026)).toEqual({ from: "2026-11-20", to: "2027-01-10" });
  });
});

describe("day length", () => {
  const { days, latitude } = golden("day-length-two-programs.json");
  it.each(days as readonly { day: string; first: number; second: number }[])(
    "[SI8] $day agrees with two programs",
    ({ day, first, second }) => {
      const hours = dayLength({ latitude, day });
      expect(Math.abs(hours - first)).toBeLessThan(0.05); // the two programs differ by up to 0.042
      expect(Math.abs(hours - second)).toBeLessThan(0.05);
    },
  );
  it("[SI8] midnight sun, polar night and mirrored hemispheres", () => {
    expect(dayLength({ latitude: 70, day: "2026-06-21" })).toBe(24);
    expect(dayLength({ latitude: 70, day: "2026-12-21" })).toBe(0);
    expect(dayLength({ latitude: -45, day: "2026-12-21" })).toBeGreaterThan(15);
    expect(dayLength({ latitude: 0, day: "2026-03-20" })).toBeCloseTo(12.11, 1);
  });
});

describe("vapour", () => {
  const table = golden("vapour-of-treatments.json");
  const pascals = (substance: Parameters<typeof vapourPressure>[0], celsius: number) => {
    const answer = vapourPressure(substance, celsius);
    if (!answer.ok) throw new Error("has a figure");
    return answer.value;
  };
  interface Row {
    readonly celsius: number;
    readonly menthol: number;
    readonly mentholMgPerL: number;
    readonly ratio: number | null;
    readonly thymol: number;
    readonly thymolMgPerL: number;
    readonly formic: number;
    readonly formicSecond: number | null;
  }
  /** Half a unit of the last printed digit, with a little for the printed cell's own rounding in binary. */
  const printed = (got: number, cell: number, unit: number) =>
    expect(Math.abs(got - cell)).toBeLessThanOrEqual(unit / 2 + 1e-9);
  const pascalUnit = (cell: number) => (cell >= 10 ? 0.01 : 0.001);

  it.each(table.rows as readonly Row[])("[SI12] the table at $celsius °C", (row) => {
    const { celsius } = row;
    printed(pascals("menthol", celsius).pascals, row.menthol, pascalUnit(row.menthol));
    printed(pascals("thymol", celsius).pascals, row.thymol, pascalUnit(row.thymol));
    printed(pascals("formic", celsius).pascals, row.formic, 1);
    // One cell (30 °C) was rounded up from 0.39649: hence 1.02 of a unit for this column.
    printed(pascals("menthol", celsius).milligramsPerLitre, row.mentholMgPerL, 0.00102);
    printed(pascals("thymol", celsius).milligramsPerLitre, row.thymolMgPerL, 0.001);
    if (row.formicSecond !== null) printed(pascals("formic-second-fit", celsius).pascals, row.formicSecond, 1);
    const ratio = vapourRatio({ substance: "menthol", celsius, againstCelsius: 21.1 });
    if (row.ratio !== null) printed(ratio.ok ? ratio.value : Number.NaN, row.ratio, 0.01);
  });
  it("[SI12] formic acid's two fits agree within 1 %, and the fits end where they end", () => {
    expect(pascals("formic", 25).pascals / pascals("formic-second-fit", 25).pascals).toBeCloseTo(1, 2);
    for (const [substance, celsius] of [
      ["menthol", 37],
      ["menthol", -3],
      ["thymol", 51],
      ["formic", 3],
      ["formic-second-fit", 5],
    ] as const) {
      const answer = vapourPressure(substance, celsius);
      expect(answer.ok).toBe(false);
      expect(answer.problems[0]?.code).toBe("outside-vapour-range");
    }
    expect(vapourRatio({ substance: "menthol", celsius: 20, againstCelsius: 60 }).ok).toBe(false);
  });
  it("[SI13] hot menthol's fit is refused at hive temperature and boils where the handbook says", () => {
    expect(vapourPressure("menthol-melt", 25).ok).toBe(false);
    expect(vapourPressure("menthol-melt", 371.9 - 273.15).ok).toBe(false);
    expect(vapourPressure("menthol-melt", 372.1 - 273.15).ok).toBe(true);
    const { kelvinPrinted, pascals: atmosphere } = table.mentholBoilingCelsius;
    // The fit ends 0.15 K below the printed boiling point, where it gives a little less than an atmosphere: 488.1 K by the fit.
    expect(pascals("menthol-melt", 487 - 273.15).pascals / atmosphere).toBeGreaterThan(0.95);
    expect(pascals("menthol-melt", 487 - 273.15).pascals).toBeLessThan(atmosphere);
    expect(vapourPressure("menthol-melt", kelvinPrinted - 273.15).ok).toBe(false);
    expect(pascals("menthol", 25).trust).toBe("estimate");
    // Carried down to 25 °C it would have given 9.97 Pa, against 4.5 measured on the liquid and 3.6 for crystals.
    expect(table.liquidMentholAt25Extrapolated / pascals("menthol", 25).pascals).toBeGreaterThan(2);
  });
  it("[SI13] crystals at 30 °C give 5.7 times the vapour of 15 °C", () => {
    const ratio = vapourRatio({ substance: "menthol", celsius: 30, againstCelsius: 15 });
    expect(ratio.ok && ratio.value).toBeCloseTo(5.7, 1);
  });
});

function stationMeans(): readonly { readonly station: string; readonly months: readonly number[] }[] {
  const rows = readFileSync("examples/canada-windows/canada_monthly_normals.csv", "utf8").trim().split("\n").slice(1);
  const stations = new Map<string, number[]>();
  for (const row of rows) {
    const cells = row.split(",");
    const key = `${cells[0]} ${cells[1]}`;
    const months = stations.get(key) ?? [];
    months[Number(cells.at(-3)) - 1] = Number(cells.at(-2));
    stations.set(key, months);
  }
  return [...stations].map(([station, months]) => ({ station, months }));
}
