/** Imports: all or nothing, every problem by line and column. */

import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { emptyCasebook, fold } from "../casebook/index.ts";
import { type Entry, type EntryDraft, newEntryId, sealChain } from "../journal/index.ts";
import { toCsv } from "./csv.ts";
import { dryRun } from "./dry-run.ts";
import { freshDrafts } from "./fresh-drafts.ts";
import type { ImportProblem } from "./import-problem.ts";
import { type Mapping, readMapping } from "./mapping.ts";
import { readTable } from "./table.ts";
import { findings as findingsOf } from "./tables/findings.ts";
import { toJson } from "./tables/index.ts";
import { tests as testsOf } from "./tables/tests.ts";

/** A mapping of an invented bench list. */
const mapping = mapped({
  key: "invented-bench",
  source: "invented for tests",
  asOf: "2026-03-01",
  missing: ["NA"],
  apiary: {
    column: "yard",
    places: { Orsa: { code: "OH", name: "Orsa Hollow", place: "invented", latitude: 45.1, longitude: 7.3 } },
  },
  colony: { column: "colony" },
  case: { code: "{apiary}-1", question: "why", openedOn: "2026-03-01" },
  results: [{ name: "bench", test: "tracheal-dissection", on: { column: "date" }, positive: "pos", examined: "exam" }],
  findings: [
    { finding: "crawlers", column: "crawl", present: ["y"], absent: ["n"], notLooked: ["?"], on: { column: "date" } },
  ],
});
const header = "yard,colony,date,pos,exam,crawl\n";

function mapped(json: unknown): Mapping {
  const read = readMapping(json);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}
const run = (rows: string, changed: Mapping = mapping, today: string | null = null) =>
  dryRun({ given: header + rows, mapping: changed, today });
function problems(rows: string, changed: Mapping = mapping, today: string | null = null): readonly ImportProblem[] {
  const answer = run(rows, changed, today);
  return answer.problems.filter(({ severity }) => severity === "blocked");
}
const told = (list: readonly ImportProblem[]) => list.map(({ code, line, column }) => [code, line, column]);
function drafts(rows: string, changed: Mapping = mapping): readonly EntryDraft[] {
  const answer = run(rows, changed);
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  return answer.value.drafts;
}
/** Seals drafts onto one device's chain. Chance is counted up, so that runs are alike. */
function sealed(list: readonly EntryDraft[]): readonly Entry[] {
  const end = { device: "d1", programme: "main", author: "tester", recordedAt: "2026-03-02T10:00:00.000Z", head: null };
  return sealChain(
    list,
    end,
    list.map((_, index) => ({
      id: newEntryId(1_772_445_600_000 + index, new Uint8Array(16).fill(index % 251)),
      salt: "0".repeat(32),
    })),
  );
}

describe("a dry run", () => {
  it("[TR4] one bad cell among good rows leaves no drafts, and every bad cell is told", () => {
    const rows = "Orsa,A,2026-03-09,17,50,y\nOrsa,B,2026-03-09,x,50,y\nOrsa,C,2026-02-30,1,50,maybe\n";
    const answer = run(rows);
    expect(answer.ok).toBe(false);
    expect(answer).not.toHaveProperty("value");
    expect(told(problems(rows))).toEqual([
      ["number-unreadable", 3, "pos"],
      ["date-does-not-exist", 4, "date"],
      ["word-unknown", 4, "crawl"],
    ]);
  });
  it("[TR4] a whole file becomes apiary, colonies, case, results and findings in that order", () => {
    const list = drafts("Orsa,A,2026-03-09,17,50,y\nOrsa,B,2026-03-09,NA,,?\n");
    expect(list.map(({ kind }) => kind)).toEqual([
      "apiary-registered",
      "colony-registered",
      "colony-registered",
      "case-opened",
      "test-result-recorded",
      "finding-recorded",
      "finding-recorded",
    ]);
    expect(list[4]).toMatchObject({
      at: "2026-03-09",
      data: { test: "tracheal-dissection", positive: 17, examined: 50 },
    });
    expect(list[6]).toMatchObject({ data: { finding: "crawlers", state: "not-looked" } });
  });
  it("[TR5] counts that cannot be", () => {
    const swapped = problems("Orsa,A,2026-03-09,50,17,\n");
    expect(told(swapped)).toEqual([["positive-above-examined", 2, "pos"]]);
    expect(swapped[0]?.mend).toEqual({ kind: "swap", column: "pos", with: "exam" });
    expect(told(problems("Orsa,A,2026-03-09,5,,\n"))).toEqual([["half-a-count", 2, "exam"]]);
    expect(told(problems("Orsa,A,2026-03-09,0,0,\n"))).toEqual([["counted-on-no-bees", 2, "exam"]]);
    expect(told(problems("Orsa,A,2026-03-09,1.5,50,\n"))).toEqual([["number-not-whole", 2, "pos"]]);
    expect(told(problems("Orsa,A,2026-03-09,-1,50,\n"))).toEqual([["number-out-of-range", 2, "pos"]]);
    expect(told(problems('Orsa,A,2026-03-09,"1,200",5000,\n'))).toEqual([["number-unreadable", 2, "pos"]]);
  });
  it("[TR6] dates", () => {
    const one = (date: string, changed: Mapping = mapping) => problems(`Orsa,A,${date},1,50,\n`, changed)[0];
    expect(one("2026-02-29")?.code).toBe("date-does-not-exist");
    expect(one("31/02/2026")?.code).toBe("date-does-not-exist");
    expect(one("spring")?.code).toBe("date-unreadable");
    expect(one("")?.code).toBe("date-missing");
    expect(one("03/04/2026")).toMatchObject({
      code: "date-ambiguous",
      slots: { dayFirst: "2026-04-03", monthFirst: "2026-03-04" },
    });
    expect(one("25/03/2026")).toMatchObject({ code: "date-not-iso", mend: { kind: "use", use: "2026-03-25" } });
    expect(one("2026-3-9")).toMatchObject({ code: "date-not-iso", mend: { kind: "use", use: "2026-03-09" } });
    const dayFirst: Mapping = { ...mapping, dates: "day-month-year" };
    expect(drafts("Orsa,A,03/04/2026,1,50,\n", dayFirst).at(-1)?.at).toBe("2026-04-03");
    expect(drafts("Orsa,A,03/04/2026,1,50,\n", { ...mapping, dates: "month-day-year" }).at(-1)?.at).toBe("2026-03-04");
    expect(one("03/25/2026", dayFirst)?.code).toBe("date-does-not-exist");
    expect(told(problems("Orsa,A,2026-03-09,1,50,\n", mapping, "2026-03-08"))).toEqual([["date-in-future", 2, "date"]]);
    expect(problems("Orsa,A,2026-03-09,1,50,\n", mapping, "2026-03-09")).toEqual([]);
  });
  it("[TR7] monthly means in the wrong unit are refused; named Fahrenheit is turned into Celsius", () => {
    const climate = (unit: "celsius" | "fahrenheit") =>
      mapped({
        key: "invented-climate",
        source: "invented for tests",
        asOf: "2026-01-01",
        apiary: { column: "place", places: { Here: { code: "H", name: "Here", place: "invented" } } },
        temperatures: { month: "month", mean: "mean", unit, source: "invented for tests" },
      });
    const rows = (means: readonly number[]) =>
      `place,month,mean\n${means.map((mean, month) => `Here,${month + 1},${mean}\n`).join("")}`;
    const celsius = [-11.6, -9.6, -4.1, 4.5, 10.5, 14.5, 16.8, 15.8, 10.4, 4.1, -5.1, -9.9];
    const fahrenheit = celsius.map((each) => Math.round((each * 1.8 + 32) * 100) / 100);
    const right = dryRun({ given: rows(celsius), mapping: climate("celsius"), today: null });
    expect(right.ok && right.value.drafts[1]?.data).toMatchObject({ monthlyMeanCelsius: celsius });
    const wrong = dryRun({ given: rows(fahrenheit), mapping: climate("celsius"), today: null });
    expect(wrong.problems[0]).toMatchObject({ code: "temperatures-look-like-fahrenheit", mend: { kind: "unit" } });
    const named = dryRun({ given: rows(fahrenheit), mapping: climate("fahrenheit"), today: null });
    const data = named.ok ? (named.value.drafts[1]?.data as { readonly monthlyMeanCelsius: readonly number[] }) : null;
    data?.monthlyMeanCelsius.forEach((each, month) => {
      expect(Math.abs(each - (celsius[month] as number))).toBeLessThan(0.003); // rounded to 0.01 °F above
    });
    expect(data).not.toBeNull();
    const gap = dryRun({ given: rows(celsius.slice(0, 11)), mapping: climate("celsius"), today: null });
    expect(gap.problems[0]).toMatchObject({ code: "month-missing", slots: { months: "12" } });
    const twice = dryRun({ given: `${rows(celsius)}Here,12,1\n`, mapping: climate("celsius"), today: null });
    expect(twice.problems[0]).toMatchObject({ code: "month-twice", line: 14 });
    const others = dryRun({ given: `${rows(celsius)}There,1,1\n`, mapping: climate("celsius"), today: null });
    expect(others.ok && others.problems[0]).toMatchObject({ code: "places-left-out", severity: "noted" });
  });
  it("[TR8] unknown tests, findings, apiaries and words are refused; a colony twice is refused", () => {
    const [result] = mapping.results;
    const [finding] = mapping.findings;
    if (!result || !finding) throw new Error("the mapping has both");
    const rows = "Orsa,A,2026-03-09,1,50,y\n";
    expect(problems(rows, { ...mapping, results: [{ ...result, test: "crystal-ball" }] })[0]).toMatchObject({
      code: "id-unknown",
      slots: { id: "crystal-ball" },
    });
    expect(problems(rows, { ...mapping, findings: [{ ...finding, finding: "sad" }] })[0]).toMatchObject({
      code: "id-unknown",
      slots: { id: "sad" },
    });
    expect(told(problems("Elsewhere,A,2026-03-09,1,50,y\n"))).toEqual([["id-unknown", 2, "yard"]]);
    expect(told(problems("Orsa,A,2026-03-09,1,50,Y\n"))).toEqual([["word-unknown", 2, "crawl"]]);
    expect(told(problems(`${rows}Orsa,A,2026-03-10,1,50,y\n`))).toEqual([["row-twice", 3, "colony"]]);
    expect(told(problems("Orsa,,2026-03-09,1,50,y\n"))).toEqual([["text-missing", 2, "colony"]]);
    const changed = run("Orsa,1-Mar,2026-03-09,1,50,y\n");
    expect(changed.ok && changed.problems[0]?.code).toBe("code-looks-changed");
  });
  it("[TR9] a formula in a cell is refused", () => {
    expect(told(problems("Orsa,=A1,2026-03-09,1,50,y\n"))).toEqual([["formula-cell", 2, "colony"]]);
    expect(told(problems("Orsa,A,2026-03-09,1,50,@x\n"))).toEqual([["formula-cell", 2, "crawl"]]);
    expect(drafts("Orsa,'=A1,2026-03-09,1,50,y\n")[1]?.data).toEqual({ code: "=A1" });
  });
  it("[TR10] columns", () => {
    const extra = dryRun({
      given: "yard,colony,date,pos,exam,crawl,secret\nOrsa,A,2026-03-09,1,50,y,1\n",
      mapping,
      today: null,
    });
    expect(extra.ok && extra.problems.map(({ code, column }) => [code, column])).toEqual([
      ["column-not-mapped", "secret"],
    ]);
    const less = dryRun({ given: "yard,colony,date,pos,exam\nOrsa,A,2026-03-09,1,50\n", mapping, today: null });
    expect(less.ok).toBe(false);
    expect(told(less.problems)).toEqual([["column-missing", 1, "crawl"]]);
  });
  it("[TR11] a mend is used where it fits, told with its reason, and refused where it does not", () => {
    const mend = { row: "A", column: "pos", given: "51", use: "15", reason: "digits swapped, bench sheet read again" };
    const changed = { ...mapping, mends: [mend] };
    const answer = run("Orsa,A,2026-03-09,51,50,\n", changed);
    expect(answer.ok && answer.value.drafts.at(-1)?.data).toMatchObject({ positive: 15 });
    expect(answer.problems[0]).toMatchObject({
      code: "mended",
      severity: "noted",
      given: "51",
      slots: { reason: mend.reason },
    });
    expect(told(problems("Orsa,A,2026-03-09,14,50,\n", changed))).toEqual([["mend-does-not-fit", 2, "pos"]]);
    expect(told(problems("Orsa,B,2026-03-09,14,50,\n", changed))).toEqual([["mend-does-not-fit", 1, "pos"]]);
  });
  it("[TR19] a mapping that does not fit names each place", () => {
    const read = readMapping({ ...mapping, key: "Has Spaces", asOf: "2026-13-01", surprise: 1 });
    expect(read.ok).toBe(false);
    expect(read.problems.map(({ code }) => code)).toEqual([
      "mapping-does-not-fit",
      "mapping-does-not-fit",
      "mapping-does-not-fit",
    ]);
    expect(read.problems.map(({ field }) => field).sort()).toEqual([null, "asOf", "key"].sort());
  });
});

describe("importing into a casebook", () => {
  const rows = "Orsa,A,2026-03-09,17,50,y\nOrsa,B,2026-03-09,0,30,n\n";
  it("[TR12] the same file twice: the same drafts, and nothing new the second time", () => {
    expect(drafts(rows)).toEqual(drafts(rows));
    const first = freshDrafts(emptyCasebook, drafts(rows));
    expect(first.fresh).toHaveLength(drafts(rows).length);
    const again = freshDrafts(fold(sealed(first.fresh)), drafts(rows));
    expect(again).toEqual({ fresh: [], standing: drafts(rows).length, differing: [] });
  });
  it("[TR12] a file with one more row adds that row, and the case that names it is shown as changed", () => {
    const casebook = fold(sealed(drafts(rows)));
    const more = freshDrafts(casebook, drafts(`${rows}Orsa,C,2026-03-09,2,50,n\n`));
    expect(more.fresh.map(({ kind }) => kind)).toEqual([
      "colony-registered",
      "test-result-recorded",
      "finding-recorded",
    ]);
    expect(more.differing.map(({ draft }) => draft.kind)).toEqual(["case-opened"]);
  });
  it("[TR13] another count or state in the same place is shown with what it would replace", () => {
    const casebook = fold(sealed(drafts(rows)));
    const changed = freshDrafts(casebook, drafts(rows.replace("17,50,y", "18,50,n")));
    expect(changed.fresh).toEqual([]);
    expect(changed.differing.map(({ draft, replaces }) => [draft.kind, replaces.length])).toEqual([
      ["test-result-recorded", 1],
      ["finding-recorded", 1],
    ]);
  });
  it("[TR13] a result of another day is no correction: it is fresh", () => {
    const casebook = fold(sealed(drafts(rows)));
    const later = freshDrafts(casebook, drafts(rows.replaceAll("2026-03-09", "2026-04-09")));
    expect(later.fresh.map(({ kind, at }) => [kind, at])).toEqual([
      ["test-result-recorded", "2026-04-09"],
      ["test-result-recorded", "2026-04-09"],
    ]);
    expect(later.differing).toEqual([]);
  });
  it("[TR20] the drafts seal and fold without complaint", () => {
    const casebook = fold(sealed(drafts(rows)));
    expect(casebook.unread).toEqual([]);
    expect(Object.keys(casebook.apiaries)).toHaveLength(1);
    const [kase] = Object.values(casebook.cases);
    expect(Object.keys(kase?.tests ?? {})).toHaveLength(2);
    expect(Object.keys(kase?.findings ?? {})).toHaveLength(2);
    for (const { about } of drafts(rows))
      for (const id of about)
        expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  });

  it("[TR15] exported tables hold what was recorded, empty where nothing was, and no exact place", () => {
    const casebook = fold(sealed(drafts(rows)));
    const text = toCsv(testsOf.of(casebook));
    const table = readTable(text);
    if (!table.ok) throw new Error("reads its own export");
    const at = (column: string) => table.value.header.indexOf(column);
    expect(
      table.value.rows.map(({ cells }) => [
        cells[at("colony")],
        cells[at("positive")],
        cells[at("examined")],
        cells[at("mites")],
      ]),
    ).toEqual([
      ["A", "17", "50", ""],
      ["B", "0", "30", ""],
    ]);
    const json = toJson([testsOf.of(casebook), findingsOf.of(casebook)]);
    expect(JSON.parse(json).tables.findings).toHaveLength(2);
    expect(text + json + toCsv(findingsOf.of(casebook))).not.toMatch(/45\.1|7\.3/);
  });
  it("[TR16] a conflict is two rows", () => {
    const list = drafts("Orsa,A,2026-03-09,,,y\n");
    const finding = list.at(-1) as EntryDraft<"finding-recorded">;
    const other: EntryDraft = { ...finding, data: { ...finding.data, state: "absent" } };
    const { columns, rows: cells } = findingsOf.of(fold(sealed([...list, other])));
    const [state, conflict] = [columns.indexOf("state"), columns.indexOf("in_conflict")];
    expect(cells.map((row) => [row[state], row[conflict]])).toEqual([
      ["present", true],
      ["absent", true],
    ]);
  });
});

describe("a table of an apiary on record", () => {
  it("[TR37] adds results to the colonies that stand, registers only new ones, and nothing the second time", () => {
    const before: readonly EntryDraft[] = [
      {
        kind: "apiary-registered",
        at: "2026-01-01",
        about: ["ap-1"],
        data: { code: "OH", name: "Orsa Hollow", place: "x" },
      },
      { kind: "colony-registered", at: "2026-01-01", about: ["ap-1", "co-1"], data: { code: "A" } },
    ];
    const place = { code: "OH", name: "Orsa Hollow", place: "x", onRecord: "ap-1", colonies: { A: "co-1" } };
    const onRecord: Mapping = { ...mapping, apiary: { ...mapping.apiary, places: { Orsa: place } } };
    const rows = "Orsa,A,2026-03-09,17,50,y\nOrsa,B,2026-03-09,0,50,n\n";
    const made = drafts(rows, onRecord);
    expect(made.map(({ kind, about }) => [kind, about[kind === "case-opened" ? 1 : 0]]).slice(0, 2)).toEqual([
      ["colony-registered", "ap-1"],
      ["case-opened", "ap-1"],
    ]);
    const first = freshDrafts(fold(sealed(before)), made);
    expect(first.fresh).toHaveLength(6);
    const after = fold(sealed([...before, ...first.fresh]));
    expect(Object.keys(after.apiaries)).toEqual(["ap-1"]);
    expect(Object.keys(after.apiaries["ap-1"]?.colonies ?? {})).toHaveLength(2);
    expect(freshDrafts(after, made).fresh).toEqual([]);
  });

  it("[TR41] gives results to the case on record that was chosen, opens none, and takes no colony of another case", () => {
    const place = { code: "OH", name: "Orsa Hollow", place: "x", onRecord: "ap-1", colonies: { A: "co-1", B: "co-2" } };
    const to = (colonies: readonly string[]): Mapping => ({
      ...mapping,
      apiary: {
        ...mapping.apiary,
        places: { Orsa: { ...place, caseOnRecord: { id: "case-1", colonies: [...colonies] } } },
      },
    });
    const rows = "Orsa,A,2026-03-09,17,50,y\nOrsa,B,2026-03-09,0,50,n\n";
    for (const colonies of [[], ["co-1", "co-2"]]) {
      const made = drafts(rows, to(colonies));
      expect(made.filter(({ kind }) => kind === "case-opened")).toEqual([]);
      expect(new Set(made.map(({ about }) => about[0]))).toEqual(new Set(["case-1"]));
    }
    expect(told(problems(rows, to(["co-1"])))).toEqual([["colony-not-of-case", 3, "colony"]]);
  });

  it("[TR40] a column that is half of a count is told at its head, and no row is read as a whole count", () => {
    const alone: Mapping = {
      ...mapping,
      results: mapping.results.map(({ examined: _, ...rest }) => rest),
      leftOut: [...mapping.leftOut, "exam"],
    };
    const answer = problems("Orsa,A,2026-03-09,17,50,y\n", alone);
    expect(told(answer)).toEqual([["count-column-alone", 1, "pos"]]);
    expect(answer[0]?.slots).toMatchObject({ missing: "examined" });
  });
});

describe("the published washes", () => {
  const table = readFileSync("examples/varroa-splits-2025/varroa_splits_control_2025.csv", "utf8");
  const washes = mapped(JSON.parse(readFileSync("examples/varroa-splits-2025-import/mapping.json", "utf8")));
  const golden = JSON.parse(readFileSync("tests/golden/varroa-splits-2025-sums.json", "utf8"));

  it("[TR14] 177 colonies, and the sums of mites and bees by day that another program counted", () => {
    const answer = dryRun({ given: table, mapping: washes, today: "2026-11-25" });
    if (!answer.ok) throw new Error(JSON.stringify(answer.problems.slice(0, 3)));
    const { drafts: list, counts } = answer.value;
    expect(counts).toMatchObject({ rows: 177, colonies: 177, apiaries: 4 });
    const results = list.flatMap((draft) => (draft.kind === "test-result-recorded" ? [draft.data] : []));
    for (const { name, washes: number, mites, bees } of golden.days) {
      const ofDay = results.filter(({ note }) => note?.startsWith(`${name}.`));
      expect(ofDay).toHaveLength(number);
      expect(ofDay.reduce((sum, each) => sum + (each.mites ?? 0), 0)).toBe(mites);
      expect(ofDay.reduce((sum, each) => sum + (each.bees ?? 0), 0)).toBe(bees);
    }
    expect(answer.problems.map(({ code, column }) => [code, column])).toEqual([["mended", "d77_mites"]]);
  });
  it("[TR14] without the mend the half count is refused by line and column", () => {
    const answer = dryRun({ given: table, mapping: { ...washes, mends: [] }, today: null });
    expect(answer.ok).toBe(false);
    expect(told(answer.problems)).toEqual([["half-a-count", golden.halfACount.line, "d77_bees"]]);
  });
  it("[TR12] imported, sealed and folded, a second import of the table adds nothing", () => {
    const answer = dryRun({ given: table, mapping: washes, today: null });
    if (!answer.ok) throw new Error("imports");
    const casebook = fold(sealed(answer.value.drafts));
    expect(casebook.unread).toEqual([]);
    expect(freshDrafts(casebook, answer.value.drafts)).toMatchObject({ fresh: [], differing: [] });
  });
});
