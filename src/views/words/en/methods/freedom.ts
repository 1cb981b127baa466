/** Sentences of `freedom`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["freedom"];

const readingNames = {
  "first-round": "At the first round",
  "period-before": "In the period before it",
} as const;

export const freedom = {
  asks: "Round after round none found: how sure is it that the apiary or region is free?",
  under: "Free means: not infested at the level the rounds were made for. Between rounds infestation can come in.",
  fields: {
    priorFree: { label: "Free before any round, times of 100", hint: "50: nothing is known yet.", per: 100 },
    sensitivities: {
      label: "Each round would find it, times of 100",
      hint: "One number for each round; one alone, with the number of rounds below, for rounds alike. “A round in a counted group” reckons it.",
      per: 100,
    },
    times: { label: "Times the list is gone through", hint: "12 with one number above: twelve rounds alike." },
    introduction: { label: "Comes in between rounds, times of 100", per: 100 },
    priorAt: {
      label: "The first chance holds",
      hint: "In the period before: what came in since is taken off before round 1 too.",
      choices: readingNames,
    },
    target: { label: "Wanted: free, times of 100", per: 100 },
  },
  says: ({ probabilityFree, rounds, reachedAt, target, settles, otherReading, inOneRound }: Answer) =>
    [
      `**Free ${hundred(probabilityFree)} times in 100 after ${some(rounds.length, "round", "rounds")} of none found.**`,
      reachedAt === null
        ? `No round reaches ${hundred(target)}.`
        : `Round ${reachedAt} is the first to reach ${hundred(target)}.`,
      inOneRound.sensitivityNeeded === 0
        ? ""
        : inOneRound.sensitivityNeeded >= 1
          ? "No single round could reach that."
          : `One round alone would have to find it ${hundred(inOneRound.sensitivityNeeded)} times in 100 to reach that.`,
      settles === null ? "" : `Rounds like the last one lead to ${hundred(settles.after)} in the end.`,
      hundred(otherReading.probabilityFree) === hundred(probabilityFree)
        ? "The other reading of the first chance changes nothing that shows."
        : `With the first chance read ${otherReading.priorAt === "first-round" ? "at the first round" : "in the period before it"}: ${hundred(otherReading.probabilityFree)}.`,
    ]
      .filter((each) => each !== "")
      .join(" "),
  curve: "Free, round by round",
  curveUnder: "It rises with each round of none found, and falls by what may come in until the next.",
  round: "Round",
  free: "Free, times in 100",
  after: "After the round",
  before: "Before the round",
  target: (target: number) => `Wanted: ${hundred(target)}`,
  label: (rounds: readonly { readonly round: number; readonly after: number }[]) =>
    rounds.map(({ round, after }) => `round ${round}: ${hundred(after)} in 100`).join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
