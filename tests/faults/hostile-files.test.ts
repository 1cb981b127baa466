/** Whatever file is given to be brought in: an answer within two seconds, nothing by halves, no error of ours. */
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import writeExcel from "write-excel-file/node";
import { dryRun, type Mapping, readMapping } from "../../src/transfer/index.ts";
import { isFull, seeded, tell, tries } from "./count.ts";

const read = readMapping({
  key: "hostile",
  source: "invented for tests",
  asOf: "2026-03-01",
  apiary: { column: "yard", places: { N: { code: "N", name: "North", place: "invented" } } },
  colony: { column: "hive" },
  case: { code: "{apiary}-1", question: "why", openedOn: "2026-03-01" },
  results: [{ name: "bench", test: "tracheal-dissection", on: { column: "day" }, positive: "pos", examined: "exam" }],
  findings: [{ finding: "crawlers", column: "crawl", present: ["y"], absent: ["n"], on: { column: "day" } }],
});
if (!read.ok) throw new Error("the mapping fits");
const mapping: Mapping = read.value;

const header = ["yard", "hive", "day", "pos", "exam", "crawl"];
type Below = (bound: number) => number;
const oddCells = [
  "",
  "0",
  "n/a",
  "=1+1",
  "@x",
  '"',
  '""',
  "\r",
  "\n",
  "\t",
  "\0",
  "\ufffd",
  "1e9",
  "-3",
  "31/02/2026",
  "03/04/2026",
  "2026-03-09",
  "1-Mar",
  "x".repeat(40_000),
  "𝟜",
  "y",
  "__proto__",
  "1,5",
  "&#x0;",
  "<c>",
  "]]>",
];

function rowsOf(below: Below): readonly (readonly string[])[] {
  return Array.from({ length: below(8) }, (_, index) => {
    const row = ["N", `h${below(3) === 0 ? 1 : index}`, "2026-03-09", String(below(60)), "50", below(2) ? "y" : ""];
    for (let change = below(3); change > 0; change -= 1)
      row[below(row.length)] = oddCells[below(oddCells.length)] ?? "";
    if (below(12) === 0) row.splice(below(row.length), 1);
    return row;
  });
}

const asCsv = (rows: readonly (readonly string[])[]) => [header, ...rows].map((row) => `${row.join(",")}\n`).join("");
const asJson = (rows: readonly (readonly string[])[]) =>
  JSON.stringify(
    rows.map((row) =>
      Object.fromEntries(row.map((cell, at) => [header[at] ?? "more", /^\d+$/.test(cell) ? Number(cell) : cell])),
    ),
  );

/** The bytes with some of them changed, cut, doubled or put elsewhere. */
function battered(bytes: Uint8Array, below: Below): Uint8Array {
  const made = Uint8Array.from(bytes);
  for (let change = below(6); change > 0 && made.length > 0; change -= 1) made[below(made.length)] = below(256);
  const how = below(4);
  if (how === 0) return made.subarray(0, below(made.length + 1));
  if (how === 1)
    return Uint8Array.from([...made.subarray(0, 4000), ...made.subarray(below(made.length + 1)).subarray(0, 4000)]);
  return made;
}

describe("hostile files", () => {
  it("[TR35] are answered within two seconds: all of a file or nothing of it, in words", async () => {
    const below = seeded(35);
    const rounds = tries(400, 12_000);
    const whole = new Uint8Array(
      await writeExcel(
        [header, ["N", "h1", "2026-03-09", "3", "50", "y"]].map((row) =>
          row.map((value) => ({ value, type: String })),
        ) as never,
        { sheet: "a" },
      ).toBuffer(),
    );
    const files = unzipSync(whole);
    const sheet = new TextDecoder().decode(files["xl/worksheets/sheet1.xml"]);
    const workbook = (): Uint8Array => {
      if (below(2) === 0) return battered(whole, below);
      // The parts themselves battered, the archive around them whole.
      const at = below(sheet.length);
      const pieces = [
        "<c ",
        '<row r="',
        "</row>",
        "<v>",
        "<f>",
        '<c r="ZZZ9">',
        '<c r="A1" t="s"><v>999</v></c>',
        "<".repeat(3000),
        '<c r="B2"><v>1e999</v></c>',
        "&#1114112;",
        "<!DOCTYPE x [<!ENTITY a 'b'>]>",
      ];
      const changed = sheet.slice(0, at) + pieces[below(pieces.length)] + sheet.slice(at + below(40));
      return zipSync({ ...files, "xl/worksheets/sheet1.xml": strToU8(changed) });
    };
    const made = [
      () => strToU8(asCsv(rowsOf(below))),
      () => battered(strToU8(asCsv(rowsOf(below))), below),
      () => strToU8(asJson(rowsOf(below))),
      () => battered(strToU8(asJson(rowsOf(below))), below),
      workbook,
    ];
    let [taken, refused, slowest] = [0, 0, 0];
    for (const tried of rounds) {
      const given = (made[tried % made.length] as () => Uint8Array)();
      const began = performance.now();
      const answer = dryRun({ given, mapping, today: "2026-11-27" });
      slowest = Math.max(slowest, performance.now() - began);
      const isBlocked = answer.problems.some(({ severity }) => severity === "blocked");
      expect(isBlocked).toBe(!answer.ok);
      if (answer.ok) taken += 1;
      else refused += 1;
      for (const { field } of answer.problems) expect(field).toMatch(/^line \d+/);
    }
    tell({
      fault: "hostile files to bring in",
      tried: rounds.count(),
      against: `${refused} refused in words, ${taken} taken whole; slowest ${Math.round(slowest)} ms`,
    });
    expect(slowest).toBeLessThan(isFull ? 2000 : 10_000); // in the gate other tests hold the processor meanwhile
    expect(taken).toBeGreaterThan(rounds.count() / 20);
    expect(refused).toBeGreaterThan(rounds.count() / 4);
  });
});
