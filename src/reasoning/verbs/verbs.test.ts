/** What every verb owes: its example is answered as its schema says, and no input makes it throw or answer NaN. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { verbs } from "./index.ts";

type Path = readonly (string | number)[];

/** Every place of a value with what stands there. */
function* places(value: unknown, path: Path = []): Generator<readonly [Path, unknown]> {
  if (path.length > 0) yield [path, value];
  if (typeof value !== "object" || value === null) return;
  for (const [key, child] of Object.entries(value))
    yield* places(child, [...path, Array.isArray(value) ? Number(key) : key]);
}

function withValue(value: unknown, [key, ...rest]: Path, given: unknown): unknown {
  if (key === undefined) return given;
  if (Array.isArray(value)) return value.map((each, index) => (index === key ? withValue(each, rest, given) : each));
  const object = value as Record<string, unknown>;
  if (rest.length === 0 && given === undefined)
    return Object.fromEntries(Object.entries(object).filter(([name]) => name !== key));
  return { ...object, [key]: withValue(object[key], rest, given) };
}

/** Smaller questions of the same shape, where the example takes long. */
const quick: Readonly<Record<string, object>> = {
  differential: {
    season: "winter",
    findings: { k_wing: "present" },
    tests: [{ test: "tracheal-dissection", positive: 3, examined: 20 }],
    draws: 40,
  },
  decide: {
    belief: { positive: 1, examined: 5 },
    prices: { colonyValue: 200, actCost: 20, testCost: 15, residualShare: 0.3 },
    test: { bees: 3, sensitivity: 0.9 },
  },
  season: {
    site: { monthlyMeanCelsius: [-3.8, -2.9, 1.6, 7.7, 13.9, 18.8, 21.8, 21, 16.4, 10.2, 4.1, -1.2], latitude: 45 },
    start: { date: "2026-08-01", bees: 30000, infestedShare: 0.08 },
    actions: [{ kind: "oil-patty", from: "2026-08-15", to: "2026-09-15" }],
    counts: [{ date: "2026-10-01", infested: 6, examined: 50 }],
    until: "2026-10-15",
    draws: 100,
  },
  "season-choices": {
    start: { date: "2026-08-01", bees: 30000, infestedShare: 0.08 },
    counts: [{ date: "2026-08-10", infested: 6, examined: 50 }],
    choices: [{ name: "patty", actions: [{ kind: "oil-patty", from: "2026-08-15", to: "2026-09-10" }] }],
    decideOn: "2026-08-12",
    dates: ["2026-09-01"],
    line: 0.1,
    until: "2026-09-20",
    draws: 100,
  },
  survey: { designPrevalence: 0.2, sensitivity: 0.95, specificity: 0.98, population: 200 },
  "true-prevalence-belief": { positive: 4, examined: 20, sensitivityPrior: { a: 9, b: 2 }, specificity: 0.98 },
  "trend-in-groups": {
    counts: [2, 5, 9, 12].map((positive, index) => ({
      group: Math.floor(index / 2),
      positive,
      examined: 20,
      period: index % 2,
    })),
  },
};

const awkward = [
  undefined,
  null,
  0,
  1,
  -1,
  0.5,
  1e-12,
  1e9,
  1e308,
  "",
  "x",
  "2026-02-30",
  true,
  [],
  {},
  [[]],
  { a: 1 },
];

/** The schema library's own words, and a choice from nothing. */
const forPrograms = /^(Invalid|Too (big|small)|Unrecognized|Must be)|expected |received|one of \.?$/;

const notNumbers = (value: unknown): readonly Path[] =>
  [...places(value)].filter(([, each]) => typeof each === "number" && !Number.isFinite(each)).map(([path]) => path);

it.each(verbs.map((verb) => [verb.name, verb] as const))("%s answers its example, whole", (_name, verb) => {
  const reply = verb.ask(verb.example);
  expect(reply.kind).toBe("answered");
  if (reply.kind === "answered") expect(verb.output.safeParse(reply.value).error).toBeUndefined();
});

it.each(verbs.map((verb) => [verb.name, verb] as const))(
  "%s neither throws nor answers NaN, whatever stands in one field",
  (_name, verb) => {
    const example = quick[verb.name] ?? verb.example;
    expect(verb.ask(example).kind).toBe("answered");
    for (const [path] of places(example)) {
      for (const given of awkward) {
        const changed = withValue(example, path, given);
        const reply = verb.ask(changed);
        const where = `${path.join(".")} = ${JSON.stringify(given)}`;
        if (reply.kind === "answered") {
          expect(notNumbers(reply.value), where).toEqual([]);
          expect(verb.output.safeParse(reply.value).error, where).toBeUndefined();
        } else {
          expect(reply.problems.length, where).toBeGreaterThan(0);
          for (const { expected = "" } of reply.problems) expect(expected, where).not.toMatch(forPrograms);
        }
      }
    }
  },
);

/** Fields that hold a number, a choice or a yes and that the example leaves out. */
const leftOut = ({ inputShape, example }: (typeof verbs)[number]) =>
  Object.entries(inputShape.properties ?? {}).filter(
    ([name, { type, enum: choices }]) =>
      !Object.hasOwn(example, name) &&
      (choices !== undefined || ["number", "integer", "boolean"].includes(String(type))),
  );

it.each(verbs.filter(({ family }) => family !== "case").map((verb) => [verb.name, verb] as const))(
  "%s neither throws nor answers NaN, whatever numbers stand in several fields, left out or not",
  (_name, verb) => {
    const example = quick[verb.name] ?? verb.example;
    const number = fc.constantFrom(0, 1, 2, 3, 0.5, 0.999, 1e-9, 0.05, 0.95, 10, 50, 1000);
    const known = [...places(example)].filter(([, value]) => typeof value === "number").map(([path]) => path);
    const change = fc.oneof(
      ...(known.length > 0 ? [fc.tuple(fc.constantFrom(...known), number)] : []),
      ...leftOut(verb).map(([name, shape]) =>
        fc.tuple(
          fc.constant([name] as Path),
          shape.enum ? fc.constantFrom(...shape.enum) : shape.type === "boolean" ? fc.boolean() : number,
        ),
      ),
    );
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 4 }), (changes) => {
        const changed = changes.reduce<unknown>((before, [path, given]) => withValue(before, path, given), example);
        const reply = verb.ask(changed);
        if (reply.kind !== "unfit") expect(notNumbers(reply.value)).toEqual([]);
        else expect(reply.problems.length).toBeGreaterThan(0);
      }),
      { seed: 20261127, numRuns: 30 },
    );
  },
);

it("has a name, a summary of one line, assumptions and a source for each", () => {
  expect(new Set(verbs.map(({ name }) => name)).size).toBe(verbs.length);
  for (const { name, summary, assumptions, source } of verbs) {
    expect(name).toMatch(/^[a-z]+(-[a-z]+)*$/);
    expect(summary.length, name).toBeLessThan(80);
    expect(summary, name).toMatch(/\.$/);
    expect(assumptions.length, name).toBeGreaterThan(0);
    expect(source, name).not.toBe("");
  }
});

it("a sample size names the rule of its own model: large colony or small group", () => {
  const rule = (population?: number) => {
    const reply = verbs
      .find(({ name }) => name === "sample-size")
      ?.ask({ designPrevalence: 0.05, sensitivity: 0.9, ...(population === undefined ? {} : { population }) });
    return reply?.kind === "answered" ? (reply.value as { rule: string }).rule : null;
  };
  expect([rule(), rule(40)]).toEqual(["SD1", "SD6"]);
});
