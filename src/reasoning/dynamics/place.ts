/** A place as people know it, read as the model needs it: an ordinary year of warmth and nectar, and the highs of a run. */
import { addDays, answered, blocked, type Day, type Problem, type Result } from "../../units/index.ts";
import { dailyMeans, type HighMethod, type SiteTemperatures, temperaturesBetween } from "../site/index.ts";
import { dayOfYear } from "./calendar.ts";
import type { DynamicsSite, Flow } from "./drivers.ts";
import type { DynamicsParameters } from "./parameters.ts";
import { dynamicsProblem } from "./problems.ts";
import { type DayRates, type RateYear, rateYear } from "./rates.ts";

/** A place as people know it; temperatures as the planner takes them. None at all: the invented site. */
export interface CourseSite extends SiteTemperatures {
  /** Days in the site's own calendar. Left out: the invented flows. */
  readonly flows?: readonly Flow[];
}

/** The highs of a run, by the planner's own weather year as far as it knows them. */
export interface Highs {
  /**
   * How they are known; assumed: only means are, and a height above them is assumed, where the planner takes the mean
   * itself, since it must not promise warmth; invented: of the invented site, whose highs lie as far above its means.
   */
  readonly method: Exclude<HighMethod, "mean-in-place-of-high"> | "assumed" | "invented";
  /** High of a day of the run, Celsius. */
  readonly on: (elapsed: number) => number;
}

/** A place ready for a run. */
export interface ReadyPlace {
  readonly southern: boolean;
  readonly rates: RateYear;
  readonly highs: Highs;
}

/**
 * Reads a place for a run between two days. Months that are missing or no numbers are told by the site's own problems.
 *
 * Daily highs alone say nothing of means: warmth, flight and the highs of days without one are those of the invented
 * site, which is told.
 */
export function placeOf(
  { flows, ...temperatures }: CourseSite,
  { from, to, parameters }: { readonly from: Day; readonly to: Day; readonly parameters: DynamicsParameters },
): Result<ReadyPlace> {
  const { monthlyMeanCelsius, dailyMaxCelsius, highAboveMeanCelsius, latitude } = temperatures;
  const bad = (flows ?? []).findIndex(
    ({ day, spreadDays, strength }) =>
      !(day >= 1 && day <= 365 && spreadDays > 0 && spreadDays < Infinity && strength >= 0 && strength <= 1),
  );
  if (bad >= 0)
    return blocked(dynamicsProblem("season-flow-out-of-range", "blocked", `site.flows[${bad}]`, { flow: bad + 1 }));
  if (latitude !== undefined && !(latitude >= -90 && latitude <= 90))
    return blocked(dynamicsProblem("season-latitude-out-of-range", "blocked", "site.latitude", { latitude }));
  const isInvented = monthlyMeanCelsius === undefined && dailyMaxCelsius === undefined;
  // The check of a place wants temperatures: without any, those of no warmth at all stand in, for the check alone.
  const weather = temperaturesBetween(
    isInvented ? { ...temperatures, monthlyMeanCelsius: new Array<number>(12).fill(0) } : temperatures,
    { from, to },
  );
  if (!weather.ok) return weather;

  const southern = (latitude ?? 0) < 0;
  const site: DynamicsSite = {
    southern,
    ...(flows === undefined ? {} : { flows }),
    ...(monthlyMeanCelsius === undefined ? {} : { dailyMeanCelsius: dailyMeans(monthlyMeanCelsius, ordinaryYear) }),
  };
  const rates = rateYear(parameters, site);
  const isAssumed = weather.value.method === "mean-in-place-of-high";
  const known = new Map(
    isInvented || isAssumed ? [] : weather.value.days.map(({ date, highCelsius }) => [date, highCelsius]),
  );
  const above = highAboveMeanCelsius ?? parameters.highAboveMeanCelsius;
  const on = (elapsed: number): number => {
    const date = addDays(from, elapsed);
    return known.get(date) ?? (rates[dayOfYear(date)] as DayRates).drivers.celsius + above;
  };
  return answered({ southern, rates, highs: { method: methodOf(isInvented, weather.value.method), on } }, [
    ...notesOf(isInvented, dailyMaxCelsius !== undefined, weather.problems),
    ...monthsOutside(monthlyMeanCelsius ?? []),
    dynamicsProblem("season-calendar-cool-temperate", "noted", "site", {}),
  ]);
}

/**
 * Means of months that the calendar of laying and winter bees was made for, Celsius: a winter whose coldest month lies
 * from −25 to 10, a summer whose warmest lies from 10 to 30. Judgement; the invented site has −4 and 22.
 */
export const tunedMonths = { coldestLeast: -25, between: 10, warmestMost: 30 } as const;

function monthsOutside(means: readonly number[]): readonly Problem[] {
  const [coldest, warmest] = [Math.min(...means), Math.max(...means)];
  const { coldestLeast, between, warmestMost } = tunedMonths;
  const isInside = coldest >= coldestLeast && coldest <= between && warmest >= between && warmest <= warmestMost;
  if (means.length === 0 || isInside) return [];
  const slots = { coldest, warmest, ...tunedMonths };
  return [dynamicsProblem("season-months-outside", "warned", "site.monthlyMeanCelsius", slots)];
}

const methodOf = (isInvented: boolean, method: HighMethod): Highs["method"] =>
  isInvented ? "invented" : method === "mean-in-place-of-high" ? "assumed" : method;

function notesOf(isInvented: boolean, isHighsAlone: boolean, problems: readonly Problem[]): readonly Problem[] {
  if (isInvented) return [dynamicsProblem("season-site-invented", "noted", "site", {})];
  const told = problems.map((each) =>
    each.code === "mean-used-as-high" ? dynamicsProblem("season-highs-assumed", "noted", each.field, {}) : each,
  );
  return isHighsAlone ? [...told, dynamicsProblem("season-highs-alone", "noted", "site", {})] : told;
}

/** Any year without a leap day. */
const ordinaryYear = 2026;
