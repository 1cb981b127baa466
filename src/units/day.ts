/** Calendar days without clock or time zone: ISO text `2026-03-09` outside, a count of days inside. */
import { ensure } from "./problem.ts";

/** A calendar day as ISO text, `YYYY-MM-DD`. */
export type Day = string;

const pattern = /^(\d{4})-(\d{2})-(\d{2})$/;
const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;

/** Whether a year of the Gregorian calendar has 366 days. */
export const isLeapYear = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

/** Days in a month, `month` 1–12. */
export function daysInMonth(year: number, month: number): number {
  ensure(Number.isInteger(month) && month >= 1 && month <= 12, "month", month, "a whole number from 1 to 12");
  return month === 2 && isLeapYear(year) ? 29 : (monthLengths[month - 1] ?? 0);
}

/** Whether the text is a day that exists. `2026-02-30` is not. */
export function isDay(text: string): text is Day {
  const parts = pattern.exec(text);
  if (!parts) return false;
  const [year, month, day] = [Number(parts[1]), Number(parts[2]), Number(parts[3])];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

/**
 * Days since 1970-01-01, negative before.
 * Source: days-from-civil algorithm of the proleptic Gregorian calendar (H. Hinnant, public domain).
 * @example
 * dayNumber("2026-03-09")  // → 20521
 */
export function dayNumber(day: Day): number {
  ensure(isDay(day), "day", day, "a calendar day as YYYY-MM-DD");
  const [year, month, date] = day.split("-").map(Number) as [number, number, number];
  const shifted = month <= 2 ? year - 1 : year;
  const era = Math.floor(shifted / 400);
  const yearOfEra = shifted - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + date - 1;
  return era * 146097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719468;
}

/** The day with this number; inverse of `dayNumber`. */
export function dayFromNumber(number: number): Day {
  ensure(Number.isInteger(number), "number", number, "a whole number of days");
  const shifted = number + 719468;
  const era = Math.floor(shifted / 146097);
  const dayOfEra = shifted - era * 146097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const date = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth < 10 ? shiftedMonth + 3 : shiftedMonth - 9;
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(date).padStart(2, "0")}`;
}

/** The day `days` later (earlier when negative). */
export const addDays = (day: Day, days: number): Day => dayFromNumber(dayNumber(day) + days);

/** Days from `from` to `to`; 0 on the same day. */
export const daysBetween = (from: Day, to: Day): number => dayNumber(to) - dayNumber(from);

/** Month 1–12. */
export const monthOf = (day: Day): number => Number(day.slice(5, 7));

/** Year. */
export const yearOf = (day: Day): number => Number(day.slice(0, 4));

export type Season = "winter" | "spring" | "summer" | "autumn";
const northern: readonly Season[] = ["winter", "spring", "summer", "autumn"];

/**
 * Meteorological season by month: December to February is winter north of the equator.
 * Common practice of climatology; south of the equator it is shifted by six months.
 * @example
 * seasonOf("2026-02-14", 45.2)  // → "winter"
 */
export function seasonOf(day: Day, latitude: number): Season {
  ensure(latitude >= -90 && latitude <= 90, "latitude", latitude, "from −90 to 90 degrees");
  const quarter = Math.floor((monthOf(day) % 12) / 3);
  return northern[latitude < 0 ? (quarter + 2) % 4 : quarter] ?? "winter";
}
