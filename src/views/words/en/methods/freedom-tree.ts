/** Sentences of `freedom-tree`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["freedom-tree"];

export const freedomTree = {
  asks: "One round over groups of different risk: what would it have found?",
  under: "For many apiaries. Where a good part of few was tested, ask the method after this one.",
  fields: {
    clusterPrevalence: { label: "Apiaries infested, of 100", hint: "The least that must not be missed.", per: 100 },
    unitPrevalence: { label: "In such an apiary, colonies infested, of 100", per: 100 },
    strata: {
      label: "Groups of risk",
      hint: "One line a group: relative risk, of 100 apiaries so many are in it (all make 100).",
      perOf: { share: 100 },
    },
    clusters: {
      label: "Tested",
      hint: "One line: group (1, 2, …), apiaries, colonies tested in each, of 100 infested ones so many are found.",
      perOf: { sensitivity: 100 },
    },
  },
  says: ({ sensitivity, groups }: Answer) => {
    const tested = groups.reduce((sum, each) => sum + each.tested, 0);
    return `**The round finds it ${hundred(sensitivity)} times in 100,** with ${some(tested, "apiary", "apiaries")} tested. ${groups
      .map((each) => `Group ${each.stratum} alone: ${hundred(each.sensitivity)}.`)
      .join(" ")}`;
  },
  bars: "What each group and all together would find",
  barsUnder: "Times in 100 that at least one would be found if the region were infested.",
  found: "Found, times in 100",
  group: (group: number) => `Group ${group}`,
  all: "All",
  groups: "Groups of risk",
  label: (rows: readonly { readonly name: string; readonly sensitivity: number }[]) =>
    rows.map(({ name, sensitivity }) => `${name}: found ${hundred(sensitivity)} times in 100`).join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
