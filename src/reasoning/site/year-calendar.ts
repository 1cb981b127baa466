/** The apiary's year: when something flows, when supers are on, when it is warm enough to grow. */
import { type Day, daysBetween, daysInMonth, ensure, isDay } from "../../units/index.ts";
import type { WeatherYear } from "./weather-year.ts";

/** First and last day, both included. */
export interface Span {
  readonly from: Day;
  readonly to: Day;
}

/** Honey supers: on from a day until the day they come off (that day counts as off); null while they are still on. */
export interface Supers {
  readonly on: Day;
  readonly off: Day | null;
}

/** The earlier of two days. */
export const earlierOf = (a: Day, b: Day): Day => (daysBetween(a, b) > 0 ? a : b);

/** The later of two days. */
export const laterOf = (a: Day, b: Day): Day => (daysBetween(a, b) > 0 ? b : a);

/** Whether the day lies in one of the spans. */
export const isWithin = (day: Day, spans: readonly Span[]): boolean =>
  spans.some(({ from, to }) => day >= from && day <= to);

/** Whether supers are on the hives on that day. The day they come off counts as off. */
export const supersAreOn = (day: Day, supers: readonly Supers[]): boolean =>
  supers.some(({ on, off }) => day >= on && (off === null || day < off));

/** The first day after `day` on which supers go on; null when none is recorded. */
export function nextSupersOn(day: Day, supers: readonly Supers[]): Day | null {
  const later = supers.map(({ on }) => on).filter((on) => on > day);
  return later.sort()[0] ?? null;
}

/**
 * A span of an ordinary year moved into another year, by month and day. 29 February becomes the last day of
 * February. A span over New Year keeps its length in years.
 *
 * @throws DomainError for days that do not exist
 *
 * @example
 * inYear({ from: "2024-02-29", to: "2024-05-01" }, 2026)  // → {"from":"2026-02-28","to":"2026-05-01"}
 */
export function inYear({ from, to }: Span, year: number): Span {
  ensure(isDay(from) && isDay(to) && from <= to, "span", `${from} to ${to}`, "two days in order");
  const moved = (day: Day, into: number): Day => {
    const month = Number(day.slice(5, 7));
    const date = Math.min(Number(day.slice(8)), daysInMonth(into, month));
    return `${String(into).padStart(4, "0")}-${day.slice(5, 7)}-${String(date).padStart(2, "0")}`;
  };
  return { from: moved(from, year), to: moved(to, year + Number(to.slice(0, 4)) - Number(from.slice(0, 4))) };
}

/**
 * Runs of days whose mean temperature is at or above a figure the caller names; empty when no mean is known.
 * There is no default figure: what counts as growing weather depends on the plant asked about.
 */
export function growingSpans(weather: WeatherYear, fromCelsius: number): readonly Span[] {
  const spans: { from: Day; to: Day }[] = [];
  let open: { from: Day; to: Day } | null = null;
  for (const { date, meanCelsius } of weather.days) {
    const grows = meanCelsius !== null && meanCelsius >= fromCelsius;
    if (!grows) open = null;
    else if (open) open.to = date;
    else {
      open = { from: date, to: date };
      spans.push(open);
    }
  }
  return spans;
}
