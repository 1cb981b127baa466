/** Flags are made from a verb's schema: `designPrevalence` becomes `--design-prevalence`, `colony.state` becomes `--colony.state`. */
import { optionsOf, type Shape } from "../../reasoning/index.ts";

export interface Flag {
  readonly name: string;
  readonly path: readonly string[];
  /** value: one value · switch: true when named · list: values with commas · pairs: NAME=VALUE · objects: FIELD=VALUE,FIELD=VALUE. The last two may be repeated. */
  readonly kind: "value" | "switch" | "list" | "pairs" | "objects";
  readonly shape: Shape;
  readonly required: boolean;
}

/** `designPrevalence` → `design-prevalence`. */
export const kebab = (name: string): string => name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

/** All flags of an input schema, in the schema's order; what no flag can say is left to `--input`. */
export function flagsOf(shape: Shape, path: readonly string[] = []): readonly Flag[] {
  return Object.entries(shape.properties ?? {}).flatMap(([key, given]): readonly Flag[] => {
    const child = withoutNull(given);
    const here = [...path, key];
    const required = path.length === 0 && (shape.required?.includes(key) ?? false);
    const flag = (kind: Flag["kind"]): Flag => ({
      name: here.map(kebab).join("."),
      path: here,
      kind,
      shape: kind === "value" ? given : { ...(given.description ? { description: given.description } : {}), ...child },
      required,
    });
    if (child.properties) return path.length < 2 ? flagsOf(child, here) : [];
    if (child.type === "object") return isScalar(child.additionalProperties) ? [flag("pairs")] : [];
    if (child.type === "array") {
      if (isScalar(child.items)) return [flag("list")];
      const { properties = {}, required: needed = [] } = child.items ?? {};
      const isSayable = child.items?.properties !== undefined && needed.every((name) => isScalar(properties[name]));
      return isSayable ? [flag("objects")] : [];
    }
    return [flag(child.type === "boolean" ? "switch" : "value")];
  });
}

/** One word between commas can say it. */
export const isScalar = (shape: Shape | boolean | undefined): boolean =>
  typeof shape === "object" &&
  (optionsOf(shape)?.every(isScalar) ?? (shape.type !== "object" && shape.type !== "array" && !shape.properties));

/** Fields of an input that no flag can say, with their schemas. */
export function onlyInJson(shape: Shape): readonly (readonly [string, Shape])[] {
  const said = new Set(flagsOf(shape).map(({ path: [first] }) => first));
  return Object.entries(shape.properties ?? {}).filter(([name]) => !said.has(name));
}

/** A value or null: the value's own schema. */
function withoutNull(shape: Shape): Shape {
  const others = optionsOf(shape)?.filter((each) => each.type !== "null") ?? [];
  return others.length === 1 && others[0] ? others[0] : shape;
}

/** What a flag's words mean as JSON. Words that are no number stay words, for the schema to name. */
export function meaning(text: string, shape: Shape): unknown {
  const plain = withoutNull(shape);
  if (text === "null" && plain !== shape) return null;
  if (plain.type === "number" || plain.type === "integer") {
    const number = Number(text);
    return text.trim() !== "" && Number.isFinite(number) ? number : text;
  }
  if (plain.type === "boolean") return text === "true" ? true : text === "false" ? false : text;
  return text;
}

/** The input with this flag's words put in their place. */
export function withFlag(input: Readonly<Record<string, unknown>>, flag: Flag, words: string): Record<string, unknown> {
  return placed(input, flag.path, (before) => {
    switch (flag.kind) {
      case "switch":
        return words === "" ? true : meaning(words, flag.shape);
      case "list":
        return words.split(",").map((each) => meaning(each.trim(), flag.shape.items ?? {}));
      case "pairs": {
        const shape = typeof flag.shape.additionalProperties === "object" ? flag.shape.additionalProperties : {};
        return { ...asObject(before), ...pairs(words, () => shape) };
      }
      case "objects": {
        const fields = flag.shape.items?.properties ?? {};
        return [...(Array.isArray(before) ? before : []), pairs(words, (name) => fields[name] ?? {})];
      }
      default:
        return meaning(words, flag.shape);
    }
  });
}

const asObject = (value: unknown): Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Record<string, unknown>) : {};

function placed(
  input: Readonly<Record<string, unknown>>,
  [key = "", ...rest]: readonly string[],
  change: (before: unknown) => unknown,
): Record<string, unknown> {
  const before = input[key];
  return { ...input, [key]: rest.length === 0 ? change(before) : placed(asObject(before), rest, change) };
}

function pairs(words: string, shapeOf: (name: string) => Shape): Record<string, unknown> {
  return Object.fromEntries(
    words.split(",").map((pair) => {
      const cut = pair.indexOf("=");
      const name = (cut < 0 ? pair : pair.slice(0, cut)).trim();
      return [name, cut < 0 ? "" : meaning(pair.slice(cut + 1).trim(), shapeOf(name))];
    }),
  );
}
