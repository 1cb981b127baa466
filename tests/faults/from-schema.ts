/** Values that fit a JSON schema more or less, and values changed past it: what a careless or hostile program might send. */
type Json = Readonly<Record<string, unknown>>;
type Below = (bound: number) => number;

const odd: readonly unknown[] = [
  null,
  true,
  "",
  " ",
  "a".repeat(5000),
  "=cmd()",
  "\u0000",
  "\ud800",
  "2026-02-30",
  "9999-12-31",
  "__proto__",
  "constructor",
  "<script>alert(1)</script>",
  "../../etc/passwd",
  -1,
  0,
  -0,
  0.1,
  1e-320,
  1e308,
  -1e308,
  2 ** 53,
  [],
  {},
  [[]],
  [null],
  { __proto__: null, toString: 1 },
];

export const oddOf = (below: Below): unknown => odd[below(odd.length)];

/** A value of the schema; what the schema leaves open is drawn. `depth` ends circles. */
export function valueFor(schema: Json, below: Below, depth = 0): unknown {
  if ("const" in schema) return schema.const;
  if (Array.isArray(schema.enum)) return schema.enum[below(schema.enum.length)];
  for (const many of ["anyOf", "oneOf", "allOf"] as const)
    if (Array.isArray(schema[many]))
      return valueFor(schema[many][below(schema[many].length)] as Json, below, depth + 1);
  const type = Array.isArray(schema.type) ? schema.type[below(schema.type.length)] : schema.type;
  if (depth > 8) return null;
  switch (type) {
    case "object":
      return objectOf(schema, below, depth);
    case "array":
      return Array.from(
        { length: Math.min(Number(schema.minItems ?? 0) + below(4), Number(schema.maxItems ?? 9)) },
        () => valueFor((schema.items ?? {}) as Json, below, depth + 1),
      );
    case "integer":
    case "number":
      return numberOf(schema, type === "integer", below);
    case "string":
      return schema.format === "date" || String(schema.pattern ?? "").includes("\\d{4}")
        ? `20${10 + below(30)}-0${1 + below(9)}-${10 + below(18)}`
        : ["hive-1", "x", "7", "Tarrow", "2026-03-09"][below(5)];
    case "boolean":
      return below(2) === 0;
    case "null":
      return null;
    default:
      return oddOf(below);
  }
}

function objectOf({ properties = {}, required = [] }: Json, below: Below, depth: number): Json {
  const needed = new Set(required as readonly string[]);
  const named = Object.entries(properties as Readonly<Record<string, Json>>);
  const kept = named.filter(([name]) => needed.has(name) || below(2) === 0);
  return Object.fromEntries(kept.map(([name, each]) => [name, valueFor(each, below, depth + 1)]));
}

function numberOf(schema: Json, isWhole: boolean, below: Below): number {
  const least = Number(schema.minimum ?? schema.exclusiveMinimum ?? 0);
  const most = Number(schema.maximum ?? schema.exclusiveMaximum ?? least + 100);
  const drawn = [least, most, least + ((most - least) * below(1001)) / 1000][below(3)] ?? least;
  return isWhole ? Math.round(drawn) : drawn;
}

/** The value with something inside it changed past its schema. */
export function mutated(value: unknown, below: Below): unknown {
  if (typeof value !== "object" || value === null || below(4) === 0) return oddOf(below);
  if (Array.isArray(value)) {
    const at = below(value.length + 1);
    return below(3) === 0
      ? Array.from({ length: below(300) }, () => value[0] ?? oddOf(below))
      : value.toSpliced(at, 1, mutated(value[at], below));
  }
  const names = Object.keys(value);
  const name = names[below(names.length)];
  if (name === undefined) return { extra: oddOf(below) };
  const { [name]: held, ...rest } = value as Json;
  const how = below(4);
  if (how === 0) return rest;
  return how === 1 ? { ...rest, [`${name}x`]: held } : { ...rest, [name]: mutated(held, below) };
}
