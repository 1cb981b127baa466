/** Sentences of `smooth-rates`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["smooth-rates"];

export const smoothRates = {
  asks: "Rates of small areas: what is left when chance is taken off?",
  under: "Few colonies give wild rates. Each is drawn towards the mean, the more the fewer its colonies.",
  fields: {
    areas: {
      label: "Areas",
      hint: "One line an area: cases, colonies at risk. A third number is the cases expected by another standard; give it for all or none.",
    },
    neighbours: {
      label: "Areas that touch",
      hint: "One line a pair: 1 2 says that areas 1 and 2 touch. Leave empty for none.",
    },
  },
  says: ({ mean, areas, variance, excessVariance }: Answer) => {
    const highest = [...areas].sort((a, b) => b.global - a.global)[0];
    if (excessVariance <= 0 || highest === undefined)
      return `**The ${whole(areas.length)} areas differ no more than chance gives:** one rate for all, ${hundred(mean)} in 100, is the best guess.`;
    return `**${hundred(mean)} in 100 over all.** Chance explains ${hundred((variance - excessVariance) / variance)} in 100 of the spread between areas. Highest after smoothing: area ${highest.area}, ${hundred(highest.global)} in 100 (found ${hundred(highest.rate)}).`;
  },
  rates: "Rates found and smoothed",
  ratesUnder: "Towards the mean of all areas; towards that of an area with its neighbours where they are given.",
  ranked: "Rates found and smoothed, areas from lowest to highest",
  risks: "Cases against cases expected",
  risksUnder: "1 is as many as expected. Clayton and Kaldor’s fit by likelihood and by moments.",
  area: "Area",
  place: "Area, by its rate found",
  cases: "Cases, of 100 colonies",
  found: "Found",
  global: "Towards all",
  local: "Towards its neighbours",
  times: "Times as many as expected",
  byLikelihood: "By likelihood",
  byMoments: "By moments",
  mean: (mean: number) => `all: ${hundred(mean)}`,
  label: (areas: readonly { readonly area: number; readonly rate: number; readonly global: number }[]) =>
    areas
      .map(({ area, rate, global }) => `area ${area}: found ${hundred(rate)}, smoothed ${hundred(global)} in 100`)
      .join("; "),
  risksLabel: (areas: readonly { readonly area: number; readonly relativeRisk: number }[]) =>
    areas.map(({ area, relativeRisk }) => `area ${area}: ${figure(relativeRisk)} times as many as expected`).join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
