/** What does not fit is named by field, given and expected; what may not be is refused by its rule. */
import { expect, it } from "vitest";
import * as z from "zod";
import { answered, blocked, problem } from "../../units/index.ts";
import { day, level, positiveShare } from "./fields.ts";
import { replyBody } from "./message.ts";
import { nearestName } from "./read-input.ts";
import { shapeInWords } from "./shape.ts";
import { verb } from "./verb.ts";

const input = z
  .strictObject({
    positive: z.number().int().min(0),
    examined: z.number().int().min(1),
    prevalence: positiveShare.default(0.05),
    level: level.exactOptional(),
    on: day.exactOptional(),
    findings: z.partialRecord(z.enum(["crawlers", "k_wing"]), z.enum(["present", "absent"])).default({}),
    tests: z.array(z.strictObject({ test: z.enum(["varroa-wash"]), mites: z.number().int().min(0) })).default([]),
  })
  .refine((value) => value.positive <= value.examined, { message: "no more than examined", path: ["positive"] });

const share = verb({
  name: "share",
  family: "shares",
  summary: "Share of positive bees.",
  assumptions: ["Bees were drawn at random."],
  source: "definition",
  example: { positive: 1, examined: 4 },
  input,
  output: z.strictObject({ share: z.number() }),
  refusals: ["no-comparator"],
  run: ({ positive, examined, prevalence }) =>
    prevalence === 1
      ? blocked(problem("no-comparator", "blocked", null))
      : answered({ share: positive / examined }, examined < 5 ? [problem("few-bees", "warned", "examined")] : []),
});

const problemsFor = (raw: unknown) => {
  const reply = share.ask(raw);
  return reply.kind === "unfit" ? reply.problems.map(({ field, given, expected }) => [field, given, expected]) : reply;
};

it("answers, with defaults filled in and notices beside the answer", () => {
  expect(replyBody(share.ask({ positive: 1, examined: 4 }))).toEqual({
    share: 0.25,
    notices: [{ code: "few-bees", severity: "warned", field: "examined", message: "examined: few bees." }],
  });
  expect(replyBody(share.ask({ positive: 1, examined: 10 }))).toEqual({ share: 0.1 });
});

it("names a field that is missing, of another type, or out of range", () => {
  expect(problemsFor({ positive: "3", prevalence: 0 })).toEqual([
    ["positive", "3", "a whole number of at least 0"],
    ["examined", undefined, "a whole number of at least 1"],
    ["prevalence", 0, "a number above 0 and up to 1"],
  ]);
  expect(problemsFor({ positive: 1.5, examined: 4, level: 1 })).toEqual([
    ["positive", 1.5, "a whole number of at least 0"],
    ["level", 1, "a number of at least 0.01 and below 1"],
  ]);
});

it("names a field that is unknown, with the nearest known one", () => {
  expect(
    problemsFor({ positive: 1, examined: 4, prevalance: 0.1, findings: { kwing: "present", wax: "present" } }),
  ).toEqual([
    ["findings.kwing", "present", "k_wing (the nearest of 2 names)"],
    ["findings.wax", "present", "one of crawlers, k_wing"],
    ["prevalance", 0.1, "prevalence (the nearest of 7 names)"],
  ]);
});

it("names a place inside lists, a day that does not exist, and fields that disagree", () => {
  expect(
    problemsFor({ positive: 1, examined: 4, tests: [{ test: "varroa-wash", mites: -1 }], on: "2026-02-30" }),
  ).toEqual([
    ["on", "2026-02-30", "a calendar day as YYYY-MM-DD"],
    ["tests[0].mites", -1, "a whole number of at least 0"],
  ]);
  expect(problemsFor({ positive: 5, examined: 4 })).toEqual([["positive", 5, "no more than examined"]]);
});

it("takes anything that is no object for what it is", () => {
  expect(problemsFor([])).toEqual([[null, [], expect.stringContaining("an object with positive, examined")]]);
  expect(problemsFor(null)).toEqual([[null, null, expect.stringContaining("an object")]]);
});

it("tells a lawful refusal from input that does not fit", () => {
  expect(replyBody(share.ask({ positive: 1, examined: 4, prevalence: 1 }))).toEqual({
    refused: [{ rule: "no-comparator", reason: "no comparator." }],
  });
});

it("says what is expected in plain words", () => {
  expect(shapeInWords({ type: "number", minimum: 0, maximum: 1 })).toBe("a number from 0 to 1");
  expect(shapeInWords({ anyOf: [{ type: "string", format: "date" }, { type: "null" }] })).toBe(
    "a calendar day as YYYY-MM-DD or null",
  );
  expect(shapeInWords({ type: "array", minItems: 12, maxItems: 12, items: { type: "number" } })).toBe(
    "a list of 12, each a number",
  );
  expect(shapeInWords({ type: "integer", minimum: -(2 ** 53 - 1), maximum: 2 ** 53 - 1 })).toBe("a whole number");
});

it("guesses a name only when it is near", () => {
  expect(nearestName("k-wing", ["k_wing", "crawlers"])).toBe("k_wing");
  expect(nearestName("crawler", ["k_wing", "crawlers"])).toBe("crawlers");
  expect(nearestName("mites", ["k_wing", "crawlers"])).toBeNull();
  const began = performance.now();
  expect(nearestName("x".repeat(1_000_000), ["k_wing", "y".repeat(1000)])).toBeNull();
  expect(performance.now() - began).toBeLessThan(500); // letter by letter it would be a thousand million steps
});
