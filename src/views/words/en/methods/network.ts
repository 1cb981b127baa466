/** Sentences of `network`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const network = {
  asks: "A network of your own: what explains it, what to look at next?",
  under: "For teaching and for checking. Causes and signs are numbered; every chance is yours. It is no diagnosis.",
  fields: {
    priors: { label: "Chance of each cause beforehand, of 100", per: 100 },
    leaks: { label: "Chance of each sign without any cause, of 100", per: 100 },
    links: {
      label: "Of 100 times, a cause brings a sign",
      hint: "One cause a line, one number for each sign.",
      per: 100,
    },
    present: { label: "Signs seen, by number", hint: "The first sign is 1." },
    absent: { label: "Signs looked for and not seen", hint: "What was not looked for stands in neither." },
  },
  says: ({ causes, noCause, next }) => {
    const [top] = [...causes].sort((one, other) => other.after - one.after);
    if (top === undefined) return "";
    const likeliest =
      noCause > top.after
        ? `**Most likely none of the causes: ${hundred(noCause)} in 100.** Next comes cause ${top.cause} with ${hundred(top.after)}`
        : `**Cause ${top.cause} is the likeliest: ${hundred(top.after)} in 100**`;
    const [look] = next;
    const then =
      look === undefined || look.bits < 1e-9
        ? " Nothing that is left to look for would tell more."
        : ` Look for sign ${look.sign} next: it tells ${figure(look.bits)} bits on average.`;
    return `${likeliest}, from ${hundred(top.before)} beforehand.${then}`;
  },
  picture: "Each cause before and after what was seen",
  cause: "Cause",
  chance: "Chance, in 100",
  before: "Before",
  after: "After",
  nextPicture: "What to look for next",
  nextUnder: "Bits that looking for a sign tells on average. 1 bit halves what is open.",
  sign: "Sign",
  bits: "Bits",
  name: (number: number) => whole(number),
  label: (causes: Answers["network"]["causes"]) =>
    causes
      .map(({ cause, before, after }) => `cause ${cause}: ${hundred(before)} before, ${hundred(after)} after, in 100`)
      .join("; "),
  nextLabel: (next: Answers["network"]["next"]) =>
    next.map(({ sign, bits }) => `sign ${sign}: ${figure(bits)} bits`).join("; "),
} satisfies MethodWords<Answers["network"]> & Record<string, unknown>;
