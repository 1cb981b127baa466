/** Files as people have them: workbooks, JSON, text; told by what is in them, read whole or refused. */

import fc from "fast-check";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import writeExcel from "write-excel-file/node";
import { dryRun } from "./dry-run.ts";
import { mostMegabytes, readGiven } from "./given-file.ts";
import { readMapping } from "./mapping.ts";
import { mappingOf, suggestUses, suggestWords } from "./suggest.ts";
import { readTable, type Table } from "./table.ts";

const plain = { delimiter: ",", decimal: "." } as const;

type Given = string | number | Date | null | boolean;
/** A workbook made by a library that knows nothing of this reader. */
async function workbook(rows: readonly (readonly Given[])[], sheet = "Bees"): Promise<Uint8Array> {
  const cells = rows.map((row) =>
    row.map((value) => {
      if (value === null) return null;
      if (value instanceof Date) return { value, type: Date, format: "yyyy-mm-dd" };
      return { value, type: value.constructor as StringConstructor };
    }),
  );
  return new Uint8Array(await writeExcel(cells as never, { sheet }).toBuffer());
}

function tableIn(given: Uint8Array | string): Table {
  const read = readGiven(given, plain);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
const codes = (given: Uint8Array | string, reading: Parameters<typeof readGiven>[1] = plain) =>
  readGiven(given, reading).problems.map(({ code }) => code);

const header = ["yard", "colony", "date", "pos", "exam", "crawl"];
const rows: readonly (readonly Given[])[] = [
  header,
  ["Orsa", "A-1", new Date("2026-03-09T00:00:00Z"), 17, 50, "y"],
  ["Orsa", "A-2", new Date("2026-03-10T00:00:00Z"), 0, 30, null],
];
const csv = "yard,colony,date,pos,exam,crawl\nOrsa,A-1,2026-03-09,17,50,y\nOrsa,A-2,2026-03-10,0,30,\n";
const texts = (table: Table) => [table.header, ...table.rows.map((row) => row.cells)];

const mapping = (() => {
  const read = readMapping({
    key: "invented-bench",
    source: "invented for tests",
    asOf: "2026-03-01",
    apiary: { column: "yard", places: { Orsa: { code: "OH", name: "Orsa Hollow", place: "invented" } } },
    colony: { column: "colony" },
    case: { code: "{apiary}-1", question: "why", openedOn: "2026-03-01" },
    results: [
      { name: "bench", test: "tracheal-dissection", on: { column: "date" }, positive: "pos", examined: "exam" },
    ],
    findings: [{ finding: "crawlers", column: "crawl", present: ["y"], absent: ["n"], on: { column: "date" } }],
  });
  if (!read.ok) throw new Error("the mapping fits");
  return read.value;
})();

describe("a workbook", () => {
  it("[TR25] gives the texts that the same table has as CSV, with days as ISO and rows as they are numbered", async () => {
    const table = tableIn(await workbook(rows));
    expect(texts(table)).toEqual(texts(tableIn(csv)));
    expect(table.rows.map((row) => row.line)).toEqual([2, 3]);
    expect(table.rows[0]?.kinds).toEqual(["text", "text", "date", "number", "number", "text"]);
  });

  it("[TR25] imports as the same table as CSV does", async () => {
    const [one, other] = [await workbook(rows), csv].map((given) => dryRun({ given, mapping, today: null }));
    expect(one?.ok && one.value.drafts).toEqual(other?.ok && other.value.drafts);
    expect(one?.problems).toEqual([]);
  });

  it("[TR25] agrees with the library that wrote it, whatever the texts and numbers", async () => {
    const cell = fc.oneof(
      fc.string({ maxLength: 12 }).map((text) =>
        text
          .trim()
          .replace(/\p{Cc}|\ufffd/gu, "")
          .toWellFormed(),
      ),
      fc.integer({ min: -100_000, max: 100_000 }),
      fc.constant(null),
    );
    await fc.assert(
      fc.asyncProperty(fc.array(fc.tuple(cell, cell), { minLength: 1, maxLength: 6 }), async (drawn) => {
        const known = drawn.filter((row) => row.some((value) => value !== null && String(value).trim() !== ""));
        fc.pre(known.length > 0);
        const table = tableIn(
          await workbook([["a", "b"], ...known.map((row) => row.map((value) => (value === "" ? null : value)))]),
        );
        expect(table.rows.map((row) => row.cells)).toEqual(known.map((row) => row.map((value) => String(value ?? ""))));
      }),
      { seed: 1921, numRuns: 15 },
    );
  });

  it("[TR26] whose codes were made into days or numbers is suspected, cell by cell", async () => {
    const changed = await workbook([
      header,
      ["Orsa", new Date("2026-03-01T00:00:00Z"), new Date("2026-03-09T00:00:00Z"), 1, 50, null],
      ["Orsa", 1.5, new Date("2026-03-09T00:00:00Z"), 1, 50, null],
      ["Orsa", 7, new Date("2026-03-09T00:00:00Z"), 1, 50, null],
    ]);
    const { problems } = dryRun({ given: changed, mapping, today: null });
    expect(problems.map(({ code, line, given }) => [code, line, given])).toEqual([
      ["code-looks-changed", 2, "2026-03-01"],
      ["code-looks-changed", 3, "1.5"],
    ]);
  });

  it("[TR27] runs no formula: what it was last shown with is taken and told; an error is refused", async () => {
    const files = unzipSync(await workbook(rows));
    const name = "xl/worksheets/sheet1.xml";
    const sheet = new TextDecoder().decode(files[name]);
    const withCell = (from: RegExp, to: string) => {
      expect(sheet).toMatch(from);
      return zipSync({ ...files, [name]: strToU8(sheet.replace(from, to)) });
    };
    const formula = dryRun({ given: withCell(/<v>17<\/v>/, "<f>8+9</f><v>17</v>"), mapping, today: null });
    expect(formula.problems).toMatchObject([
      { code: "formula-value-taken", severity: "warned", line: 2, column: "pos", given: "17" },
    ]);
    expect(formula.ok && formula.value.counts.results).toBe(2);
    const error = withCell(/<c r="D2"[^>]*><v>17<\/v>/, '<c r="D2" t="e"><v>#REF!</v>');
    expect(dryRun({ given: error, mapping, today: null })).toMatchObject({
      ok: false,
      problems: [{ code: "cell-error", line: 2 }],
    });
  });

  it("[TR28] that is cut, is none, or unpacks without end is refused and told", async () => {
    const whole = await workbook(rows);
    for (let cut = 3; cut < whole.length; cut += 97) expect(codes(whole.subarray(0, cut))).toEqual(["not-a-workbook"]);
    expect(codes(zipSync({ "a.txt": strToU8("x") }))).toEqual(["not-a-workbook"]);
    const files = unzipSync(whole);
    const name = "xl/sharedStrings.xml";
    const declared = (size: number, content: Uint8Array): Uint8Array => {
      const made = Buffer.from(zipSync({ ...files, [name]: content }));
      made.writeUInt32LE(size, made.lastIndexOf(name) - 46 + 24); // in the directory at the end, which is what is read
      return new Uint8Array(made);
    };
    expect(codes(declared(160 * 1024 * 1024, new Uint8Array(9)))).toEqual(["workbook-too-large"]);
    // One that says it is small and is not gives no more than it says.
    expect(readGiven(declared(10, new Uint8Array(5 * 1024 * 1024)), plain).ok).toBe(false);
  });

  it("[TR29] of several sheets gives the first and says so, or the one that is named", async () => {
    const files = unzipSync(await workbook(rows, "Bees"));
    const text = (name: string) => new TextDecoder().decode(files[name]);
    const book = text("xl/workbook.xml").replace(
      /(<sheet [^>]*)\/>/,
      '$1/><sheet name="Other" sheetId="99" r:id="rId99"/>',
    );
    const links = text("xl/_rels/workbook.xml.rels").replace(
      "</Relationships>",
      '<Relationship Id="rId99" Target="worksheets/sheet9.xml"/></Relationships>',
    );
    const second =
      '<worksheet><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>x</t></is></c></row><row r="2"><c r="A2"><v>5</v></c></row></sheetData></worksheet>';
    const both = zipSync({
      ...files,
      "xl/workbook.xml": strToU8(book),
      "xl/_rels/workbook.xml.rels": strToU8(links),
      "xl/worksheets/sheet9.xml": strToU8(second),
    });
    expect(codes(both)).toEqual(["sheet-chosen"]);
    const other = readGiven(both, { ...plain, sheet: "Other" });
    expect(other.ok && texts(other.value)).toEqual([["x"], ["5"]]);
    expect(codes(both, { ...plain, sheet: "None" })).toEqual(["sheet-missing"]);
  });
});

describe("JSON and text", () => {
  it("[TR30] a list of flat objects is a table; null is nothing recorded; what is not flat is refused by row and column", () => {
    const table = tableIn('{"rows":[{"a":0,"b":null},{"b":"x","c":true}]}');
    expect(texts(table)).toEqual([
      ["a", "b", "c"],
      ["0", "", ""],
      ["", "x", "TRUE"],
    ]);
    expect(readGiven('[{"a":{"b":1}},7,{"a":1}]', plain).problems).toMatchObject([
      { code: "json-row-not-flat", line: 3 },
      { code: "json-row-not-flat", line: 2, column: "a" },
    ]);
    expect(codes('[{"a":1},{"a"')).toEqual(["json-unreadable"]);
    expect(codes('{"a":1}')).toEqual(["json-without-rows"]);
    expect(codes("[]")).toEqual(["table-empty"]);
  });

  it("[TR30] imports as the same table as CSV does", () => {
    const list = [
      { yard: "Orsa", colony: "A-1", date: "2026-03-09", pos: 17, exam: 50, crawl: "y" },
      { yard: "Orsa", colony: "A-2", date: "2026-03-10", pos: 0, exam: 30 },
    ];
    const [one, other] = [JSON.stringify(list), csv].map((given) => dryRun({ given, mapping, today: null }));
    expect(one).toEqual(other);
  });

  it("[TR31] a line without end and a file that is too large are refused at once", () => {
    const began = performance.now();
    expect(codes(`a,b\n${"x".repeat(60 * 1024 * 1024)}`)).toEqual(["text-too-long"]);
    expect(codes("x".repeat((mostMegabytes + 1) * 1024 * 1024))).toEqual(["file-too-large"]);
    expect(codes(`a\n${"1\n".repeat(200_500)}`)).toEqual(["table-too-large"]);
    expect(codes(",".repeat(5000))).toEqual(["table-too-large"]);
    expect(performance.now() - began).toBeLessThan(10_000); // other tests hold the processor meanwhile; alone it is a tenth of a second
  });

  it("[TR32] a file that ends in the middle of a row gives nothing", () => {
    for (let cut = 36; cut < csv.length - 1; cut += 1) {
      const { ok, problems } = dryRun({ given: csv.slice(0, cut), mapping, today: null });
      const isTold = problems.some(({ code }) =>
        /cut|no-line-end|without-rows|half|missing|does-not|iso|unreadable/.test(code),
      );
      expect([cut, csv[cut - 1] === "\n" || !ok || isTold]).toEqual([cut, true]);
    }
  });
});

describe("what columns may be", () => {
  const table = readTable(
    "Yard,Hive No,Date,Infested,Examined,K-wing,Notes\nN,7,2026-03-09,3,50,Yes,x\nN,8,2026-03-09,0,50,not examined,\nN,9,2026-03-09,1,50,n/a,\n",
  );
  const findings = { k_wing: "K-wing", crawlers: "Crawling bees" };

  it("[TR33] is proposed by their names; what nobody knows is left out", () => {
    if (!table.ok) throw new Error("whole");
    expect([...suggestUses(table.value, findings)].map(([column, use]) => [column, use.is])).toEqual([
      ["Yard", "place"],
      ["Hive No", "colony"],
      ["Date", "day"],
      ["Infested", "positive"],
      ["Examined", "examined"],
      ["K-wing", "finding"],
      ["Notes", "left-out"],
    ]);
  });

  it("[TR46] the laboratory that a column names stands with the result; one that looks like a formula is refused", () => {
    const text = (laboratory: string) =>
      `Yard,Hive No,Date,Infested,Examined,Mites,Bees,Lab\nN,7,2026-03-09,3,50,2,300,${laboratory}\nN,8,2026-03-09,0,50,,,\n`;
    const table = readTable(text("North bench"));
    if (!table.ok) throw new Error("whole");
    const made = mappingOf({
      uses: suggestUses(table.value, {}),
      words: new Map(),
      key: "north-2026",
      source: "invented",
      asOf: "2026-03-09",
      places: { N: { code: "N", name: "North", place: "invented" } },
      question: "why",
    });
    const read = readMapping(made);
    if (!read.ok) throw new Error(JSON.stringify(read));
    const told = dryRun({ given: text("North bench"), mapping: read.value, today: null });
    if (!told.ok) throw new Error(JSON.stringify(told.problems));
    const results = told.value.drafts.filter(({ kind }) => kind === "test-result-recorded");
    expect(results.map(({ data }) => (data as { laboratory?: string }).laboratory)).toEqual([
      "North bench",
      "North bench",
      undefined,
    ]);
    const refused = dryRun({ given: text("=A1"), mapping: read.value, today: null });
    expect(refused.problems.map(({ code, column }) => [code, column])).toContainEqual(["formula-cell", "Lab"]);
  });

  it("[TR47] without a column of apiaries all rows are of the one place that is named, and two places are refused", () => {
    const text = "Hive,Date,Infested,Examined\n7,2026-03-09,3,50\n8,2026-03-09,0,50\n";
    const table = readTable(text);
    if (!table.ok) throw new Error("whole");
    const chosen = {
      uses: suggestUses(table.value, {}),
      words: new Map(),
      key: "north-2026",
      source: "invented",
      asOf: "2026-03-09",
      question: "why",
    };
    const north = { code: "N", name: "North", place: "invented" };
    const read = readMapping(mappingOf({ ...chosen, places: { north } }));
    if (!read.ok) throw new Error(JSON.stringify(read));
    const told = dryRun({ given: text, mapping: read.value, today: null });
    if (!told.ok) throw new Error(JSON.stringify(told.problems));
    const kinds = told.value.drafts.map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind === "apiary-registered")).toHaveLength(1);
    expect(kinds.filter((kind) => kind === "test-result-recorded")).toHaveLength(2);
    const two = readMapping(mappingOf({ ...chosen, places: { north, south: { ...north, code: "S" } } }));
    expect(two).toMatchObject({ ok: false, problems: [{ code: "mapping-does-not-fit", field: "apiary" }] });
  });

  it("[TR34] 0, blank, “n/a” and “not examined” stay different: a word is a state only when it plainly is one", () => {
    if (!table.ok) throw new Error("whole");
    const uses = suggestUses(table.value, findings);
    const words = suggestWords(table.value, "K-wing");
    expect(words).toEqual({ present: ["Yes"], absent: [], notLooked: ["not examined"] });
    const made = mappingOf({
      uses,
      words: new Map([["K-wing", words]]),
      key: "north-2026",
      source: "invented",
      asOf: "2026-03-09",
      places: { N: { code: "N", name: "North", place: "invented" } },
      question: "why",
    });
    const read = readMapping(made);
    if (!read.ok || !made) throw new Error(JSON.stringify(read));
    const given =
      "Yard,Hive No,Date,Infested,Examined,K-wing,Notes\nN,7,2026-03-09,3,50,Yes,x\nN,8,2026-03-09,0,50,not examined,\nN,9,2026-03-09,,,n/a,\nN,10,2026-03-09,n/a,n/a,,\n";
    const refused = dryRun({ given, mapping: read.value, today: null });
    expect(refused.problems.map(({ code, line, mend }) => [code, line, mend?.kind])).toEqual([
      ["word-unknown", 4, "nothing-recorded"],
      ["number-unreadable", 5, "nothing-recorded"],
      ["number-unreadable", 5, "nothing-recorded"],
    ]);
    const told = dryRun({ given, mapping: { ...read.value, missing: ["n/a"] }, today: null });
    if (!told.ok) throw new Error(JSON.stringify(told.problems));
    expect(
      told.value.drafts
        .filter(({ kind }) => kind === "finding-recorded")
        .map(({ data }) => (data as { state: string }).state),
    ).toEqual(["present", "not-looked"]);
    expect(
      told.value.drafts
        .filter(({ kind }) => kind === "test-result-recorded")
        .map(({ data }) => (data as { positive: number }).positive),
    ).toEqual([3, 0]);
  });
});
