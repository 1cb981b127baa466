import { describe, expect, it } from "vitest";
import { agreed } from "./agree.ts";
import { dryRun } from "./dry-run.ts";
import { type Mapping, readMapping } from "./mapping.ts";
import { readTable } from "./table.ts";

const read = readMapping({
  key: "invented-bench",
  source: "invented for tests",
  asOf: "2026-03-01",
  apiary: { column: "yard", places: { N: { code: "N", name: "North", place: "invented" } } },
  colony: { column: "hive" },
  case: { code: "{apiary}-1", question: "why", openedOn: "2026-03-01" },
  results: [{ name: "bench", test: "tracheal-dissection", on: { column: "day" }, positive: "pos", examined: "exam" }],
});
if (!read.ok) throw new Error("the mapping fits");
const mapping: Mapping = read.value;

/** The only problem of a file, and what becomes of the file when its mend is agreed to. */
function mended(row: string) {
  const given = `yard,hive,day,pos,exam\n${row}\n`;
  const [problem, ...more] = dryRun({ given, mapping, today: null }).problems.filter(
    ({ severity }) => severity === "blocked",
  );
  const table = readTable(given);
  if (!problem || more.length > 0 || !table.ok) throw new Error("one problem");
  const changed = agreed(mapping, problem, table.value, "agreed");
  const answer = changed && dryRun({ given, mapping: changed, today: null });
  return answer?.ok ? answer.value.drafts.at(-1)?.data : answer?.problems;
}

describe("a mend that is agreed to", () => {
  it.each([
    ["N,7,25/03/2026,3,50", { on: "2026-03-25" }],
    ["N,7,03/04/2026,3,50", { on: "2026-04-03" }],
    ["N,7,2026-03-25,50,3", { positive: 3, examined: 50 }],
    ["N,7,2026-03-25,3,", undefined],
  ])("[TR36] sets right %s", (row, expected) => {
    const made = mended(row);
    if (expected) expect(made).toMatchObject(expected);
    else expect(made).not.toHaveProperty("positive");
  });

  it("[TR36] that says what a word stands for holds wherever it stands", () => {
    const given = "yard,hive,day,pos,exam\nN,7,2026-03-25,n/a,n/a\nN,8,2026-03-25,n/a,n/a\n";
    const { problems } = dryRun({ given, mapping, today: null });
    const [first] = problems;
    const table = readTable(given);
    if (!first || !table.ok) throw new Error("problems");
    expect(problems).toHaveLength(4);
    expect(agreed(mapping, first, table.value, "")?.missing).toEqual(["n/a"]);
    expect(dryRun({ given, mapping: { ...mapping, missing: ["n/a"] }, today: null }).ok).toBe(true);
  });

  it("[TR36] is written into the mapping with what stood there and why", () => {
    const given = "yard,hive,day,pos,exam\nN,7,2026-03-25,50,3\n";
    const [problem] = dryRun({ given, mapping, today: null }).problems;
    const table = readTable(given);
    if (!problem || !table.ok) throw new Error("one problem");
    expect(agreed(mapping, problem, table.value, "they stood the wrong way round")?.mends).toEqual([
      { row: "7", column: "pos", given: "50", use: "3", reason: "they stood the wrong way round" },
      { row: "7", column: "exam", given: "3", use: "50", reason: "they stood the wrong way round" },
    ]);
  });
});
