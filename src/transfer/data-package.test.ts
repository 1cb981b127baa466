/** Tidy tables with their dictionary: what the dictionary says is what stands in the files. */
import { unzipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { casebookOf, demonstrationCasebook } from "../../tests/casebook-of.ts";
import type { CellValue } from "./csv.ts";
import { dataPackage, zipped } from "./data-package.ts";
import { readTable } from "./table.ts";
import { gridMiddle } from "./tables/apiaries.ts";
import { type ColumnType, tidyTables } from "./tables/index.ts";

const casebook = demonstrationCasebook();
const made = { created: "2026-04-02T08:00:00.000Z", version: "0.1.0" };

const isOf: Readonly<Record<ColumnType, (value: CellValue) => boolean>> = {
  string: (value) => typeof value === "string",
  integer: (value) => Number.isInteger(value),
  number: (value) => typeof value === "number" && Number.isFinite(value),
  boolean: (value) => typeof value === "boolean",
  date: (value) => typeof value === "string" && /^\d{4}-\d{2}-\d{2}/.test(value),
};

describe("tidy tables", () => {
  it.each(tidyTables)("[TR21] every cell of $name is of the type and words that its dictionary names", (table) => {
    const { columns, rows } = table.of(casebook);
    expect(columns).toEqual(table.columns.map(({ name }) => name));
    expect(rows.length).toBeGreaterThan(0);
    for (const key of table.key) expect(columns).toContain(key);
    for (const [at, { name, type, words, says }] of table.columns.entries()) {
      expect(name).toMatch(/^[a-z]+(_[a-z]+)*$/);
      expect(says).toMatch(/^[A-Z0-9].*\.$/);
      for (const row of rows) {
        const value = row[at] ?? null;
        if (value === null) continue;
        expect([name, value, isOf[type](value)]).toEqual([name, value, true]);
        if (words) expect(words).toContain(value);
      }
    }
  });

  it("[TR21] a bee of the demonstration stands as it was read", () => {
    const bees = tidyTables.find(({ name }) => name === "bees")?.of(casebook);
    const read = Object.values(casebook.specimens).flatMap(({ readings }) =>
      Object.values(readings).flatMap((reading) => Object.values(reading.bees).flatMap(({ candidates }) => candidates)),
    );
    expect(bees?.rows).toHaveLength(read.length);
    const left = bees?.columns.indexOf("left") ?? -1;
    const withMites = read.filter(({ value }) => value.left?.startsWith("mites")).length;
    expect(bees?.rows.filter((row) => String(row[left]).startsWith("mites"))).toHaveLength(withMites);
    expect(withMites).toBeGreaterThan(0);
  });

  it("[TR24] no table holds a coordinate, a caller or the caller's words; the grid is wide", () => {
    const told = casebookOf([
      {
        ...{ kind: "apiary-registered", at: "2026-03-01", about: ["ap"] },
        data: { code: "WB", name: "Withen Bank", place: "Tarrow", latitude: 45.137, longitude: -93.761 },
      },
      { kind: "colony-registered", at: "2026-03-01", about: ["ap", "c1"], data: { code: "WB-01" } },
      {
        ...{ kind: "case-opened", at: "2026-03-01", about: ["k1", "ap"] },
        data: {
          code: "T-1",
          openedOn: "2026-03-01",
          question: "Why?",
          caller: "P. Marl",
          story: "They hop.",
          colonies: ["c1"],
        },
      },
    ]);
    const text = Object.values(dataPackage(told, tidyTables, made)).join("");
    expect(text).not.toMatch(/45\.137|93\.761|Marl|hop|Withen/);
    expect(text).toContain("45.25,-93.75");
    expect([gridMiddle(45.5), gridMiddle(45.499), gridMiddle(-0.01)]).toEqual([45.75, 45.25, -0.25]);
  });
});

describe("a data package", () => {
  it("[TR22] holds its description and one table a file, with the columns that it names", () => {
    const files = dataPackage(casebook, tidyTables, made);
    const described = JSON.parse(files["datapackage.json"] ?? "");
    expect(described).toMatchObject({ profile: "tabular-data-package", created: made.created });
    expect(Object.keys(files).sort()).toEqual(
      ["datapackage.json", ...described.resources.map(({ path }: { path: string }) => path)].sort(),
    );
    for (const { path, schema } of described.resources) {
      const table = readTable(files[path] ?? "");
      if (!table.ok) throw new Error(`${path} cannot be read`);
      expect(table.value.header).toEqual(schema.fields.map(({ name }: { name: string }) => name));
      for (const { description } of schema.fields) expect(description).not.toBe("");
    }
  });

  it("[TR22] zipped and unzipped is the same", () => {
    const files = dataPackage(casebook, tidyTables, made);
    const back = unzipSync(zipped(files));
    expect(
      Object.fromEntries(Object.entries(back).map(([name, bytes]) => [name, new TextDecoder().decode(bytes)])),
    ).toEqual(files);
  });
});
