/** Sentences of `mite-counts`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { whole } from "../numbers.ts";
import { chanceTimes, figure, hundred, mayBeChance } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["mite-counts"];

export const miteCounts = {
  asks: "Mites counted in each bee: how heavy is the load, and do few bees carry it?",
  under: "The share of bees with mites, mites per bee and mites per bee with mites are three answers, not one.",
  fields: {
    counts: {
      label: "Bees by their mites",
      hint: "One line a number of mites: mites in a bee, bees with so many. Clear bees are 0. A line with one number is one bee.",
    },
    mitesPerBee: {
      label: "Or each bee by itself",
      hint: "Mites in each bee, clear bees as 0; the field above stays empty.",
    },
    level: { label: "Certainty of the ranges, of 100", per: 100 },
  },
  says: ({ mites, bees, prevalence, intensity, aggregation, dispersion }: Answer) =>
    `**${figure(mites / bees)} ${mites === bees ? "mite" : "mites"} per bee,** ${figure(mites / (prevalence.value * bees))} per bee with mites${
      intensity === null ? "" : ` (${figure(intensity.low)} to ${figure(intensity.high)})`
    }; ${hundred(prevalence.value)} in 100 bees have mites. ${
      aggregation.byLikelihood === null
        ? "Mites sit no more unevenly than chance gives."
        : `${mayBeChance(dispersion.pValue) ? "Some bees carry more than others, and it may be chance" : "Few bees carry most"}: aggregation k is ${figure(aggregation.byLikelihood)}, and chance alone spreads mites so unevenly ${chanceTimes(dispersion.pValue)}.`
    }`,
  bars: "Bees by their mites, counted and as two laws have them",
  barsUnder: "Counted bees follow the third bars where mites sit at random, the second where few bees carry most.",
  mites: "Mites in a bee",
  bees: "Bees",
  orMore: (mites: number) => `${whole(mites)}+`,
  counted: "Counted",
  uneven: "Negative binomial",
  random: "At random (Poisson)",
  label: (rows: readonly { readonly mites: string; readonly bees: number }[]) =>
    `Bees counted: ${rows.map(({ mites, bees }) => `${mites} ${mites === "1" ? "mite" : "mites"}, ${whole(bees)}`).join("; ")}`,
} satisfies MethodWords<Answer> & Record<string, unknown>;
