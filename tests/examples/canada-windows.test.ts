/** Three Canadian stations: the program's windows against a reckoning made apart from it. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { type LabelRecord, type WindowsInput, windows } from "../../src/reasoning/control/index.ts";
import { weatherYear } from "../../src/reasoning/site/index.ts";

const folder = "examples/canada-windows";
const json = (file: string) => JSON.parse(readFileSync(`${folder}/${file}`, "utf8"));

interface Station extends Pick<WindowsInput, "supers" | "flows" | "treatments"> {
  readonly station: string;
}
interface Expected {
  readonly station: string;
  readonly warmestDayMean: number;
  readonly windows: readonly { readonly from: string; readonly to: string; readonly latestStart: string }[];
  readonly refused: Readonly<Record<string, readonly (readonly [string, string])[]>>;
}
const input = json("input.json") as {
  readonly labelRecord: LabelRecord;
  readonly from: string;
  readonly to: string;
  readonly stations: readonly Station[];
};
const expected = json("expected.json") as readonly Expected[];

const rows = readFileSync(`${folder}/canada_monthly_normals.csv`, "utf8").trim().split("\n").slice(1);
const monthsOf = (station: string): readonly number[] =>
  rows
    .map((row) => row.split(","))
    .filter(([, name]) => name === station)
    .sort((a, b) => Number(a[5]) - Number(b[5]))
    .map((cells) => Number(cells[6]));

describe("windows at Canadian stations", () => {
  it("asks about the stations that were reckoned", () => {
    expect(input.stations.map(({ station }) => station)).toEqual(expected.map(({ station }) => station));
    expect(input.labelRecord.invented).toBe(true);
  });

  it.each(expected)(
    "[CO9] [CO10] $station: windows and refused spans, day by day",
    ({ station, windows: wanted, refused }) => {
      const { supers, flows, treatments } = input.stations.find((each) => each.station === station) as Station;
      const answer = windows({
        site: { monthlyMeanCelsius: monthsOf(station) },
        labelRecord: input.labelRecord,
        ...(supers ? { supers } : {}),
        ...(flows ? { flows } : {}),
        ...(treatments ? { treatments } : {}),
        from: input.from,
        to: input.to,
      });
      if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
      expect(answer.value.windows.map(({ from, to, latestStart }) => ({ from, to, latestStart }))).toEqual(wanted);
      const spans = Object.groupBy(answer.value.refused, ({ reason }) => reason);
      const got = Object.fromEntries(
        Object.entries(spans).map(([reason, list]) => [reason, list.map(({ date, until }) => [date, until])]),
      );
      expect(got).toEqual(refused);
    },
  );

  it.each(expected)("[SI1] $station: the warmest day of the year's means", ({ station, warmestDayMean }) => {
    const year = weatherYear({ monthlyMeanCelsius: monthsOf(station) }, 2026);
    const highest = year.ok ? Math.max(...year.value.days.map(({ meanCelsius }) => meanCelsius ?? -99)) : Number.NaN;
    expect(highest).toBeCloseTo(warmestDayMean, 6);
  });
});
