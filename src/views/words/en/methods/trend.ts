/** Sentences of `trend`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { chanceTimes, hundred, mayBeChance } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["trend"];

export const trend = {
  asks: "Does the share rise or fall over years, doses or distances?",
  under: "For bees or colonies that are independent. For the same colonies again and again, ask the next method.",
  fields: {
    groups: {
      label: "Groups in their order",
      hint: "One line: bees with mites, bees read, score. 12 of 200 2024 will do. Without scores they count as 1, 2, 3.",
    },
    level: { label: "Certainty of each range, of 100", per: 100 },
  },
  says: ({ z, pValue, groups }: Answer) => {
    const [first, last] = [groups[0], groups.at(-1)];
    const ends =
      first && last
        ? ` From ${hundred(first.value)} in the first group to ${hundred(last.value)} in 100 in the last.`
        : "";
    const way = z === 0 ? "neither rises nor falls" : z > 0 ? "rises with the score" : "falls with the score";
    const here = z !== 0 && mayBeChance(pValue) ? " here, and it may be chance" : "";
    return `**The share ${way}${here}:** without any trend, chance would give as much ${chanceTimes(pValue)}.${ends}`;
  },
  ranges: "Each group with its range",
  group: (place: number, score: number) => `Group ${place}, score ${String(score).replace("-", "−")}`,
  groups: "Group",
  share: "Bees with mites, of 100",
  label: (rows: readonly { readonly name: string; readonly low: number; readonly high: number }[]) =>
    `Ranges in 100: ${rows.map(({ name, low, high }) => `${name}, ${hundred(low)} to ${hundred(high)}`).join("; ")}`,
} satisfies MethodWords<Answer> & Record<string, unknown>;
