/** A row's results and findings as drafts. */
import type { BodyOf, EntryDraft } from "../journal/index.ts";
import { isFindingId, isTestId } from "../knowledge/index.ts";
import { addDays } from "../units/index.ts";
import { looksLikeFormula, readCount, readDay, readNumberBetween, readText } from "./cells.ts";
import { type ImportProblem, importProblem } from "./import-problem.ts";
import type { Mapping, ResultMapping, When } from "./mapping.ts";
import type { RowReader } from "./row-reader.ts";

interface Whose {
  readonly caseId: string;
  readonly colonyId: string;
}

/** Tests and findings the mapping names that knowledge does not know. */
export function knownIdProblems(mapping: Mapping): readonly ImportProblem[] {
  const unknown = (id: string) => importProblem("id-unknown", { line: 1, given: id, slots: { id } });
  return [
    ...mapping.results.filter(({ test }) => !isTestId(test)).map(({ test }) => unknown(test)),
    ...mapping.findings.filter(({ finding }) => !isFindingId(finding)).map(({ finding }) => unknown(finding)),
  ];
}

/** Columns that are half of a count, where no column is the other half: a count without its bees tells no share. */
export const halfCountProblems = (mapping: Mapping): readonly ImportProblem[] =>
  mapping.results.flatMap((result) =>
    pairs.flatMap(([one, other]) => {
      const there = result[one] ?? result[other];
      if (there === undefined || (result[one] !== undefined && result[other] !== undefined)) return [];
      const missing = result[one] === undefined ? one : other;
      return [importProblem("count-column-alone", { line: 1, column: there, slots: { missing } })];
    }),
  );

const pairs = [
  ["positive", "examined"],
  ["mites", "bees"],
] as const;

/** The result of one test on one row: none when nothing was recorded, one when it is whole. */
export function resultDraft(
  reader: RowReader,
  mapping: ResultMapping,
  { caseId, colonyId }: Whose,
): readonly EntryDraft[] {
  const columns = [
    mapping.positive,
    mapping.examined,
    mapping.mites,
    mapping.bees,
    mapping.sporesMillionsPerBee,
    mapping.result?.column,
  ];
  if (!columns.some((column) => column !== undefined && reader.cell(column) !== null)) return [];
  const counted = { ...pair(reader, mapping, ["positive", "examined"]), ...pair(reader, mapping, ["mites", "bees"]) };
  const spores = measured(reader, mapping.sporesMillionsPerBee);
  const word = wordOf(reader, mapping);
  const laboratory = nameIn(reader, mapping.laboratory);
  const on = dayOf(reader, mapping.on);
  if (on === undefined) return [];
  const data: BodyOf<"test-result-recorded"> = {
    colony: colonyId,
    test: mapping.test,
    on,
    ...(laboratory === undefined ? {} : { laboratory }),
    ...counted,
    ...(spores === undefined ? {} : { sporesMillionsPerBee: spores }),
    ...(word === undefined ? {} : { result: word }),
    ...(mapping.takenFrom === undefined ? {} : { takenFrom: mapping.takenFrom }),
    note: [mapping.name, mapping.note].filter((each) => each !== undefined).join(". "),
  };
  return [{ kind: "test-result-recorded", at: on, about: [caseId, colonyId], data }];
}

/** A count and what it was counted on: both or neither; of bees no more positive than examined. */
function pair<Count extends "positive" | "mites", Base extends "examined" | "bees">(
  reader: RowReader,
  mapping: ResultMapping,
  [count, base]: readonly [Count, Base],
): Partial<Record<Count | Base, number>> {
  const [countColumn, baseColumn] = [mapping[count], mapping[base]];
  if (countColumn === undefined || baseColumn === undefined) return {};
  const [countCell, baseCell] = [reader.cell(countColumn), reader.cell(baseColumn)];
  if (countCell === null && baseCell === null) return {};
  const { line } = reader.row;
  if (countCell === null || baseCell === null) {
    const [missing, there] = countCell === null ? [countColumn, baseColumn] : [baseColumn, countColumn];
    reader.tell(
      importProblem("half-a-count", {
        line,
        column: missing,
        given: "",
        slots: { missing },
        mend: { kind: "leave-out" },
      }),
    );
    reader.keep(readCount(countCell ?? baseCell ?? { line, column: there, text: "" }, reader.writing));
    return {};
  }
  const counted = reader.keep(readCount(countCell, reader.writing));
  const on = reader.keep(readCount(baseCell, reader.writing));
  if (counted === undefined || on === undefined) return {};
  if (count === "positive" && counted > on)
    reader.tell(
      importProblem("positive-above-examined", {
        line,
        column: countColumn,
        given: counted,
        slots: { positive: counted, examined: on },
        mend: { kind: "swap", column: countColumn, with: baseColumn },
      }),
    );
  if (on === 0) reader.tell(importProblem("counted-on-no-bees", { line, column: baseColumn, given: on }));
  return { [count]: counted, [base]: on } as Partial<Record<Count | Base, number>>;
}

function measured(reader: RowReader, column: string | undefined): number | undefined {
  const cell = column === undefined ? null : reader.cell(column);
  return cell === null ? undefined : reader.keep(readNumberBetween(cell, reader.writing, { least: 0, greatest: 1000 }));
}

function nameIn(reader: RowReader, column: string | undefined): string | undefined {
  const cell = column === undefined ? null : reader.cell(column);
  return cell === null ? undefined : reader.keep(readText(cell, 200));
}

function wordOf(reader: RowReader, { result }: ResultMapping): "found" | "none-found" | "unclear" | undefined {
  const cell = result ? reader.cell(result.column) : null;
  if (!result || cell === null) return undefined;
  const words = { found: result.found, "none-found": result.noneFound, unclear: result.unclear };
  for (const word of ["found", "none-found", "unclear"] as const) if (words[word].includes(cell.text)) return word;
  const known = Object.values(words).flat().join(", ");
  reader.tell(
    importProblem("word-unknown", { line: cell.line, column: cell.column, given: cell.text, slots: { known } }),
  );
  return undefined;
}

/** One finding of one row: none when the cell is empty. */
export function findingDraft(
  reader: RowReader,
  mapping: Mapping["findings"][number],
  { caseId, colonyId }: Whose,
): readonly EntryDraft[] {
  const cell = reader.cell(mapping.column);
  if (cell === null) return [];
  const { line, column, text } = cell;
  const words = { present: mapping.present, absent: mapping.absent, "not-looked": mapping.notLooked };
  const state = (["present", "absent", "not-looked"] as const).find((each) => words[each].includes(text));
  const on = dayOf(reader, mapping.on);
  if (state === undefined) {
    const isFormula = looksLikeFormula(text);
    const known = Object.values(words).flat().join(", ");
    reader.tell(
      importProblem(isFormula ? "formula-cell" : "word-unknown", {
        ...{ line, column, given: text, slots: { known } },
        ...(isFormula ? {} : { mend: { kind: "nothing-recorded", use: text } as const }),
      }),
    );
  }
  if (state === undefined || on === undefined) return [];
  const data = { colony: colonyId, finding: mapping.finding, state, on };
  return [{ kind: "finding-recorded", at: on, about: [caseId, colonyId], data }];
}

function dayOf(reader: RowReader, on: When): string | undefined {
  if ("days" in on) return addDays(on.from, on.days);
  const column = "column" in on ? on.column : on.daysColumn;
  const cell = reader.cell(column);
  if (cell === null) {
    reader.tell(importProblem("date-missing", { line: reader.row.line, column }));
    return undefined;
  }
  if ("column" in on) return reader.keep(readDay(cell, reader.writing));
  const days = reader.keep(readCount(cell, reader.writing));
  if (days === undefined) return undefined;
  if (days <= 3660) return addDays(on.from, days);
  reader.tell(
    importProblem("number-out-of-range", { line: cell.line, column, given: days, slots: { least: 0, greatest: 3660 } }),
  );
  return undefined;
}
