/** Sentences of `sequential-reading`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";
import { planFieldWords, stopsLabel, stopWords } from "./sequential-words.ts";

type Answer = Answers["sequential-reading"];
type Range = { readonly low: number; readonly high: number };

const between = ({ low, high }: Range): string => `${hundred(low)} to ${hundred(high)} in 100`;

const heads = {
  low: "Low",
  high: "High",
  undecided: "Undecided",
} as const;

export const sequentialReading = {
  asks: "Reading stopped early: what does the sample say?",
  under: "For bees read by a plan that was set before the first one. Type each bee, or the counts at which it stopped.",
  fields: {
    results: {
      label: "Each bee: 1 with mites, 0 without",
      hint: "In the order read, with blanks between. Or leave empty and give the counts at the stop.",
    },
    examined: { label: "Bees read at the stop" },
    positive: { label: "Bees with mites at the stop" },
    allExamined: { label: "All bees read, past the stop too", hint: "Leave empty when reading ended at the stop." },
    allPositive: { label: "Bees with mites among all read" },
    setBeforehand: {
      label: "Number set before the first bee",
      hint: "If so many were to be read whatever was found.",
    },
    ...planFieldWords,
    level: { label: "Certainty of the range, of 100", per: 100 },
  },
  says: (answer) => {
    if (answer.says === "read-on") return readOn(answer);
    const stop = `${answer.positive} with mites of ${some(answer.examined, "bee", "bees")}`;
    const head = `**${heads[answer.says]}: the plan stops at ${stop}.**`;
    return [head, shareOf(answer), pastStop(answer)].filter((each) => each !== "").join(" ");
  },
  ...stopWords,
  stopsLabel,
  stoppedAt: ({ positive, examined }: { readonly positive: number; readonly examined: number }) =>
    `${positive} of ${examined}`,
  ranges: "The share, and what forgetting the stop would make of it",
  share: "Bees infested, of 100",
  method: "Range",
  knows: "Knows of the stop",
  forgets: "Forgets the stop",
  allBees: (holds: boolean) => (holds ? "All bees, as planned" : "All bees, not planned"),
  rangesLabel: (rows: readonly (Range & { readonly name: string })[]) =>
    rows.map((row) => `${row.name}: ${between(row)}`).join("; "),
  coverage: "How often each range would hold the truth",
  coverageUnder: "Exact sums over every stop of the plan.",
  truth: "True share, of 100",
  holds: "Holds it, times in 100",
  wanted: (level: number) => `wanted: ${hundred(level)}`,
  coverageLabel: ({ knows, forgets }: { readonly knows: number; readonly forgets: number }) =>
    `Least often over the shares shown: the range that knows of the stop ${hundred(knows)} times in 100, the one that forgets it ${hundred(forgets)} times in 100`,
} satisfies MethodWords<Answer> & Record<string, unknown>;

function readOn({ examined, positive, ifNoneMore, ifAllMore }: Answer): string {
  const so = `**Read on.** After ${positive} with mites of ${some(examined, "bee", "bees")} neither line is crossed.`;
  const next = (stop: Answer["ifNoneMore"], means: string) =>
    stop === null ? "" : ` ${means}: ${stop.said} at ${some(stop.bees, "bee", "bees")}.`;
  return so + next(ifNoneMore, "If no more is found") + next(ifAllMore, "If every next bee has mites");
}

function shareOf({ positive, examined, estimate, naive }: Answer): string {
  if (estimate === null || naive === null) return "";
  const best = positive === 0 ? `None found in ${examined}; it` : `Best guess ${hundred(estimate.value)} in 100; it`;
  return `${best} could be ${between(estimate)}. A range that forgets the stop would say ${between(naive)}.`;
}

function pastStop({ allBees, allBeesHold }: Answer): string {
  if (allBees === null) return "";
  const range = `All ${some(allBees.n ?? 0, "bee", "bees")} say ${between(allBees)}`;
  return allBeesHold
    ? `${range}, which holds too, as the number was set beforehand.`
    : `${range}, which may hold too rarely.`;
}
