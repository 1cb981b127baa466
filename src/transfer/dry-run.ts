/** Tries an import without doing it: every entry it would make, or every problem, never some of either. */
import type { EntryDraft } from "../journal/index.ts";
import { looksChanged, plainCell, readText, type Writing } from "./cells.ts";
import { readGiven } from "./given-file.ts";
import { importId } from "./import-id.ts";
import { type ImportAnswer, type ImportProblem, importProblem } from "./import-problem.ts";
import { columnsOf, type Mapping } from "./mapping.ts";
import type { PlannedImport } from "./planned-import.ts";
import { findingDraft, halfCountProblems, knownIdProblems, resultDraft } from "./row-drafts.ts";
import { placeIn, requiredCell, rowReader } from "./row-reader.ts";
import type { Table } from "./table.ts";
import { temperatureDrafts } from "./temperature-drafts.ts";

export interface ImportRequest {
  /** The file: a workbook, JSON, or a table as text. */
  readonly given: Uint8Array | string;
  readonly mapping: Mapping;
  /** Today; days after it are refused. Null when not asked. */
  readonly today: string | null;
}

/**
 * The entries that a table would become under a mapping. Nothing is partial: one blocked cell, and there are no
 * drafts, but every problem of the file is listed by line and column, with a mend where we know one.
 *
 * The same file and mapping give the same ids; see `freshDrafts` for what already stands.
 */
export function dryRun({ given, mapping, today }: ImportRequest): ImportAnswer<PlannedImport> {
  const table = readGiven(given, mapping);
  if (!table.ok) return table;
  const { header } = table.value;
  const used = new Set(columnsOf(mapping));
  const missing = [...used].filter((column) => !header.includes(column));
  const problems: ImportProblem[] = [
    ...table.problems,
    ...missing.map((column) => importProblem("column-missing", { line: 1, column })),
    ...header
      .filter((column) => !used.has(column) && !mapping.leftOut.includes(column))
      .map((column) => importProblem("column-not-mapped", { severity: "warned", line: 1, column })),
    ...knownIdProblems(mapping),
    ...halfCountProblems(mapping),
  ];
  if (missing.length > 0) return { ok: false, problems };
  const mended = applyMends(table.value, mapping, problems);
  const planned = mapping.temperatures
    ? temperatureDrafts({
        table: mended,
        mapping,
        temperatures: mapping.temperatures,
        problems,
        writing: writingOf(mapping, today),
      })
    : colonyDrafts(mended, mapping, writingOf(mapping, today), problems);
  return problems.some(({ severity }) => severity === "blocked")
    ? { ok: false, problems }
    : { ok: true, value: planned, problems };
}

const writingOf = ({ decimal, dates }: Mapping, today: string | null): Writing => ({ decimal, dates, today });

/** Cells that a person decided to read otherwise; a mend that meets another cell than it was written for is a problem. */
function applyMends(table: Table, { mends, colony, apiary }: Mapping, problems: ImportProblem[]): Table {
  const rowColumn = table.header.indexOf(colony?.column ?? apiary.column ?? "");
  const unused = new Set(mends);
  const rows = table.rows.map((row) => {
    const own = mends.filter((mend) => mend.row === plainCell(row.cells[rowColumn] ?? ""));
    const cells = [...row.cells];
    for (const mend of own) {
      unused.delete(mend);
      const index = table.header.indexOf(mend.column);
      const found = plainCell(row.cells[index] ?? "");
      if (index < 0 || found !== mend.given)
        problems.push(
          importProblem("mend-does-not-fit", {
            line: row.line,
            column: mend.column,
            given: found,
            slots: { expected: mend.given, found },
          }),
        );
      else {
        cells[index] = mend.use;
        problems.push(
          importProblem("mended", {
            severity: "noted",
            line: row.line,
            column: mend.column,
            given: found,
            slots: { use: mend.use, reason: mend.reason },
          }),
        );
      }
    }
    return { ...row, cells };
  });
  for (const mend of unused)
    problems.push(
      importProblem("mend-does-not-fit", { line: 1, column: mend.column, slots: { expected: mend.row, found: "" } }),
    );
  return { header: table.header, rows };
}

function colonyDrafts(table: Table, mapping: Mapping, writing: Writing, problems: ImportProblem[]): PlannedImport {
  const { key, asOf, colony, apiary } = mapping;
  const apiaries = new Map<string, EntryDraft[]>();
  const colonies: EntryDraft[] = [];
  const found: EntryDraft[] = [];
  const coloniesOfCase = new Map<string, string[]>();
  const opened = new Map<string, Opened>();
  const seen = new Map<string, number>();

  for (const row of table.rows) {
    const reader = rowReader({ table, row, mapping, writing, problems });
    const placeName = placeIn(reader, apiary);
    const codeCell = colony ? requiredCell(reader, colony.column) : null;
    const code = codeCell ? reader.keep(readText(codeCell, 200)) : null;
    if (placeName === undefined || code === undefined) continue;
    const place = Object.hasOwn(apiary.places, placeName) ? apiary.places[placeName] : undefined;
    if (!place) {
      reader.tell(
        importProblem("id-unknown", {
          line: row.line,
          column: apiary.column ?? null,
          given: placeName,
          slots: { id: placeName },
        }),
      );
      continue;
    }
    const { onRecord, colonies: known, caseOnRecord, ...record } = place;
    const apiaryId = onRecord ?? importId(key, "apiary", place.code);
    const caseId = caseOnRecord?.id ?? importId(key, "case", place.code);
    if (!apiaries.has(apiaryId))
      apiaries.set(
        apiaryId,
        onRecord ? [] : [{ kind: "apiary-registered", at: asOf, about: [apiaryId], data: record }],
      );
    if (caseOnRecord === undefined) opened.set(caseId, { apiaryId, code: place.code });
    if (code === null || !colony) continue;
    const first = seen.get(`${apiaryId} ${code}`);
    if (first !== undefined) {
      reader.tell(importProblem("row-twice", { line: row.line, column: colony.column, given: code, slots: { first } }));
      continue;
    }
    seen.set(`${apiaryId} ${code}`, row.line);
    if (codeCell && looksChanged(codeCell))
      reader.tell(
        importProblem("code-looks-changed", { severity: "warned", line: row.line, column: colony.column, given: code }),
      );
    const standing = Object.hasOwn(known, code) ? known[code] : undefined;
    const colonyId = standing ?? importId(key, "colony", place.code, code);
    if (standing === undefined)
      colonies.push({ kind: "colony-registered", at: asOf, about: [apiaryId, colonyId], data: { code } });
    if (caseOnRecord && caseOnRecord.colonies.length > 0 && !caseOnRecord.colonies.includes(colonyId))
      reader.tell(importProblem("colony-not-of-case", { line: row.line, column: colony.column, given: code }));
    const ofCase = coloniesOfCase.get(caseId) ?? [];
    ofCase.push(colonyId);
    coloniesOfCase.set(caseId, ofCase);
    for (const each of mapping.results) found.push(...resultDraft(reader, each, { caseId, colonyId }));
    for (const each of mapping.findings) found.push(...findingDraft(reader, each, { caseId, colonyId }));
  }
  const cases = caseDrafts(mapping, opened, coloniesOfCase);
  return {
    drafts: [...[...apiaries.values()].flat(), ...colonies, ...cases, ...found],
    counts: {
      rows: table.rows.length,
      apiaries: apiaries.size,
      colonies: seen.size,
      results: found.filter(({ kind }) => kind === "test-result-recorded").length,
      findings: found.filter(({ kind }) => kind === "finding-recorded").length,
    },
  };
}

/** The place that a case is opened for. */
interface Opened {
  readonly apiaryId: string;
  readonly code: string;
}

/** One case a place, about all its colonies of the file. */
function caseDrafts(
  mapping: Mapping,
  opened: ReadonlyMap<string, Opened>,
  colonies: ReadonlyMap<string, readonly string[]>,
): readonly EntryDraft[] {
  const opening = mapping.case;
  if (!opening) return [];
  return [...opened].map(([id, { apiaryId, code }]): EntryDraft => {
    const data = {
      code: opening.code.replace("{apiary}", code),
      openedOn: opening.openedOn,
      question: opening.question,
      story: mapping.source,
      colonies: [...(colonies.get(id) ?? [])],
    };
    return { kind: "case-opened", at: opening.openedOn, about: [id, apiaryId], data };
  });
}
