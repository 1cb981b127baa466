/** Holds what a person or program gave against a verb's schema; what does not fit becomes Problems with field, given and expected. */
import type * as z from "zod";
import { answered, blocked, type Problem, problem, type Result } from "../../units/index.ts";
import { listed, namesAt, type Path, type Shape, shapeAt, shapeInWords } from "./shape.ts";

/** The input as the verb wants it, defaults filled in, or one Problem for each thing that does not fit. */
export function readInput<S extends z.ZodType>(schema: S, shape: Shape, raw: unknown): Result<z.output<S>> {
  const read = schema.safeParse(raw);
  if (read.success) return answered(read.data);
  return blocked(...once(read.error.issues.flatMap((issue) => problemsOf(issue, shape, raw))));
}

/** Two rules of one field that ask for the same are told once. */
const once = (problems: readonly Problem[]): readonly Problem[] =>
  problems.filter(
    (each, index) =>
      problems.findIndex(
        ({ code, field, expected }) => code === each.code && field === each.field && expected === each.expected,
      ) === index,
  );

function problemsOf(issue: z.core.$ZodIssue, shape: Shape, raw: unknown): readonly Problem[] {
  const path = issue.path.map((key) => (typeof key === "number" ? key : String(key)));
  if (issue.code === "unrecognized_keys") return issue.keys.map((key) => unknownName(key, path, shape, raw));
  const field = fieldName(path);
  const given = valueAt(raw, path);
  const here = shapeAt(shape, path, raw);
  const expected =
    issue.code === "custom" && !isDate(here) ? issue.message : shapeInWords(here ?? above(shape, path, raw));
  if (given === undefined) return [problem("field-missing", "blocked", field, { expected })];
  return [problem(issue.code === "custom" ? "fields-disagree" : "field-unfit", "blocked", field, { given, expected })];
}

/** What is known of the nearest place around a place of which nothing is: the schema library's own words are for programs. */
function above(shape: Shape, path: Path, raw: unknown): Shape {
  const around = path.slice(0, -1);
  return path.length === 0 ? shape : (shapeAt(shape, around, raw) ?? above(shape, around, raw));
}

const isDate = (shape: Shape | null): boolean => shape?.format === "date";

function unknownName(key: string, path: Path, shape: Shape, raw: unknown): Problem {
  const names = namesAt(shapeAt(shape, path, raw) ?? {}) ?? [];
  const nearest = nearestName(key, names);
  return problem("field-unknown", "blocked", fieldName([...path, key]), {
    given: valueAt(raw, [...path, key]),
    expected: nearest ? `${nearest} (the nearest of ${names.length} names)` : `one of ${listed(names)}`,
  });
}

/** A path as people write it: `tests[0].positive`; null for the input as a whole. */
export function fieldName(path: Path): string | null {
  if (path.length === 0) return null;
  return path.reduce<string>(
    (text, key) => (typeof key === "number" ? `${text}[${key}]` : text ? `${text}.${key}` : key),
    "",
  );
}

/** The path that `fieldName` wrote. */
export const pathOf = (field: string): Path =>
  field.split(/[.[\]]+/).flatMap((key) => (key === "" ? [] : [/^\d+$/.test(key) ? Number(key) : key]));

/** What stands at `path` of what was given; undefined where nothing does. */
export function valueAt(raw: unknown, path: Path): unknown {
  let here = raw;
  for (const key of path) {
    if (typeof here !== "object" || here === null) return undefined;
    here = (here as Readonly<Record<string | number, unknown>>)[key];
  }
  return here;
}

/** The name a slip of the finger most likely meant: at most two letters off; null when none is near. */
export function nearestName(given: string, names: readonly string[]): string | null {
  const plain = (name: string): string => name.toLowerCase().replaceAll(/[-_ ]/g, "");
  const meant = plain(given);
  const near = names
    .map((name) => ({ name, most: Math.min(2, Math.floor(plain(name).length / 3)) }))
    // Lengths alone may part two names: a long text is never compared letter by letter.
    .filter(({ name, most }) => Math.abs(plain(name).length - meant.length) <= most)
    .map(({ name, most }) => ({ name, most, slips: slipsBetween(meant, plain(name)) }))
    .filter(({ slips, most }) => slips <= most)
    .sort((a, b) => a.slips - b.slips);
  return near[0]?.name ?? null;
}

/** Letters to put in, take out or change (Levenshtein distance). */
function slipsBetween(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i += 1) {
    const next = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      next.push(Math.min(change, (row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1));
    }
    row = next;
  }
  return row[b.length] ?? 0;
}
