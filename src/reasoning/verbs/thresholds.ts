/** `thresholds`: from which chance on a test is worth it, and from which on treating without one. */
import * as z from "zod";
import { answered } from "../../units/index.ts";
import { bestByUtility, expectedUtilities, testThresholds } from "../decision/index.ts";
import { share } from "./fields.ts";
import { verb } from "./verb.ts";

const amount = z.number().min(0).max(1e9);

const input = z
  .strictObject({
    benefit: amount.gt(0).describe("Net benefit of treating a colony that has the condition, in any one unit."),
    harm: amount.describe("Net harm of treating a colony that has it not, in the same unit."),
    sensitivity: share.describe("Share of colonies with the condition that the test finds. It has no default."),
    specificity: share.describe("Share of colonies without it that the test calls free. It has no default."),
    testCost: amount.describe("Cost of the test, in the same unit."),
    chance: share.exactOptional().describe("Chance that the colony has the condition, before the test."),
    chances: z.array(share).max(400).default([]).describe("Chances at which to tell what each choice is worth."),
  })
  .refine((given) => !isRead(given) || given.specificity * given.harm + (1 - given.sensitivity) * given.benefit > 0, {
    message: "above 0 where the test misses nothing: else nothing speaks against treating at once",
    path: ["harm"],
  })
  .refine((given) => !isRead(given) || (1 - given.specificity) * given.harm + given.sensitivity * given.benefit > 0, {
    message: "above 0 where the test raises no false alarm: else it never says yes",
    path: ["sensitivity"],
  });

interface Stakes {
  readonly benefit: number;
  readonly harm: number;
  readonly sensitivity: number;
  readonly specificity: number;
}

/** A number out of its own range is told by itself, and no rule between numbers is held against it. */
function isRead({ benefit, harm, sensitivity, specificity }: Stakes): boolean {
  return benefit > 0 && harm >= 0 && [sensitivity, specificity].every((each) => share.safeParse(each).success);
}

const worth = z.strictObject({
  chance: z.number(),
  wait: z.number().describe("worth of waiting; 0 by definition"),
  testFirst: z.number(),
  actNow: z.number(),
  best: z.enum(["wait", "test-first", "act-now"]),
});

const output = z.strictObject({
  treatment: z.number().describe("without a test: treat above this chance"),
  testing: z.number().describe("below this chance neither test nor treat; as it comes, also above 1"),
  testTreatment: z.number().describe("above this chance treat without testing; as it comes, also below 0"),
  worthTesting: z.boolean().describe("false where the two cross: the test is never worth its cost"),
  largestTestCost: z.number().describe("largest cost at which the test is of use at some chance"),
  here: worth.nullable().describe("what each choice is worth at the chance given"),
  worths: z.array(worth).describe("the same at the chances asked for"),
  method: z.string(),
  rule: z.string(),
});

export const thresholds = verb({
  name: "thresholds",
  family: "decisions",
  summary: "From which chance on to test, and from which on to treat without a test.",
  assumptions: [
    "The condition is there or not; the test says yes or no; benefit and harm are averages over such colonies.",
    "Waiting on a colony without the condition counts as 0, and so does waiting on one with it: the benefit is what treating adds.",
    "Every price is yours. What a label or the law demands stands above any reckoning.",
  ],
  source:
    "Pauker & Kassirer 1975, N. Engl. J. Med. 293:229; Pauker & Kassirer 1980, N. Engl. J. Med. 302:1109 (abstract read, formulas from memory and checked by equating expected utilities).",
  example: { benefit: 100, harm: 10, sensitivity: 0.9, specificity: 0.95, testCost: 1, chance: 0.2 },
  input,
  output,
  run: ({ chance, chances, ...stakes }) => {
    const worthAt = (probability: number) => {
      const utilities = expectedUtilities({ ...stakes, probability });
      return { chance: probability, ...utilities, best: bestByUtility(utilities) };
    };
    return answered({
      ...testThresholds(stakes),
      here: chance === undefined ? null : worthAt(chance),
      worths: chances.map(worthAt),
      method: "expected-utility",
      rule: "DE1",
    });
  },
});
