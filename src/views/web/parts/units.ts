/** In which units this reader types and reads: remembered on this device. */
import { useSyncExternalStore } from "react";
import { fahrenheit, ounces } from "../../../units/index.ts";
import type { EntryUnits } from "../../model/index.ts";

const key = "skepsis.units";
const metric: EntryUnits = { temperature: "celsius", weight: "grams" };
const american: EntryUnits = { temperature: "fahrenheit", weight: "ounces" };
const listeners = new Set<() => void>();

const read = (): EntryUnits => {
  try {
    return localStorage.getItem(key) === "american" ? american : metric;
  } catch {
    return metric;
  }
};

/** Keeps the choice. */
export function chooseUnits(units: "metric" | "american"): void {
  try {
    localStorage.setItem(key, units);
  } catch {
    // a browser that keeps nothing starts with metric units each time
  }
  for (const listener of listeners) listener();
}

/** The units of this reader. */
export const useUnits = (): EntryUnits =>
  useSyncExternalStore(
    (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    read,
    () => metric,
  );

const short = (value: number, digits: number): string => String(Number(value.toFixed(digits))).replace("-", "−");

/** Degrees as shown, with their unit. */
export const shownDegrees = (celsius: number, units: EntryUnits): { readonly value: string; readonly unit: string } =>
  units.temperature === "fahrenheit"
    ? { value: short(fahrenheit(celsius), 1), unit: "°F" }
    : { value: short(celsius, 1), unit: "°C" };

/** Degrees with one digit after the point, for columns of them. */
export const degreesInColumn = (celsius: number, units: EntryUnits): string =>
  (units.temperature === "fahrenheit" ? fahrenheit(celsius) : celsius).toFixed(1).replace("-", "−");

/** A weight as shown, with its unit. */
export const shownWeight = (grams: number, units: EntryUnits): { readonly value: string; readonly unit: string } =>
  units.weight === "ounces" ? { value: short(ounces(grams), 2), unit: "oz" } : { value: short(grams, 1), unit: "g" };
