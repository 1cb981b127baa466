/** Calendar days against the calendar of the engine, which knows the Gregorian rules by itself. */
import { expect, it } from "vitest";
import { addDays, dayFromNumber, dayNumber, daysBetween, daysInMonth, isDay, seasonOf } from "./index.ts";

/** Days since 1970 by the engine's own calendar. */
const engineNumber = (day: string): number => Date.parse(`${day}T00:00:00Z`) / 86_400_000;

it("numbers days as the engine does, forth and back, across leap days and the year 0", () => {
  for (let number = -719_500; number < 120_000; number += 373) {
    const day = dayFromNumber(number);
    expect(dayNumber(day)).toBe(number);
    expect(engineNumber(day)).toBe(number);
  }
  for (const day of ["1900-02-28", "2000-02-29", "2024-02-29", "2026-12-31", "0001-01-01", "9999-12-31"])
    expect(dayNumber(day)).toBe(engineNumber(day));
});

it("knows which days exist", () => {
  for (const text of ["2024-02-29", "2000-02-29", "2026-12-31"]) expect(isDay(text), text).toBe(true);
  for (const text of [
    "2026-02-29",
    "1900-02-29",
    "2026-04-31",
    "2026-13-01",
    "2026-00-10",
    "26-1-1",
    "2026-03-09T10:00",
  ])
    expect(isDay(text), text).toBe(false);
  expect([1, 2, 4, 12].map((month) => daysInMonth(2024, month))).toEqual([31, 29, 30, 31]);
});

it("adds and counts days over month, year and leap day", () => {
  expect(addDays("2024-02-28", 2)).toBe("2024-03-01");
  expect(addDays("2026-01-01", -1)).toBe("2025-12-31");
  expect(daysBetween("2024-01-01", "2025-01-01")).toBe(366);
  expect(() => addDays("2026-02-30", 1)).toThrow("day must be");
});

it("turns the seasons south of the equator", () => {
  expect(["2026-01-15", "2026-04-15", "2026-07-15", "2026-10-15"].map((day) => seasonOf(day, 45))).toEqual([
    "winter",
    "spring",
    "summer",
    "autumn",
  ]);
  expect(seasonOf("2026-01-15", -33)).toBe("summer");
});
