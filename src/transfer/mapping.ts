/** How the columns of somebody's table become entries: the mapping a person writes once for a kind of file. */
import * as z from "zod";
import { answered, blocked, isDay, problem, type Result } from "../units/index.ts";
import { delimiters } from "./table.ts";

const text = z.string().trim().min(1).max(4000);
const column = text;
const day = z.string().refine(isDay, { message: "a calendar day as YYYY-MM-DD" });

/** When something happened: a column of dates, or so many days after a named day. */
const when = z.union([
  z.strictObject({ column }),
  z.strictObject({ from: day, days: z.number().int().min(0).max(3660) }),
  z.strictObject({ from: day, daysColumn: column }),
]);

const place = z.strictObject({
  code: text,
  name: text,
  place: text,
  latitude: z.number().min(-90).max(90).optional(),
  longitude: z.number().min(-180).max(180).optional(),
  /** Id of an apiary on record: then nothing is registered anew, and code and name only tell it apart here. */
  onRecord: text.optional(),
  /** Colonies on record there, id by code. */
  colonies: z.record(z.string(), text).default({}),
  /** A case on record that results and findings go to, with the ids of its colonies, none where it is about all: then none is opened. */
  caseOnRecord: z.strictObject({ id: text, colonies: z.array(text) }).optional(),
});

/** One result a row and test. Missing counts mean no result; half a count is a problem. */
const result = z.strictObject({
  /** What the reader of a problem will recognise: `day 77`. */
  name: text,
  /** Id of a test in knowledge. */
  test: text,
  on: when,
  /** Bees found with mites, of bees examined. */
  positive: column.optional(),
  examined: column.optional(),
  /** Mites counted, on so many bees. */
  mites: column.optional(),
  bees: column.optional(),
  sporesMillionsPerBee: column.optional(),
  /** Who reported it. */
  laboratory: column.optional(),
  /** Words for found and none found. */
  result: z
    .strictObject({ column, found: z.array(z.string()), noneFound: z.array(z.string()), unclear: z.array(z.string()) })
    .optional(),
  takenFrom: z.enum(["S", "E", "B", "F", "D"]).optional(),
  note: z.string().max(2000).optional(),
});

/** The shape of a mapping file. Every column is used or named in `leftOut`, so that nothing is dropped unsaid. */
export const mappingShape = z.strictObject({
  /** Stays the same for all versions of one table: ids of colonies and cases are made from it. */
  key: z.string().regex(/^[a-z0-9][a-z0-9-]{2,60}$/),
  /** Where the table is from, licence included. */
  source: text,
  /** Day the table describes the places on. */
  asOf: day,
  /** Sheet of a workbook; its first when left out. */
  sheet: z.string().min(1).max(200).optional(),
  delimiter: z.enum(delimiters).default(","),
  decimal: z.enum([".", ","]).default("."),
  dates: z.enum(["iso", "day-month-year", "month-day-year"]).default("iso"),
  /** Words that stand for nothing recorded, beside the empty cell. */
  missing: z.array(z.string()).default([]),
  /** Without a column all rows are of the one place that is named. */
  apiary: z
    .strictObject({ column: column.optional(), places: z.record(z.string(), place) })
    .refine(({ column: named, places }) => named !== undefined || Object.keys(places).length === 1, {
      message: "a column of apiaries, or one place that all rows are of",
    }),
  colony: z.strictObject({ column }).optional(),
  case: z.strictObject({ code: text, question: text, openedOn: day }).optional(),
  results: z.array(result).default([]),
  findings: z
    .array(
      z.strictObject({
        finding: text,
        column,
        present: z.array(z.string()),
        absent: z.array(z.string()),
        notLooked: z.array(z.string()).default([]),
        on: when,
      }),
    )
    .default([]),
  /** Monthly means, one row a place and month. */
  temperatures: z
    .strictObject({ month: column, mean: column, unit: z.enum(["celsius", "fahrenheit"]), source: text })
    .optional(),
  leftOut: z.array(column).default([]),
  /** Cells a person decided to read otherwise, each with the reason. `row` is the colony as the file writes it. */
  mends: z.array(z.strictObject({ row: text, column, given: z.string(), use: z.string(), reason: text })).default([]),
});

/** A mapping, defaults filled in. */
export type Mapping = z.infer<typeof mappingShape>;

/** A mapping from JSON; each place that does not fit is a `mapping-does-not-fit` with its path. */
export function readMapping(json: unknown): Result<Mapping> {
  const read = mappingShape.safeParse(json);
  if (read.success) return answered(read.data);
  return blocked(
    ...read.error.issues.map(({ path, message }) => {
      const field = path.map(String).join(".");
      return problem("mapping-does-not-fit", "blocked", field === "" ? null : field, {
        expected: message,
        slots: { field, message },
      });
    }),
  );
}

export type ResultMapping = Mapping["results"][number];
export type When = z.infer<typeof when>;

/** Every column a mapping reads. */
export function columnsOf(mapping: Mapping): readonly string[] {
  const dates = (on: When): readonly string[] =>
    "column" in on ? [on.column] : "daysColumn" in on ? [on.daysColumn] : [];
  return [
    ...(mapping.apiary.column === undefined ? [] : [mapping.apiary.column]),
    ...(mapping.colony ? [mapping.colony.column] : []),
    ...mapping.results.flatMap(({ on, positive, examined, mites, bees, sporesMillionsPerBee, laboratory, result }) => [
      ...dates(on),
      ...[positive, examined, mites, bees, sporesMillionsPerBee, laboratory, result?.column].filter(
        (each) => each !== undefined,
      ),
    ]),
    ...mapping.findings.flatMap(({ column: name, on }) => [name, ...dates(on)]),
    ...(mapping.temperatures ? [mapping.temperatures.month, mapping.temperatures.mean] : []),
  ];
}
