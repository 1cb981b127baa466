/** Sentences of `thresholds`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

const choices = { wait: "waiting", "test-first": "testing first", "act-now": "treating at once" };

export const thresholds = {
  asks: "From which chance on to test, from which on to treat?",
  under: "For a condition that is there or not. Benefit, harm and cost are yours, in one unit.",
  fields: {
    benefit: { label: "Benefit of treating a colony that has it" },
    harm: { label: "Harm of treating a colony that has it not" },
    testCost: { label: "Cost of the test" },
    sensitivity: { label: "Of 100 that have it, the test finds", per: 100 },
    specificity: { label: "Of 100 that have it not, the test clears", per: 100 },
    chance: { label: "Chance that it is there, of 100", hint: "Leave empty for the thresholds alone.", per: 100 },
  },
  says: ({ treatment, testing, testTreatment, worthTesting, largestTestCost, here }) => {
    const lines = !worthTesting
      ? `**This test is never worth its cost:** ${largestTestCost > 0 ? `at most ${figure(largestTestCost)} would be` : "it tells too little at any price"}. Treat above ${hundred(treatment)} in 100.`
      : `**Test between ${hundred(testing)} and ${hundred(Math.min(1, testTreatment))} in 100;** below that wait${testTreatment < 1 ? ", above it treat without a test" : ""}.`;
    const now = here === null ? "" : ` At ${hundred(here.chance)} in 100 ${choices[here.best]} is worth most.`;
    return lines + now;
  },
  picture: "What each choice is worth",
  pictureUnder: "The highest line is the best choice. Waiting counts as 0.",
  chance: "Chance that it is there, of 100",
  worth: "Worth, in your unit",
  choice: { wait: "Wait", testFirst: "Test first", actNow: "Treat at once" },
  testFrom: (at: number) => `test: ${hundred(at)}`,
  treatFrom: (at: number) => `treat: ${hundred(at)}`,
  here: (at: number) => `at ${hundred(at)}`,
  label: ({ testing, testTreatment, treatment, worthTesting }: Answers["thresholds"]) =>
    worthTesting
      ? `Waiting is worth most below ${hundred(testing)} in 100, testing first up to ${hundred(Math.min(1, testTreatment))}, treating at once above.`
      : `Waiting is worth most below ${hundred(treatment)} in 100, treating at once above; testing first nowhere.`,
} satisfies MethodWords<Answers["thresholds"]> & Record<string, unknown>;
