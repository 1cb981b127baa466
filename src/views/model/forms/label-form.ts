/**
 * A label record as typed from the printed label, as the journal keeps it.
 *
 * @module views/model
 */
import type { BodyOf } from "../../../journal/index.ts";
import { type Day, problem, type Result } from "../../../units/index.ts";
import { type Fields, present, readForm } from "../form.ts";
import { happenedOn } from "../happened.ts";
import { type EntryUnits, temperatureField, weightField } from "./apiary-form.ts";

/** Body of `label-record-loaded`. `today`: the day the label was read, unless another is given. */
export function readLabelForm(fields: Fields, units: EntryUnits, today: Day): Result<BodyOf<"label-record-loaded">> {
  const form = readForm(fields);
  const high = temperatureField(units, -20, 60);
  const dose = weightField(units, 0.001, 10_000);
  const [least, most] = [form.number("minDailyHigh", high.bounds), form.number("maxDailyHigh", high.bounds)];
  if (most < least)
    form.complain(
      problem("field-range-reversed", "blocked", "maxDailyHigh", { given: most, slots: { min: least, max: most } }),
    );
  return form.result(
    present({
      jurisdiction: form.text("jurisdiction"),
      activeIngredient: form.text("activeIngredient"),
      concentration: form.maybeText("concentration"),
      registrationNumber: form.maybeText("registrationNumber"),
      doseGramsPerColony: dose.toGrams(form.number("dose", dose.bounds)),
      applications: form.number("applications", { min: 1, max: 20, whole: true }),
      daysBetweenApplications: form.number("daysBetweenApplications", { min: 0, max: 365, whole: true, unit: "days" }),
      minDailyHighCelsius: high.toCelsius(least),
      maxDailyHighCelsius: high.toCelsius(most),
      durationDays: form.number("durationDays", { min: 1, max: 365, whole: true, unit: "days" }),
      supersAllowed: form.oneOf("supersAllowed", ["no", "yes"]) === "yes",
      daysBeforeSupers: form.number("daysBeforeSupers", { min: 0, max: 365, whole: true, unit: "days" }),
      placement: form.text("placement"),
      protectiveEquipment: form.maybeText("protectiveEquipment"),
      readOn: happenedOn(form, "readOn", today),
      source: form.text("source"),
    }),
  );
}
