/** Reads a JSON Schema the way a person would ask about it: what stands at this path, and what is expected there. */

/** The part of JSON Schema (draft 2020-12) that the verbs' schemas use. */
export interface Shape {
  readonly type?: string | readonly string[];
  readonly description?: string;
  readonly properties?: Readonly<Record<string, Shape>>;
  readonly required?: readonly string[];
  readonly additionalProperties?: boolean | Shape;
  readonly propertyNames?: Shape;
  readonly items?: Shape;
  readonly enum?: readonly unknown[];
  readonly const?: unknown;
  readonly anyOf?: readonly Shape[];
  readonly oneOf?: readonly Shape[];
  readonly format?: string;
  readonly minimum?: number;
  readonly maximum?: number;
  readonly exclusiveMinimum?: number;
  readonly exclusiveMaximum?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
  readonly default?: unknown;
  readonly examples?: readonly unknown[];
}

export type Path = readonly (string | number)[];

/**
 * What stands at `path` of `shape`; null where the schema says nothing about that place. Of branches that a key tells
 * apart, such as the kind of an action, that of `given`, which stands where the path begins, is followed.
 */
export function shapeAt(shape: Shape, path: Path, given?: unknown): Shape | null {
  const here = branchOf(shape, given);
  const [key, ...rest] = path;
  if (key === undefined) return here;
  const child = typeof key === "number" ? (here.items ?? null) : childOf(here, key);
  const inside =
    typeof given === "object" && given !== null ? (given as Readonly<Record<Key, unknown>>)[key] : undefined;
  return child === null ? null : shapeAt(child, rest, inside);
}

type Key = string | number;

/** The one alternative that what is given can be meant as; the shape itself where none or several can. */
function branchOf(shape: Shape, given: unknown): Shape {
  const objects = (optionsOf(shape) ?? []).filter(({ properties, items }) => properties ?? items);
  if (typeof given !== "object" || given === null) return shape;
  const told = given as Readonly<Record<string, unknown>>;
  const meant = objects.filter(({ properties = {} }) =>
    Object.entries(properties).every(([name, each]) => each.const === undefined || each.const === told[name]),
  );
  return meant.length === 1 ? (meant[0] as Shape) : shape;
}

/** A field; where branches have it and none was chosen, what any of them takes. */
function childOf(shape: Shape, key: string): Shape | null {
  const inBranches = (optionsOf(shape) ?? []).flatMap((each) => each.properties?.[key] ?? []);
  if (inBranches.length > 0) {
    const values = inBranches.flatMap((each) => (each.const === undefined ? [] : [each.const]));
    return values.length === inBranches.length ? { enum: values } : (inBranches[0] as Shape);
  }
  const named = shape.properties?.[key];
  if (named) return named;
  return typeof shape.additionalProperties === "object" ? shape.additionalProperties : null;
}

/** Names a person may write at this place: fields of an object or keys of a record; null where any goes. */
export function namesAt(shape: Shape): readonly string[] | null {
  if (shape.properties) return Object.keys(shape.properties);
  return shape.propertyNames?.enum?.map(String) ?? null;
}

/** The alternatives of a shape, however they are written; null when there is but one. */
export function optionsOf(shape: Shape): readonly Shape[] | null {
  const { anyOf, oneOf, type, ...rest } = shape;
  return anyOf ?? oneOf ?? (typeof type === "object" ? type.map((each): Shape => ({ ...rest, type: each })) : null);
}

/** What is expected, in a few plain words: `a number above 0 and up to 1`. */
export function shapeInWords(shape: Shape): string {
  const options = optionsOf(shape);
  if (options) return options.map(shapeInWords).join(" or ");
  if (shape.const !== undefined) return String(shape.const);
  if (shape.enum) return `${shape.enum.length > 1 ? "one of " : ""}${listed(shape.enum.map(String))}`;
  if (shape.format === "date") return "a calendar day as YYYY-MM-DD";
  switch (shape.type) {
    case "integer":
      return `a whole number${rangeInWords(shape)}`;
    case "number":
      return `a number${rangeInWords(shape)}`;
    case "boolean":
      return "true or false";
    case "null":
      return "null";
    case "array":
      return `a list${lengthInWords(shape)}${shape.items ? `, each ${shapeInWords(shape.items)}` : ""}`;
    case "object":
      return objectInWords(shape);
    default:
      return "text";
  }
}

/** The first twelve names, and how many more there are. */
export const listed = (names: readonly string[]): string =>
  names.length <= 12 ? names.join(", ") : `${names.slice(0, 12).join(", ")} and ${names.length - 12} more`;

function objectInWords(shape: Shape): string {
  const names = namesAt(shape);
  if (names === null) return "an object";
  return shape.properties ? `an object with ${listed(names)}` : `an object whose names are among ${listed(names)}`;
}

function lengthInWords({ minItems, maxItems }: Shape): string {
  if (minItems !== undefined && minItems === maxItems) return ` of ${minItems}`;
  if (minItems !== undefined && maxItems !== undefined) return ` of ${minItems} to ${maxItems}`;
  if (minItems !== undefined) return ` of at least ${minItems}`;
  return maxItems === undefined ? "" : ` of at most ${maxItems}`;
}

/** JSON Schema bounds every whole number by what a double can hold: that is no news to a person. */
const told = (bound: number | undefined): bound is number => bound !== undefined && Math.abs(bound) < 2 ** 53 - 1;

function rangeInWords({ minimum, maximum, exclusiveMinimum, exclusiveMaximum }: Shape): string {
  if (told(minimum) && told(maximum)) return ` from ${minimum} to ${maximum}`;
  const low = told(exclusiveMinimum) ? `above ${exclusiveMinimum}` : told(minimum) ? `of at least ${minimum}` : "";
  const high = told(exclusiveMaximum) ? `below ${exclusiveMaximum}` : told(maximum) ? `up to ${maximum}` : "";
  return [low, high]
    .filter((part) => part !== "")
    .map((part, index) => `${index === 0 ? " " : " and "}${part}`)
    .join("");
}
