/** Forms keep what was typed in Celsius and grams, and refuse what cannot be. */
import { expect, it } from "vitest";
import { readApiaryForm, readFlowForm, readTreatmentForm, readWeatherForm } from "./apiary-form.ts";
import { noApiaryChosen, readOpening } from "./case-form.ts";
import { readLabelForm } from "./label-form.ts";

const label = {
  jurisdiction: "Examplia",
  activeIngredient: "menthol",
  dose: "1.8",
  applications: "1",
  daysBetweenApplications: "0",
  minDailyHigh: "60",
  maxDailyHigh: "80",
  durationDays: "28",
  supersAllowed: "no",
  daysBeforeSupers: "28",
  placement: "top bars",
  source: "printed label",
};
const american = { temperature: "fahrenheit", weight: "ounces" } as const;
const metric = { temperature: "celsius", weight: "grams" } as const;

it("twelve means in Fahrenheit typed as Celsius are known for what they are", () => {
  // Camrose, Alberta: the published normals of examples/canada-windows, turned to Fahrenheit; July is the warmest.
  const camrose = [-11.6, -9.6, -4.1, 4.5, 10.5, 14.5, 16.8, 15.8, 10.4, 4.1, -5.1, -9.9];
  const means = camrose.map((mean) => (mean * 1.8 + 32).toFixed(1));
  const fields = {
    ...Object.fromEntries(means.map((mean, index) => [`month-${index + 1}`, String(mean)])),
    source: "a station",
  };
  const typed = readWeatherForm(fields, metric);
  expect(typed).toMatchObject({
    ok: false,
    problems: [{ code: "temperatures-look-like-fahrenheit", field: "month-7" }],
  });
  expect(readWeatherForm(fields, american).ok).toBe(true);
});

it("keeps a label typed in ounces and Fahrenheit as grams and Celsius, unrounded", () => {
  const read = readLabelForm(label, american, "2026-03-09");
  // 1.8 oz × 28.349523125 g; (60 − 32)/1.8 and (80 − 32)/1.8
  expect(read).toMatchObject({ ok: true, value: { supersAllowed: false, readOn: "2026-03-09" } });
  if (!read.ok) return;
  expect(read.value.doseGramsPerColony).toBeCloseTo(51.029141625, 9);
  expect(read.value.minDailyHighCelsius).toBeCloseTo(15.5555555556, 9);
  expect(read.value.maxDailyHighCelsius).toBeCloseTo(26.6666666667, 9);
  expect(Object.keys(read.value)).not.toContain("concentration");
});

it("refuses a label whose highest temperature is below its lowest, and bounds in the unit typed", () => {
  const reversed = readLabelForm({ ...label, maxDailyHigh: "50" }, american, "2026-03-09");
  expect(reversed.problems).toMatchObject([{ code: "field-range-reversed", field: "maxDailyHigh" }]);
  const hot = readLabelForm({ ...label, minDailyHigh: "60", maxDailyHigh: "80" }, metric, "2026-03-09");
  expect(hot.problems).toMatchObject([
    { code: "field-out-of-range", field: "maxDailyHigh", slots: { max: 60, unit: "°C" } },
  ]);
});

it("needs twelve months and a source for the weather", () => {
  const months = Object.fromEntries(Array.from({ length: 12 }, (_, index) => [`month-${index + 1}`, "50"]));
  const read = readWeatherForm({ ...months, source: "own station" }, american);
  expect(read.ok && read.value.monthlyMeanCelsius).toEqual(Array(12).fill(10));
  expect(readWeatherForm({ ...months, "month-7": "" }, american).problems).toMatchObject([
    { field: "month-7" },
    { field: "source" },
  ]);
});

it("refuses spans that end before they start", () => {
  expect(readFlowForm({ name: "lime", from: "2026-07-10", to: "2026-06-10" }).problems).toMatchObject([
    { field: "to" },
  ]);
  expect(
    readTreatmentForm({ activeIngredient: "thymol", on: "2026-08-10", off: "2026-08-01" }, metric).problems,
  ).toMatchObject([{ field: "off" }]);
});

it("refuses a code that another has", () => {
  expect(readApiaryForm({ code: "WB", name: "a", place: "b" }, ["WB"]).problems).toMatchObject([
    { code: "field-code-taken" },
  ]);
  const read = readOpening({
    fields: {
      code: "TV-26-014",
      question: "Why do bees crawl?",
      author: "specialist 1",
      newColonies: "2",
      "colony:c1": "on",
    },
    apiary: "a1",
    takenApiaries: [],
    takenCases: [],
    today: "2026-03-02",
  });
  expect(read).toMatchObject({
    ok: true,
    value: {
      case: { due: "2026-03-09", openedOn: "2026-03-02" },
      apiary: { id: "a1" },
      colonies: ["c1"],
      newColonies: 2,
    },
  });
});

it("takes the day of the call and when it began, and refuses days that cannot be", () => {
  const read = (fields: Record<string, string>) =>
    readOpening({
      fields: { code: "TV-26-015", question: "Why?", author: "specialist 1", ...fields },
      apiary: "a1",
      takenApiaries: [],
      takenCases: [],
      today: "2026-03-02",
    });
  const codes = (fields: Record<string, string>) =>
    read(fields).problems.map((trouble) => [trouble.code, trouble.field]);
  expect(read({ openedOn: "2026-02-20", beganOn: "2026-02-14" })).toMatchObject({
    ok: true,
    value: { case: { openedOn: "2026-02-20", beganOn: "2026-02-14", due: "2026-03-09" } },
  });
  expect(read({})).toMatchObject({ ok: true, value: { case: { openedOn: "2026-03-02" } } });
  expect(codes({ openedOn: "2026-03-03" })).toEqual([["day-to-come", "openedOn"]]);
  expect(codes({ openedOn: "2021-03-01" })).toEqual([["day-long-ago", "openedOn"]]);
  expect(codes({ openedOn: "2021-03-02" })).toEqual([]);
  expect(codes({ due: "1999-01-01" })).toEqual([["day-before-call", "due"]]);
  expect(codes({ beganOn: "1999-01-01" })).toEqual([["day-long-ago", "beganOn"]]);
  expect(codes({ openedOn: "2026-02-20", beganOn: "2026-02-21" })).toEqual([["noticed-after-call", "beganOn"]]);
});

it("asks which apiary while none is chosen", () => {
  const read = readOpening({
    fields: { code: "TV-26-015", question: "Why?", author: "specialist 1" },
    apiary: noApiaryChosen,
    takenApiaries: [],
    takenCases: [],
    today: "2026-03-02",
  });
  expect(read.problems.map((trouble) => [trouble.code, trouble.field])).toEqual([["field-not-chosen", "apiary"]]);
});

it("asks for the place when the apiary is new", () => {
  const read = readOpening({ fields: {}, apiary: null, takenApiaries: [], takenCases: [], today: "2026-03-02" });
  expect(read.problems.map((trouble) => trouble.field)).toEqual([
    "apiaryName",
    "apiaryCode",
    "district",
    "code",
    "question",
    "author",
  ]);
});
