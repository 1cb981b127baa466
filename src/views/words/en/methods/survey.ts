/** Sentences of `survey`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { whole } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const survey = {
  asks: "How many to test, when the test errs both ways?",
  under: "And from how many positive on the group is called infested. Without false positives, ask how many bees.",
  fields: {
    designPrevalence: { label: "Infested, of 100", hint: "The smallest share that must not be missed.", per: 100 },
    sensitivity: { label: "Of 100 infested, found", per: 100 },
    specificity: { label: "Of 100 clean, cleared", per: 100 },
    population: { label: "How many there are in all", hint: "Leave empty for a large group." },
    missAllowed: { label: "May miss it, times in 100", per: 100 },
    falseAlarmAllowed: { label: "May raise a false alarm, times in 100", per: 100 },
    examined: { label: "Tested, when that is settled", hint: "Leave empty to look for the smallest number." },
    callInfestedFrom: { label: "Called infested from so many positive", hint: "With the number tested." },
  },
  says: ({ examined, callInfestedFrom, readAsNoneUpTo, finds, falseAlarm, infested, design }) => {
    const there =
      infested === null || design.population === null
        ? `${hundred(design.designPrevalence)} in 100`
        : `${whole(infested)} of ${whole(design.population)}`;
    return `**Test ${whole(examined)}. Called infested from ${whole(callInfestedFrom)} positive on,** still read as free up to ${whole(readAsNoneUpTo)}. That finds ${there} infested ${hundred(finds)} times in 100, and raises a false alarm ${hundred(falseAlarm)} times in 100.`;
  },
  cutPoints: (examined: number) => `What other cut-points would do, ${whole(examined)} tested`,
  cutPointsUnder: "A lower one misses less and raises more false alarms.",
  from: "Called infested from so many positive",
  times: "Times in 100",
  missed: "Missed",
  falseAlarm: "False alarm",
  chosen: (from: number) => `from ${whole(from)}`,
  cutPointsLabel: (
    rows: readonly { readonly callInfestedFrom: number; readonly missed: number; readonly falseAlarm: number }[],
  ) =>
    rows
      .map(
        ({ callInfestedFrom, missed, falseAlarm }) =>
          `from ${whole(callInfestedFrom)}: missed ${hundred(missed)}, false alarm ${hundred(falseAlarm)} times in 100`,
      )
      .join("; "),
} satisfies MethodWords<Answers["survey"]> & Record<string, unknown>;
