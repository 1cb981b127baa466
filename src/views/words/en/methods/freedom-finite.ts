/** Sentences of `freedom-finite`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["freedom-finite"];

export const freedomFinite = {
  asks: "Few apiaries, a good part tested: what would the round have found?",
  under: "Counts exactly that an apiary tested is not drawn again.",
  fields: {
    clusters: { label: "Apiaries in all" },
    infested: { label: "Of these infested", hint: "The fewest that must not be missed." },
    tested: {
      label: "Tested",
      hint: "One line: apiaries, of 100 infested ones so many are found.",
      perOf: { sensitivity: 100 },
    },
  },
  says: ({ sensitivity, approximate, tested }: Answer) =>
    `**The round finds it ${hundred(sensitivity)} times in 100,** with ${some(tested, "apiary", "apiaries")} tested. The textbook shortcut says ${hundred(approximate)}.`,
  curve: "What the round would find, by how many are infested",
  infested: "Apiaries infested",
  found: "Found, times in 100",
  label: (rows: readonly { readonly infested: number; readonly sensitivity: number }[]) =>
    rows
      .map(({ infested, sensitivity }) => `${infested} infested: found ${hundred(sensitivity)} times in 100`)
      .join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
