/** The casebook as tidy tables: findings, test results, estimates. Exact places are never in them. */
import { type Candidate, type Casebook, isInConflict, type Kept, stateOf, wholeApiary } from "../casebook/index.ts";
import type { BodyOf } from "../journal/index.ts";
import type { CellValue, ExportTable } from "./csv.ts";

/** Codes a person knows a thing by, the id where there is no code yet. */
interface Codes {
  readonly kase: string;
  readonly apiary: string;
  readonly colony: (id: string | null) => string | null;
}

const first = <T>(kept: Kept<T> | null | undefined): T | null => kept?.candidates[0]?.value ?? null;

function codesOf(casebook: Casebook, caseId: string): Codes {
  const kase = stateOf(casebook.cases, caseId);
  const apiary = stateOf(casebook.apiaries, kase?.apiary ?? null);
  return {
    kase: first(kase?.record)?.code ?? caseId,
    apiary: first(apiary?.record)?.code ?? kase?.apiary ?? "",
    colony: (id) => (id === null ? null : (first(stateOf(apiary?.colonies ?? {}, id)?.record)?.code ?? id)),
  };
}

const caseIds = (casebook: Casebook): readonly string[] => Object.keys(casebook.cases).sort();

/** One row a finding and value held: two values in one place are two rows, both marked as in conflict. */
export function findingsTable(casebook: Casebook): ExportTable {
  const rows = caseIds(casebook).flatMap((id) => {
    const codes = codesOf(casebook, id);
    return Object.entries(casebook.cases[id]?.findings ?? {}).flatMap(([colony, findings]) =>
      Object.entries(findings).flatMap(([finding, kept]) =>
        kept.candidates.map(({ value, at, author, entry }) => [
          codes.kase,
          codes.apiary,
          colony === wholeApiary ? wholeApiary : codes.colony(colony),
          finding,
          value,
          at,
          author,
          isInConflict(kept),
          entry,
        ]),
      ),
    );
  });
  return {
    name: "findings",
    columns: ["case", "apiary", "colony", "finding", "state", "on", "by", "in_conflict", "entry"],
    rows,
  };
}

const testNumbers = ["positive", "examined", "unreadable", "mites", "bees", "sporesMillionsPerBee"] as const;

/** One row a test result; what was not counted is empty, never zero. */
export function testsTable(casebook: Casebook): ExportTable {
  const rows = caseIds(casebook).flatMap((id) => {
    const codes = codesOf(casebook, id);
    return Object.values(casebook.cases[id]?.tests ?? {})
      .sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : a.entry < b.entry ? -1 : 1))
      .map((test) => testRow(codes, test));
  });
  return {
    name: "tests",
    columns: [
      "case",
      "apiary",
      "colony",
      "test",
      "on",
      "positive",
      "examined",
      "unreadable",
      "mites",
      "bees",
      "spores_millions_per_bee",
      "result",
      "taken_from",
      "alive_when_taken",
      "days_since_control",
      "note",
      "by",
      "entry",
    ],
    rows,
  };
}

function testRow(
  codes: Codes,
  { value, author, entry }: Candidate<BodyOf<"test-result-recorded">>,
): readonly CellValue[] {
  return [
    codes.kase,
    codes.apiary,
    codes.colony(value.colony),
    value.test,
    value.on,
    ...testNumbers.map((name) => value[name] ?? null),
    value.result ?? null,
    value.takenFrom ?? null,
    value.aliveWhenTaken ?? null,
    value.daysSinceControl ?? null,
    value.note ?? null,
    author,
    entry,
  ];
}

/** Tables as one JSON text: rows as objects, the same names and values as the CSV files. */
export function toJson(tables: readonly ExportTable[]): string {
  const named = tables.map(({ name, columns, rows }) => [
    name,
    rows.map((row) => Object.fromEntries(columns.map((column, index) => [column, row[index] ?? null]))),
  ]);
  return `${JSON.stringify({ format: "skepsis-tables", schema: 1, tables: Object.fromEntries(named) }, null, 2)}\n`;
}
