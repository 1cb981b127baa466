/** What the methods of sequential reading say alike: the fields of a plan, the words of its pictures. */
import { some } from "../numbers.ts";
import { hundred } from "./amounts.ts";

export const planFieldWords = {
  lowPrevalence: { label: "A share to call low, of 100", per: 100 },
  highPrevalence: { label: "A share to call high, of 100", per: 100 },
  alpha: { label: "Called high at the low share, of 100", hint: "At most so often.", per: 100 },
  beta: { label: "Called low at the high share, of 100", hint: "At most so often.", per: 100 },
  maxBees: { label: "Most bees to read" },
  minBees: {
    label: "Fewest bees before a stop",
    hint: "From 1 on, two early finds may end the reading. 20 is judged sensible; no source.",
  },
  batch: { label: "Bees between two looks" },
  errors: {
    label: "How the two errors are kept",
    hint: "Lines taken as they are may err more, or less, than their name says.",
    choices: { actual: "exactly, with fewest bees", nominal: "by name: Wald’s lines" },
  },
  atEnd: {
    label: "At the last bee",
    hint: "For Wald’s lines only.",
    choices: { midline: "by the line between", undecided: "undecided" },
  },
  lowUpTo: {
    label: "Or low at the last bee with up to",
    hint: "For Wald’s lines only. Leave empty for the line between.",
  },
} as const;

/** Words of the picture of the stops. */
export const stopWords = {
  stops: "The counts that end the reading",
  bees: "Bees read",
  found: "Bees with mites",
  low: "Low: so many with mites, or fewer",
  high: "High: so many with mites, or more",
  belowLine: "Below Wald’s low line",
  aboveLine: "Above Wald’s high line",
  path: "This sample",
  lastBee: (upTo: number) => `last bee: low up to ${upTo}`,
  lastBeeOpen: "last bee: undecided between",
};

export interface LookAsked {
  readonly bees: number;
  readonly low: number | null;
  readonly high: number | null;
}

/** What the picture of the stops shows. */
export function stopsLabel(looks: readonly LookAsked[]): string {
  const low = looks.find((each) => each.low !== null);
  const high = looks.find((each) => each.high !== null);
  return [
    `Looks: ${looks.length}`,
    low ? `low first at ${some(low.bees, "bee", "bees")} with ${low.low} or fewer` : "never low before the last bee",
    high
      ? `high first at ${some(high.bees, "bee", "bees")} with ${high.high} or more`
      : "never high before the last bee",
  ].join("; ");
}

/** Times in 100. */
export const times = (chance: number): string => `${hundred(chance)} times in 100`;
