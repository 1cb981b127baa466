/** Monthly means of places, one row a place and month, as weather years. */
import type { EntryDraft } from "../journal/index.ts";
import { celsius } from "../units/index.ts";
import { readNumberBetween, type Writing } from "./cells.ts";
import { importId } from "./import-id.ts";
import { type ImportProblem, importProblem } from "./import-problem.ts";
import type { Mapping } from "./mapping.ts";
import type { PlannedImport } from "./planned-import.ts";
import { placeIn, rowReader } from "./row-reader.ts";
import type { Table } from "./table.ts";

/** Warmer than any month's mean known, Celsius [memory: about 40 °C]; figures above it are Fahrenheit. */
const hottestMonthCelsius = 42;

interface PlaceYear {
  readonly line: number;
  readonly means: Map<number, number>;
}

/** As `dryRun`, for a table of temperatures: each place gets its twelve means, or is told what is missing. */
export function temperatureDrafts(request: {
  readonly table: Table;
  readonly mapping: Mapping;
  readonly temperatures: NonNullable<Mapping["temperatures"]>;
  readonly problems: ImportProblem[];
  readonly writing: Writing;
}): PlannedImport {
  const { table, mapping, temperatures, problems, writing } = request;
  const { month, mean, unit, source } = temperatures;
  const years = new Map<string, PlaceYear>();
  const leftOut = new Set<string>();
  for (const row of table.rows) {
    const reader = rowReader({ table, row, mapping, writing, problems });
    const needed = (column: string) => reader.cell(column) ?? { line: row.line, column, text: "" };
    const place = placeIn(reader, mapping.apiary);
    const number = reader.keep(readNumberBetween(needed(month), writing, { least: 1, greatest: 12 }));
    const value = reader.keep(readNumberBetween(needed(mean), writing, { least: -80, greatest: 150 }));
    if (place === undefined || number === undefined || value === undefined) continue;
    if (!Object.hasOwn(mapping.apiary.places, place)) {
      leftOut.add(place);
      continue;
    }
    const year = years.get(place) ?? { line: row.line, means: new Map() };
    years.set(place, year);
    if (year.means.has(number))
      reader.tell(
        importProblem("month-twice", { line: row.line, column: month, given: place, slots: { month: number } }),
      );
    year.means.set(number, unit === "fahrenheit" ? celsius(value) : value);
  }
  for (const place of Object.keys(mapping.apiary.places).filter((each) => !years.has(each)))
    problems.push(
      importProblem("id-unknown", {
        line: 1,
        column: mapping.apiary.column ?? null,
        given: place,
        slots: { id: place },
      }),
    );

  if (leftOut.size > 0)
    problems.push(importProblem("places-left-out", { severity: "noted", line: 1, slots: { places: leftOut.size } }));

  const drafts = [...years].flatMap(([place, { line, means }]): readonly EntryDraft[] => {
    const missing = Array.from({ length: 12 }, (_, index) => index + 1).filter((each) => !means.has(each));
    if (missing.length > 0)
      problems.push(
        importProblem("month-missing", { line, column: month, given: place, slots: { months: missing.join(", ") } }),
      );
    const highest = Math.max(...means.values());
    if (highest > hottestMonthCelsius)
      problems.push(
        importProblem("temperatures-look-like-fahrenheit", {
          line,
          column: mean,
          given: highest,
          slots: { highest },
          ...(unit === "celsius" ? { mend: { kind: "unit", use: "fahrenheit" } as const } : {}),
        }),
      );
    const named = mapping.apiary.places[place];
    if (!named) return [];
    const { onRecord, colonies: _, ...record } = named;
    const id = onRecord ?? importId(mapping.key, "apiary", record.code);
    const monthlyMeanCelsius = Array.from({ length: 12 }, (_, index) => means.get(index + 1) as number);
    return [
      ...(onRecord ? [] : [{ kind: "apiary-registered", at: mapping.asOf, about: [id], data: record } as const]),
      {
        kind: "weather-year-recorded",
        at: mapping.asOf,
        about: [id],
        data: { kind: "monthly-means", monthlyMeanCelsius, station: place, source },
      },
    ];
  });
  return {
    drafts,
    counts: { rows: table.rows.length, apiaries: years.size, colonies: 0, results: 0, findings: 0 },
  };
}
