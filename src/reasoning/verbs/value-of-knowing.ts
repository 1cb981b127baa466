/** `value-of-knowing`: several choices, several states of things, and what it is worth to know which one holds. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { valueOfKnowingState } from "../decision/index.ts";
import { share } from "./fields.ts";
import { verb } from "./verb.ts";

const input = z
  .strictObject({
    chances: z.array(share).min(1).max(30).describe("Chance of each state; together 1."),
    worths: z
      .array(z.array(z.number().min(-1e9).max(1e9)))
      .min(1)
      .max(30)
      .describe("One row for each choice: what it is worth in each state, in one unit; losses below 0."),
  })
  .refine(({ chances }) => Math.abs(chances.reduce((sum, each) => sum + each, 0) - 1) < 1e-9, {
    message: "chances that add up to 1",
    path: ["chances"],
  })
  .refine(({ chances, worths }) => worths.every((row) => row.length === chances.length), {
    message: "as many numbers in each row as there are states",
    path: ["worths"],
  });

const output = z.strictObject({
  choices: z
    .array(z.strictObject({ choice: z.number().int(), expected: z.number() }))
    .describe("expected worth of each choice, numbered from 1"),
  best: z.number().int().describe("choice of most expected worth; the first at a tie"),
  now: z.number().describe("its expected worth"),
  knowing: z.number().describe("expected worth if the state were known before choosing"),
  evpi: z.number().describe("expected value of perfect information: no test is worth more"),
  method: z.string(),
  rule: z.string(),
});

export const valueOfKnowing = verb({
  name: "value-of-knowing",
  family: "decisions",
  summary: "Several choices and states: the best choice, and what knowing is worth.",
  assumptions: [
    "One state holds, and the choice does not change which.",
    "Worth is averaged over many such cases; every number is yours.",
  ],
  source: "Raiffa & Schlaifer 1961; standard definition of decision analysis.",
  example: {
    chances: [0.5, 0.3, 0.2],
    worths: [
      [0, -80, -150],
      [-20, -25, -60],
      [-12, -40, -30],
    ],
  },
  input,
  output,
  run: ({ chances, worths }) => {
    const { expected, best, evpi } = valueOfKnowingState({ chances, utilities: worths });
    const now = expected[best] ?? 0;
    return answered({
      choices: expected.map((each, index) => ({ choice: index + 1, expected: each })),
      best: best + 1,
      now,
      knowing: now + evpi,
      evpi,
      method: "expected-utility",
      rule: "DE2",
    });
  },
});
