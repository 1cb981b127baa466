/** The table of published figures: the model's side against an independent program, and against the method page. */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import golden from "../../../../tests/golden/season/published-ranges.json" with { type: "json" };
import { calibrationFigures } from "./calibration-figures.ts";
import { checkIds, publishedChecks } from "./published-checks.ts";

const checks = publishedChecks();
/** Half a unit of the last printed digit, and a crumb for figures that lie just between two. */
const half = (digits: number) => 0.50001 * 10 ** -digits;

it.each(golden.checks)(
  "[SE80] $id: the model's figures are those of the independent program",
  ({ id, status, model, digits }) => {
    const found = checks.find((each) => each.id === id) ?? expect.fail("no such check");
    expect(found.status).toBe(status);
    expect(found.model).toHaveLength(model.length);
    found.model.forEach((value, place) => {
      const printed = typeof digits === "number" ? digits : (digits[place] ?? 0);
      expect(Math.abs(value - (model[place] ?? Number.NaN)), `${place}`).toBeLessThan(half(printed));
    });
  },
);

it("[SE80] every check is told once, in order, with its source or as common practice", () => {
  expect(checks.map(({ id }) => id)).toEqual([...checkIds]);
  expect(golden.checks.map(({ id }) => id)).toEqual([...checkIds]);
  for (const { source, published, model } of checks) {
    expect(source === null || /\d{4}|Canadian Beekeeping/.test(source), source ?? "").toBe(true);
    expect(source !== null || published !== null).toBe(true);
    expect(model.every(Number.isFinite)).toBe(true);
  }
});

it("[SE81] the measured figures of the ranges are those of the method page", () => {
  const page = readFileSync("docs/methods/season.md", "utf8");
  const rows = [...page.matchAll(/^\| *(none|\d+) *\| *([\d.]+), p ([\d.]+) *\|(.*)\|$/gm)].map(
    ([, bees, chiSquare, chance, rest = ""]) => {
      const [within90, within50, width90, crps, middleOff, lastCountOff] = rest.split("|").map(Number);
      return {
        ...{ bees: bees === "none" ? 0 : Number(bees), chiSquare: Number(chiSquare), chance: Number(chance) },
        ...{ within90, within50, width90, crps, middleOff, lastCountOff },
      };
    },
  );
  expect(rows).toEqual(calibrationFigures);
});
