/** Sentences of `value-of-knowing`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { whole } from "../numbers.ts";
import { figure } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const valueOfKnowing = {
  asks: "What would it be worth to know for certain?",
  under: "Several choices, several states of things. No test can be worth more than knowing.",
  fields: {
    chances: { label: "Chance of each state, of 100", hint: "Together 100.", per: 100 },
    worths: {
      label: "Worth of each choice in each state",
      hint: "One choice a line, one number for each state, in the same order. Losses below 0.",
    },
  },
  says: ({ best, now, evpi, choices }) =>
    choices.every(({ expected }) => expected === now)
      ? `**All choices are worth the same:** ${figure(now)} on average. ${evpi <= 0 ? "Knowing would change nothing." : `To know for certain would be worth ${figure(evpi)}.`}`
      : evpi <= 0
        ? `**Choice ${best} is best whatever holds:** ${figure(now)} on average. Knowing would change nothing.`
        : `**Choice ${best} is worth most:** ${figure(now)} on average. To know for certain would be worth ${figure(evpi)}; no test is worth more.`,
  picture: "Expected worth of each choice",
  choice: "Choice",
  name: (choice: number) => whole(choice),
  worth: "Worth, in your unit",
  knowing: "if known",
  label: (rows: Answers["value-of-knowing"]["choices"], knowing: number) =>
    `${rows.map(({ choice, expected }) => `choice ${choice}: ${figure(expected)}`).join("; ")}; if the state were known: ${figure(knowing)}`,
} satisfies MethodWords<Answers["value-of-knowing"]> & Record<string, unknown>;
