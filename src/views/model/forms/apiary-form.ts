/**
 * What was typed about an apiary, as the journal keeps it.
 *
 * @module views/model
 */
import { type BodyOf, kinds } from "../../../journal/index.ts";
import { site } from "../../../reasoning/index.ts";
import { blocked, celsius, gramsFromOunces, type Problem, problem, type Result } from "../../../units/index.ts";
import { type Fields, type FormReader, parseNumber, present, readForm } from "../form.ts";

/** In which units the fields were typed. Inside are Celsius and grams. */
export interface EntryUnits {
  readonly temperature: "celsius" | "fahrenheit";
  readonly weight: "grams" | "ounces";
}

/** The bounds of a temperature field in its unit, and how to bring it to Celsius. */
export function temperatureField(units: EntryUnits, min: number, max: number) {
  const fahrenheit = units.temperature === "fahrenheit";
  const bound = (degrees: number) => (fahrenheit ? degrees * 1.8 + 32 : degrees);
  return {
    bounds: { min: bound(min), max: bound(max), unit: fahrenheit ? "°F" : "°C" },
    toCelsius: (typed: number) => (fahrenheit ? celsius(typed) : typed),
  };
}

/** The bounds of a weight field in its unit, and how to bring it to grams. */
export function weightField(units: EntryUnits, minGrams: number, maxGrams: number) {
  const inOunces = units.weight === "ounces";
  const bound = (grams: number) => (inOunces ? Number((grams / gramsFromOunces(1)).toFixed(4)) : grams);
  return {
    bounds: { min: bound(minGrams), max: bound(maxGrams), unit: inOunces ? "oz" : "g" },
    toGrams: (typed: number) => (inOunces ? gramsFromOunces(typed) : typed),
  };
}

/** Body of `apiary-registered`. `taken`: codes of the other apiaries. */
export function readApiaryForm(fields: Fields, taken: readonly string[]): Result<BodyOf<"apiary-registered">> {
  const form = readForm(fields);
  const code = newCode(form, "code", taken);
  return form.result(
    present({
      code,
      name: form.text("name"),
      place: form.text("place"),
      latitude: form.maybeNumber("latitude", { min: -90, max: 90, unit: "°" }),
      longitude: form.maybeNumber("longitude", { min: -180, max: 180, unit: "°" }),
      elevationMetres: form.maybeNumber("elevationMetres", { min: -430, max: 6000, unit: "m" }),
      registration: form.maybeText("registration"),
    }),
  );
}

/** A code that no other has; a problem otherwise. */
export function newCode(form: FormReader, name: string, taken: readonly string[]): string {
  const code = form.text(name);
  if (taken.includes(code))
    form.complain(problem("field-code-taken", "blocked", name, { given: code, slots: { given: code } }));
  return code;
}

/** Twelve means typed as Celsius that can only be Fahrenheit, said at the warmest month; null otherwise. */
function fahrenheitTyped(fields: Fields, units: EntryUnits): Problem | null {
  const typed = Array.from({ length: 12 }, (_, index) => parseNumber(fields[`month-${index + 1}`] ?? ""));
  const means = typed.filter((each) => each !== null);
  if (units.temperature === "fahrenheit" || means.length < 12) return null;
  const year = site.weatherYear({ monthlyMeanCelsius: means }, 2001);
  const found = year.problems.find((each) => each.code === "temperatures-look-like-fahrenheit");
  return found ? { ...found, field: `month-${1 + means.indexOf(Math.max(...means))}` } : null;
}

/** Body of `weather-year-recorded` from twelve monthly means, fields `month-1` to `month-12`. */
export function readWeatherForm(fields: Fields, units: EntryUnits): Result<BodyOf<"weather-year-recorded">> {
  const form = readForm(fields);
  const mistaken = fahrenheitTyped(fields, units);
  if (mistaken) return blocked(mistaken);
  const { bounds, toCelsius } = temperatureField(units, -60, 50);
  const months = Array.from({ length: 12 }, (_, index) => toCelsius(form.number(`month-${index + 1}`, bounds)));
  return form.result(
    present({
      kind: "monthly-means" as const,
      monthlyMeanCelsius: months,
      station: form.maybeText("station"),
      source: form.text("source"),
    }),
  );
}

const { shape: region } = kinds["region-recorded"].body;

/** What may be said of each pest of a region; the first is what is taken where nothing was said. */
export const regionChoices = [
  { name: "varroa", values: region.varroa.options },
  { name: "acarapisWoodi", values: region.acarapisWoodi.options },
  { name: "smallHiveBeetle", values: region.smallHiveBeetle.options },
  { name: "tropilaelaps", values: region.tropilaelaps.options },
  { name: "vespa", values: region.vespa.options },
] as const;

/** Body of `region-recorded`. */
export function readRegionForm(fields: Fields): Result<BodyOf<"region-recorded">> {
  const form = readForm(fields);
  return form.result({
    varroa: form.oneOf("varroa", region.varroa.options),
    acarapisWoodi: form.oneOf("acarapisWoodi", region.acarapisWoodi.options),
    smallHiveBeetle: form.oneOf("smallHiveBeetle", region.smallHiveBeetle.options),
    tropilaelaps: form.oneOf("tropilaelaps", region.tropilaelaps.options),
    vespa: form.oneOf("vespa", region.vespa.options),
    source: form.text("source"),
  });
}

/** Two days in order; a problem on the second field otherwise. */
function span(form: FormReader, fromName: string, toName: string): { readonly from: string; readonly to: string } {
  const [from, to] = [form.day(fromName), form.day(toName)];
  if (from && to && to < from)
    form.complain(problem("field-days-reversed", "blocked", toName, { given: to, slots: { from, to } }));
  return { from, to };
}

/** Body of `flow-recorded`. */
export function readFlowForm(fields: Fields): Result<BodyOf<"flow-recorded">> {
  const form = readForm(fields);
  return form.result({ name: form.text("name"), ...span(form, "from", "to") });
}

/** An end that may still be open; a problem when it lies before the start. */
function maybeOff(form: FormReader, on: string): string | null {
  const off = form.maybeDay("off") ?? null;
  if (off && on && off < on)
    form.complain(problem("field-days-reversed", "blocked", "off", { given: off, slots: { from: on, to: off } }));
  return off;
}

/** Body of `supers-recorded`, for all colonies. */
export function readSupersForm(fields: Fields): Result<BodyOf<"supers-recorded">> {
  const form = readForm(fields);
  const on = form.day("on");
  return form.result({ on, off: maybeOff(form, on), colonies: [] });
}

/** Body of `treatment-recorded`, for all colonies. */
export function readTreatmentForm(fields: Fields, units: EntryUnits): Result<BodyOf<"treatment-recorded">> {
  const form = readForm(fields);
  const { bounds, toGrams } = weightField(units, 0.001, 10_000);
  const on = form.day("on");
  const amount = form.maybeNumber("grams", bounds);
  return form.result(
    present({
      activeIngredient: form.text("activeIngredient"),
      on,
      off: maybeOff(form, on),
      grams: amount === undefined ? undefined : toGrams(amount),
      colonies: [] as string[],
    }),
  );
}
