/** Flags say what the JSON input says. */
import { expect, it } from "vitest";
import type { Shape } from "../../reasoning/index.ts";
import { readArguments } from "./arguments.ts";
import { flagsOf, withFlag } from "./flags.ts";

const shape: Shape = {
  type: "object",
  required: ["season"],
  properties: {
    season: { type: "string", enum: ["winter", "summer"] },
    designPrevalence: { type: "number" },
    latitude: { type: "number" },
    supersOn: { type: "boolean" },
    colony: { type: "object", properties: { daysSinceDeath: { anyOf: [{ type: "integer" }, { type: "null" }] } } },
    findings: { type: "object", propertyNames: { enum: ["k_wing"] }, additionalProperties: { type: "string" } },
    tests: {
      type: "array",
      items: { type: "object", properties: { test: { type: "string" }, mites: { type: "integer" } } },
    },
    months: { type: "array", items: { type: "number" } },
  },
};
const flags = flagsOf(shape);

const inputOf = (...argv: string[]) => {
  const { flags: given, problems } = readArguments(argv, flags, false);
  return {
    input: given.reduce<Record<string, unknown>>((input, { flag, words }) => withFlag(input, flag, words), {}),
    problems: problems.map(({ code, field, expected }) => [code, field, expected]),
  };
};

it("names a flag for every field that words can say", () => {
  expect(flags.map(({ name, kind }) => `${name} ${kind}`)).toEqual([
    "season value",
    "design-prevalence value",
    "latitude value",
    "supers-on switch",
    "colony.days-since-death value",
    "findings pairs",
    "tests objects",
    "months list",
  ]);
  expect(flags.filter(({ required }) => required).map(({ name }) => name)).toEqual(["season"]);
});

it("builds the input: numbers as numbers, pairs and objects repeated, negative values, null", () => {
  expect(
    inputOf(
      ...["--season", "winter", "--latitude", "-33.5", "--design-prevalence=0.05", "--supers-on"],
      ...["--colony.days-since-death", "null", "--findings", "k_wing=present", "--findings", "other=absent"],
      ...["--tests", "test=varroa-wash,mites=9", "--tests", "test=x,mites=many", "--months", "1, 2.5,x"],
    ),
  ).toEqual({
    input: {
      season: "winter",
      latitude: -33.5,
      designPrevalence: 0.05,
      supersOn: true,
      colony: { daysSinceDeath: null },
      findings: { k_wing: "present", other: "absent" },
      tests: [
        { test: "varroa-wash", mites: 9 },
        { test: "x", mites: "many" },
      ],
      months: [1, 2.5, "x"],
    },
    problems: [],
  });
});

it("refuses what is said twice, whether it agrees or not", () => {
  const twice = (...words: string[]) => inputOf(...words).problems;
  expect(twice("--findings", "k_wing=present", "--findings", "k_wing=absent")).toEqual([
    ["said-twice", "--findings", "each once"],
  ]);
  expect(twice("--findings", "k_wing=present,k_wing=present")).toHaveLength(1);
  expect(twice("--season", "winter", "--season", "spring")).toEqual([["said-twice", "--season", "each once"]]);
  expect(twice("--tests", "test=varroa-wash", "--tests", "test=varroa-wash")).toEqual([]);
});

it("says in words which flag is unknown, empty, or no flag", () => {
  expect(inputOf("--sesaon", "winter").problems[0]).toEqual(["flag-unknown", "--sesaon", "--season"]);
  expect(inputOf("--season").problems).toEqual([["flag-empty", "--season", "a value"]]);
  expect(inputOf("winter").problems).toEqual([["argument-unexpected", null, "a flag"]]);
  expect(inputOf("-x").problems[0]?.slice(0, 2)).toEqual(["flag-unknown", "-x"]);
});
