/** An import is whole or nothing, is tried before it is done, and adds nothing the second time. */
import { existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { beforeEach, expect, it } from "vitest";
import writeExcel from "write-excel-file/node";
import { said } from "./test-io.ts";

const mapping = {
  key: "example-yard",
  source: "invented for this test",
  asOf: "2026-03-01",
  apiary: { column: "yard", places: { North: { code: "N-1", name: "North yard", place: "an invented place" } } },
  colony: { column: "hive" },
  case: { code: "{apiary}-1", question: "Why do the bees crawl?", openedOn: "2026-03-01" },
  results: [
    { name: "dissection", test: "tracheal-dissection", on: { column: "day" }, positive: "found", examined: "read" },
  ],
};
const table = "yard,hive,day,found,read\nNorth,7,2026-03-02,3,50\nNorth,8,2026-03-02,0,50\n";

let folder: string;
const run = (...argv: string[]) =>
  said(argv, { folder, env: { SKEPSIS_DATA: path.join(folder, "data"), USER: "tester" } });
const write = (name: string, text: string) => writeFileSync(path.join(folder, name), text);
const take = (file: string, ...flags: string[]) => run("import", file, "--mapping", "mapping.json", "--json", ...flags);
const isStored = () => existsSync(path.join(folder, "data", "main.sqlite"));

beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), "skepsis-import-"));
  write("mapping.json", JSON.stringify(mapping));
  write("table.csv", table);
});

it("[TR48] a dry run tells what would be added, new names one by one, and writes nothing", async () => {
  const dry = await take("table.csv", "--dry-run");
  expect(dry.json()).toMatchObject({ dryRun: true, rows: 2, colonies: 2, results: 2, added: 6, standing: 0 });
  expect(dry.json()).toMatchObject({ new: { apiaries: [expect.any(String)], colonies: ["7", "8"] } });
  expect((await run("import", "table.csv", "--mapping", "mapping.json", "--dry-run")).out).toContain(
    "colonies 7 and 8",
  );
  expect(isStored()).toBe(false);
});

it("adds every entry once, and nothing the second time", async () => {
  expect((await take("table.csv")).json()).toMatchObject({ dryRun: false, added: 6, standing: 0, differing: 0 });
  expect((await take("table.csv")).json()).toMatchObject({ added: 0, standing: 6, differing: 0 });
  expect((await run("verify", "--json")).json()).toMatchObject({ isIntact: true, checked: 6 });
  const csv = await run("export", "--format", "csv", "--table", "tests");
  expect(csv.out.split("\r\n")[1]).toMatch(/^N-1-1,N-1,7,tracheal-dissection,2026-03-02,3,50,.*,tester,/);
  expect(JSON.parse((await run("export", "--format", "json")).out).tables.tests).toHaveLength(2);
});

it("[TR25] a workbook and JSON are taken over as the same table is as text, and add nothing after it", async () => {
  const rows = table
    .trim()
    .split("\n")
    .map((line) => line.split(","));
  const cells = rows.map((row) => row.map((value) => ({ value, type: String })));
  writeFileSync(path.join(folder, "table.xlsx"), await writeExcel(cells as never, { sheet: "a" }).toBuffer());
  const [header = [], ...others] = rows;
  write(
    "table.json",
    JSON.stringify(others.map((row) => Object.fromEntries(row.map((cell, at) => [header[at], cell])))),
  );
  expect((await take("table.xlsx")).json()).toMatchObject({ added: 6, standing: 0 });
  expect((await take("table.json")).json()).toMatchObject({ added: 0, standing: 6 });
  expect((await take("table.csv")).json()).toMatchObject({ added: 0, standing: 6 });
});

it("[TR31] a file that is too large is not read to its end", async () => {
  write("large.csv", "x".repeat(65 * 1024 * 1024));
  const told = await take("large.csv");
  expect([told.status, told.json().problems]).toMatchObject([2, [{ message: expect.stringContaining("megabytes") }]]);
});

it("writes nothing when one cell does not fit, and names line and column", async () => {
  write("broken.csv", table.replace("0,50", "60,50"));
  const broken = await take("broken.csv");
  expect(broken.status).toBe(2);
  expect(broken.json().problems).toMatchObject([{ field: "line 3, found", given: 60 }]);
  expect(isStored()).toBe(false);
});

it("says at which line something was mended, in one sentence with one full stop", async () => {
  const mends = [{ row: "8", column: "found", given: "60", use: "6", reason: "A slip of the pen." }];
  write("mapping.json", JSON.stringify({ ...mapping, mends }));
  write("slip.csv", table.replace("0,50", "60,50"));
  const told = await run("import", "slip.csv", "--mapping", "mapping.json", "--dry-run");
  expect(told.out).toMatch(/^- line 3, found: Mended to “6”: A slip of the pen\.$/m);
});

it("shows what stands differently and overwrites nothing", async () => {
  await take("table.csv");
  write("changed.csv", table.replace("3,50", "4,50"));
  expect((await take("changed.csv")).json()).toMatchObject({ added: 0, standing: 5, differing: 1 });
  expect((await run("verify", "--json")).json()).toMatchObject({ checked: 6 });
});

it("says what is missing or cannot be read", async () => {
  expect((await run("import", "table.csv")).err).toContain("--mapping");
  expect((await run("import", "--mapping", "mapping.json")).err).toContain("FILE");
  expect((await run("import", "nowhere.csv", "--mapping", "mapping.json")).err).toContain("nowhere.csv");
  write("half.json", "{");
  expect((await run("import", "table.csv", "--mapping", "half.json")).err).toContain("JSON");
  write("other.json", "{}");
  expect((await run("import", "table.csv", "--mapping", "other.json")).status).toBe(2);
  expect(isStored()).toBe(false);
});
