/** A site's temperatures day by day, from daily highs or from twelve monthly means; nothing is made up in between. */
import {
  answered,
  blocked,
  type Day,
  dayFromNumber,
  dayNumber,
  isDay,
  type Problem,
  type Result,
} from "../../units/index.ts";
import { dailyMeans } from "./daily-means.ts";
import { siteProblem } from "./site-problem.ts";

export interface DailyHigh {
  readonly date: Day;
  /** Highest temperature of the day, Celsius. */
  readonly value: number;
}

/** What is known of a site's temperatures: daily highs of a stated span, or the twelve means of an ordinary year. */
export interface SiteTemperatures {
  readonly dailyMaxCelsius?: readonly DailyHigh[];
  /** January first; mean of day and night. */
  readonly monthlyMeanCelsius?: readonly number[];
  /**
   * How far the day's high lies above the day's mean, Celsius, as measured at the station. Only with monthly
   * means. There is no default: without it the mean stands in place of the high.
   */
  readonly highAboveMeanCelsius?: number;
  /** Degrees, north positive. */
  readonly latitude?: number;
}

/**
 * measured: the day's high was given. mean-plus-given: mean of an ordinary year plus a given height.
 * mean-in-place-of-high: the real high is warmer than the figure, so the figure can show that a day is warm
 * enough, never that it is not too hot.
 */
export type HighMethod = "measured" | "mean-plus-given" | "mean-in-place-of-high";

export interface WeatherDay {
  readonly date: Day;
  /** Mean of the day, Celsius; null when only highs are known. */
  readonly meanCelsius: number | null;
  /** High of the day, Celsius, by the year's `method`. */
  readonly highCelsius: number;
}

export interface WeatherYear {
  readonly method: HighMethod;
  /** Days with a temperature, in order. A day that is missing is missing. */
  readonly days: readonly WeatherDay[];
}

/** Hotter than any month's mean known [memory: about 40 °C in the hottest deserts]; a list in Fahrenheit passes it in any place with bees. */
const hottestMonthCelsius = 42;
/** Hotter than any day measured (56.7 °C, World Meteorological Organization [memory]). */
const hottestDayCelsius = 57;
/** No place has highs of 45 °C on average; a list in Fahrenheit of mild days does. Judgement. */
const hottestAverageHighCelsius = 45;

/**
 * Temperatures of one calendar year by day (365 or 366 for monthly means; the days given for daily highs).
 *
 * Blocked when the values look like Fahrenheit, when a list is missing, doubled or not a list of numbers.
 * Notes what was assumed: an ordinary year is no forecast; a mean in place of a high is cooler than the high.
 *
 * @throws DomainError never for the user's data
 */
export function weatherYear(site: SiteTemperatures, year: number): Result<WeatherYear> {
  const span = temperaturesBetween(site, { from: `${padded(year)}-01-01`, to: `${padded(year)}-12-31` });
  return span;
}

/** As `weatherYear`, for any span of days; monthly means repeat each year. `from` and `to` are both included. */
export function temperaturesBetween(
  site: SiteTemperatures,
  span: { readonly from: Day; readonly to: Day },
): Result<WeatherYear> {
  const { dailyMaxCelsius, monthlyMeanCelsius } = site;
  if (dailyMaxCelsius && monthlyMeanCelsius) return blocked(siteProblem("two-temperature-lists", "site", {}));
  if (dailyMaxCelsius) return fromHighs(dailyMaxCelsius, span);
  if (monthlyMeanCelsius) return fromMonths(site, monthlyMeanCelsius, span);
  return blocked(siteProblem("no-temperatures", "site", {}));
}

function fromHighs(highs: readonly DailyHigh[], span: { readonly from: Day; readonly to: Day }): Result<WeatherYear> {
  const field = (index: number, part: string) => `site.dailyMaxCelsius[${index}].${part}`;
  const problems: Problem[] = [];
  const byDate = new Map<Day, number>();
  highs.forEach(({ date, value }, index) => {
    if (!isDay(date))
      problems.push(siteProblem("temperature-date-unknown", field(index, "date"), { date }, { given: date }));
    else if (!Number.isFinite(value))
      problems.push(siteProblem("temperature-not-a-number", field(index, "value"), { date }, { given: value }));
    else if (value < -90)
      problems.push(siteProblem("temperature-beyond-earth", field(index, "value"), { value }, { given: value }));
    else if (byDate.has(date) && byDate.get(date) !== value)
      problems.push(siteProblem("temperature-date-twice", field(index, "date"), { date }, { given: date }));
    else byDate.set(date, value);
  });
  if (problems.length > 0) return blocked(...problems);
  if (byDate.size === 0) return blocked(siteProblem("no-temperatures", "site.dailyMaxCelsius", {}));
  const values = [...byDate.values()];
  const highest = Math.max(...values);
  const average = values.reduce((sum, value) => sum + value, 0) / values.length;
  if (highest > hottestDayCelsius || average > hottestAverageHighCelsius)
    return blocked(looksLikeFahrenheit("site.dailyMaxCelsius", highest));
  const days = [...byDate]
    .map(([date, highCelsius]) => ({ date, meanCelsius: null, highCelsius }))
    .filter(({ date }) => date >= span.from && date <= span.to)
    .sort((a, b) => (a.date < b.date ? -1 : 1));
  return answered({ method: "measured", days });
}

function fromMonths(
  { highAboveMeanCelsius, latitude }: SiteTemperatures,
  means: readonly number[],
  { from, to }: { readonly from: Day; readonly to: Day },
): Result<WeatherYear> {
  const field = "site.monthlyMeanCelsius";
  if (means.length !== 12)
    return blocked(siteProblem("monthly-means-not-twelve", field, { count: means.length }, { given: means.length }));
  const bad = means.findIndex((mean) => !Number.isFinite(mean));
  if (bad >= 0)
    return blocked(
      siteProblem("month-mean-not-a-number", `${field}[${bad}]`, { month: bad + 1 }, { given: means[bad] }),
    );
  const highest = Math.max(...means);
  if (highest > hottestMonthCelsius) return blocked(looksLikeFahrenheit(field, highest));
  const lowest = Math.min(...means);
  if (lowest < -80)
    return blocked(siteProblem("temperature-beyond-earth", field, { value: lowest }, { given: lowest }));
  const above = highAboveMeanCelsius;
  if (above !== undefined && !(above >= 0 && above <= 30))
    return blocked(
      siteProblem("high-above-mean-out-of-range", "site.highAboveMeanCelsius", { value: above }, { given: above }),
    );

  const problems: Problem[] = [siteProblem("ordinary-year", field, {}, { severity: "noted" })];
  if (above === undefined)
    problems.push(siteProblem("mean-used-as-high", "site.highAboveMeanCelsius", {}, { severity: "noted" }));
  problems.push(...hemisphereDoubt(means, latitude));

  const years = new Map<string, readonly number[]>();
  const days: WeatherDay[] = [];
  for (let number = dayNumber(from); number <= dayNumber(to); number++) {
    const date = dayFromNumber(number);
    const year = date.slice(0, 4);
    const ofYear = years.get(year) ?? dailyMeans(means, Number(year));
    years.set(year, ofYear);
    const meanCelsius = ofYear[number - dayNumber(`${year}-01-01`)] as number;
    days.push({ date, meanCelsius, highCelsius: meanCelsius + (above ?? 0) });
  }
  return answered({ method: above === undefined ? "mean-in-place-of-high" : "mean-plus-given", days }, problems);
}

/** Outside the tropics the warmest month lies in the summer half of the hemisphere; otherwise a sign is likely wrong. */
function hemisphereDoubt(means: readonly number[], latitude: number | undefined): readonly Problem[] {
  if (latitude === undefined || Math.abs(latitude) < 23.5) return [];
  const warmestMonth = means.indexOf(Math.max(...means)) + 1;
  const isNorthernSummer = warmestMonth >= 5 && warmestMonth <= 10;
  if (isNorthernSummer === latitude > 0) return [];
  return [
    siteProblem(
      "hemisphere-unlike-temperatures",
      "site.latitude",
      { latitude, warmestMonth },
      { severity: "warned", given: latitude },
    ),
  ];
}

const looksLikeFahrenheit = (field: string, highest: number): Problem =>
  siteProblem(
    "temperatures-look-like-fahrenheit",
    field,
    { highest, asCelsius: (highest - 32) / 1.8 },
    { given: highest },
  );

const padded = (year: number): string => String(year).padStart(4, "0");
