/** A form gives its values, or one problem a field, each with a sentence. */
import { expect, it } from "vitest";
import { wordsOf } from "../words/index.ts";
import { parseNumber, present, readForm } from "./form.ts";

it("reads numbers as people type them and nothing else", () => {
  expect(["1,5", "1.5", ".5", "−3", "+2", "7"].map(parseNumber)).toEqual([1.5, 1.5, 0.5, -3, 2, 7]);
  expect(["", "1e3", "1.5.2", "0x10", "Infinity", "1 2"].map(parseNumber)).toEqual([
    null,
    null,
    null,
    null,
    null,
    null,
  ]);
});

it("gathers every problem, each named by its field and with a sentence", () => {
  const form = readForm({ grams: "many", days: "2.5", high: "99", on: "2026-02-30" });
  form.text("name");
  form.number("grams", { min: 0, max: 100 });
  form.number("days", { min: 1, max: 30, whole: true });
  form.number("high", { min: 0, max: 60, unit: "°C" });
  form.day("on");
  form.oneOf("from", ["S", "E"]);
  const result = form.result({});
  expect(result.ok).toBe(false);
  expect(result.problems.map(({ field, code }) => `${field}: ${code}`)).toEqual([
    "name: field-empty",
    "grams: field-not-number",
    "days: field-not-whole",
    "high: field-out-of-range",
    "on: field-not-day",
    "from: field-not-chosen",
  ]);
  for (const { code, slots } of result.problems)
    expect(wordsOf("en").problems[code]?.(slots)).not.toMatch(/undefined|^$/);
});

it("leaves out what was not filled in", () => {
  const form = readForm({ name: " Withen Bank ", note: "" });
  expect(form.result(present({ name: form.text("name"), note: form.maybeText("note") }))).toEqual({
    ok: true,
    value: { name: "Withen Bank" },
    problems: [],
  });
});
