/**
 * What is wrong with a question, told at the field where it was typed and in the numbers that were typed there.
 *
 * @module views/model
 */
import type { Shape } from "../../../reasoning/index.ts";
import { type Problem, problem } from "../../../units/index.ts";
import type { FieldWords } from "../../words/index.ts";
import { fieldOfProblem, type MethodField, placesOf } from "./method-form.ts";

/** Codes that come from holding a question against its schema; all others have sentences of their own. */
const fromSchema = ["field-missing", "field-unfit", "fields-disagree", "field-unknown"];

interface Asked {
  readonly fields: readonly MethodField[];
  readonly shape: Shape;
  readonly words: Readonly<Record<string, FieldWords>>;
}

/** The problems in words of the page, each once; those that have their own sentence stay as they are. */
export function fieldTroubles(troubles: readonly Problem[], asked: Asked): readonly Problem[] {
  const told = troubles.map((each) => fieldTrouble(each, asked));
  const key = ({ code, field, slots }: Problem) =>
    `${code} ${fieldOfProblem({ field }, asked.fields)} ${JSON.stringify(slots)}`;
  const keys = told.map(key);
  return told.filter((_, index) => keys.indexOf(keys[index] ?? "") === index);
}

function fieldTrouble(trouble: Problem, asked: Asked): Problem {
  if (!fromSchema.includes(trouble.code)) return trouble;
  const name = fieldOfProblem(trouble, asked.fields);
  const rest = (trouble.field ?? "").slice((name ?? "").length);
  const place = placesOf(asked.shape).find((each) => each.name === name);
  const { line, member } = inside(rest);
  const told = place ? shapeInside(place.shape, rest) : null;
  const say = asked.words[name ?? ""];
  const per =
    (member === null ? say?.per : say?.perOf?.[member]) ?? (place?.shape.items?.type === "number" ? say?.per : 1) ?? 1;
  // A list of numbers is typed in one line.
  const isOneLine = place?.shape.items?.type === "number" || place?.shape.items?.type === "integer";
  const scaled = (value: number | undefined) =>
    value === undefined ? undefined : Number((per * value).toPrecision(12));
  const given = typeof trouble.given === "number" ? String(scaled(trouble.given)) : String(trouble.given ?? "");
  const bounds = {
    min: bound(scaled(told?.minimum)),
    max: bound(scaled(told?.maximum)),
    above: bound(scaled(told?.exclusiveMinimum)),
    below: bound(scaled(told?.exclusiveMaximum)),
  };
  return problem(trouble.code, trouble.severity, trouble.field, {
    given: trouble.given,
    slots: {
      given: trouble.code === "field-unknown" ? "" : given,
      line: isOneLine ? 0 : (line ?? 0),
      at: isOneLine ? (line ?? 0) : 0,
      member: trouble.code === "field-unknown" ? "" : (member ?? ""),
      kind: told?.type === "integer" || told?.type === "number" ? told.type : "",
      items: told?.type === "array" ? (told.minItems ?? 0) : 0,
      expected: trouble.code === "field-unknown" ? "" : (trouble.expected ?? ""),
      ...Object.fromEntries(Object.entries(bounds).filter(([, value]) => value !== undefined)),
    },
  });
}

/** Whole numbers are bounded by what a double holds: no news to a person. */
const bound = (value: number | undefined): number | undefined =>
  value === undefined || Math.abs(value) >= 2 ** 53 - 1 ? undefined : value;

/** `[3].positive`: the fourth line, its member `positive`. */
function inside(rest: string): { readonly line: number | null; readonly member: string | null } {
  const found = /^\[(\d+)\](?:\.([\w ]+)|\[(\d+)\])?$/.exec(rest);
  if (!found) return { line: null, member: null };
  const [, line = "0", name, column] = found;
  return { line: Number(line) + 1, member: name ?? (column === undefined ? null : `number ${Number(column) + 1}`) };
}

/** The shape of what stands inside a list: a row, its member, a number of a row. */
function shapeInside(shape: Shape, rest: string): Shape | null {
  const keys = rest.split(/[.[\]]+/).filter((key) => key !== "");
  return keys.reduce<Shape | null>(
    (here, key) => (here === null ? null : /^\d+$/.test(key) ? (here.items ?? null) : (here.properties?.[key] ?? null)),
    shape,
  );
}
