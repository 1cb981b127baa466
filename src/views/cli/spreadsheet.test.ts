/** A spreadsheet as a program of that kind would read it: sheets by name, numbers as numbers, formulas as text. */
import { strFromU8, unzipSync } from "fflate";
import { expect, it } from "vitest";
import { spreadsheetOf } from "./spreadsheet.ts";

it("[TR23] has one sheet a table, and a text that looks like a formula stays text", async () => {
  const tables = [
    {
      name: "tests",
      columns: ["colony", "bees"],
      rows: [
        ["=1+1", 300],
        [null, true],
      ],
    },
    { name: "bees", columns: ["left"], rows: [["mites & tube"]] },
  ] as const;
  const files = unzipSync(new Uint8Array(await spreadsheetOf(tables)));
  const read = (name: string) => strFromU8(files[name] ?? new Uint8Array());
  expect(read("xl/workbook.xml").match(/<sheet [^>]*name="([^"]*)"/g)).toHaveLength(2);
  expect(read("xl/workbook.xml")).toMatch(/name="tests".*name="bees"/);
  const sheet = read("xl/worksheets/sheet1.xml");
  expect(sheet).not.toContain("<f>");
  expect(sheet).toMatch(/<v>300<\/v>/);
  const texts = Object.keys(files).map(read).join("");
  expect(texts).toContain("=1+1");
  expect(texts).toContain("mites &amp; tube");
});
