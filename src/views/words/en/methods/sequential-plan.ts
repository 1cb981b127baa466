/** Sentences of `sequential-plan`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";
import { planFieldWords, stopsLabel, stopWords, times } from "./sequential-words.ts";

type Answer = Answers["sequential-plan"];

export const sequentialPlan = {
  asks: "When may reading stop, and how sure is the answer?",
  under:
    "Bees are read one after another, and what was found tells when it is enough. It tells low from high; for how many in 100, read a fixed number.",
  fields: planFieldWords,
  says: ({ plan, alpha, beta, atLow, atHigh, fixed, saved }) => {
    const low = `${hundred(plan.lowPrevalence)} in 100`;
    const high = `${hundred(plan.highPrevalence)} in 100`;
    const bees = `**At most ${some(plan.maxBees, "bee", "bees")}; on average ${figure(atLow.averageBees)} at ${low} and ${figure(atHigh.averageBees)} at ${high}.**`;
    const errs = `It calls ${low} high ${times(alpha)}, and ${high} low ${times(beta)}.`;
    const undecided =
      atLow.undecided > 0 || atHigh.undecided > 0
        ? ` It stays undecided ${hundred(atLow.undecided)} and ${times(atHigh.undecided)}.`
        : "";
    return `${bees} ${errs}${undecided} ${besideFixed(fixed, saved)}`;
  },
  ...stopWords,
  stopsLabel,
  prevalence: "Bees infested, of 100",
  saidLow: "How often it says low",
  saidLowUnder: "By how many bees are infested. A steep fall is a plan that tells low from high well.",
  timesLow: "Low, times in 100",
  exact: "This plan, exact",
  wald: "Wald’s approximation: no end, no first look",
  fixed: (bees: number) => `${some(bees, "bee", "bees")}, fixed beforehand`,
  wrong: (chance: number) => `wrong ${times(chance)}`,
  lowLabel: (points: readonly { readonly prevalence: number; readonly low: number }[]) =>
    points.map(({ prevalence, low }) => `at ${hundred(prevalence)} in 100 infested, low ${times(low)}`).join("; "),
  average: "How many bees it takes",
  averageUnder: "On average, by how many bees are infested. Most are read between the two shares.",
  averageBees: "Bees read, on average",
  averageLabel: (points: readonly { readonly prevalence: number; readonly averageBees: number }[]) =>
    points
      .map(({ prevalence, averageBees }) => `at ${hundred(prevalence)} in 100 infested, ${figure(averageBees)} bees`)
      .join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;

function besideFixed(fixed: Answer["fixed"], saved: Answer["saved"]): string {
  if (fixed === null || saved === null) return "No fixed number of up to 10,000 bees keeps the errors asked for.";
  const all = [saved.atLow, saved.atHigh, saved.atWorst];
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const number = `A number fixed beforehand would be ${some(fixed.bees, "bee", "bees")}`;
  return least > 0
    ? `${number}: ${figure(least)} to ${figure(most)} are saved.`
    : `${number}; at some shares this plan reads more than that.`;
}
