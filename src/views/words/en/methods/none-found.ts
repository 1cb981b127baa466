/** Sentences of `none-found`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const noneFound = {
  asks: "None found: how many could there still be?",
  under: "A zero is never “none”: it is none found in so many.",
  fields: {
    examined: { label: "Looked at, none positive", hint: "Bees, or colonies." },
    sensitivity: {
      label: "Of 100 infested, found",
      hint: "100: a perfect eye. Empty: nothing is corrected.",
      per: 100,
    },
    level: { label: "Certainty of the limit, of 100", per: 100 },
    population: { label: "How many there are in all", hint: "Leave empty for a large colony." },
  },
  says: ({ oneSided: { high, n, level }, ofCounted }) => {
    const found = `**None found in ${whole(n ?? 0)}.**`;
    if (ofCounted === null)
      return high < 1
        ? `${found} There could still be up to **${hundred(high)} in 100** infested: a one-sided limit that holds ${hundred(level)} times in 100.`
        : `${found} That rules nothing out.`;
    const { infested, population, cannonRoe } = ofCounted;
    return `${found} Of ${whole(population)} in all, up to **${whole(infested)}** could still be infested. Cannon and Roe’s shortcut gives ${figure(cannonRoe)}, an approximation.`;
  },
  limits: "The most that could still be infested, exactly and by shortcut",
  limitsUnder: (corrected: boolean) =>
    corrected
      ? "For a large group. The shortcuts and Jeffreys’s limit know nothing of what the bench misses."
      : "For a large group. Report an exact one; the shortcuts are for the head.",
  rows: {
    oneSided: "Exact, one side",
    twoSided: "Exact, of two sides",
    jeffreys: "Jeffreys, credible",
    logShortcut: "Shortcut: −ln(1 − level) / n",
    ruleOfThree: "Shortcut: 3 / n",
  },
  limit: "Limit",
  infested: "Infested, of 100",
  limitsLabel: (rows: readonly { readonly name: string; readonly high: number }[]) =>
    `Upper limits in 100: ${rows.map(({ name, high }) => `${name} ${hundred(high)}`).join("; ")}`,
} satisfies MethodWords<Answers["none-found"]> & Record<string, unknown>;
