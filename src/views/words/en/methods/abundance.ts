/** Sentences of `abundance`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["abundance"];

export const abundance = {
  asks: "From mites per bee to bees with mites, and back",
  under: "One mean fits many shares: it depends on how far mites crowd on few bees.",
  fields: {
    mean: { label: "Mites per bee", hint: "Clear bees are counted. Or leave empty and give the next." },
    prevalence: { label: "Bees with mites, of 100", hint: "In place of mites per bee.", per: 100 },
    k: { label: "Aggregation k", hint: "The smaller, the fewer bees carry the mites. Leave empty: mites at random." },
  },
  says: ({ mean, prevalence, intensity, prevalenceAtRandom, k }: Answer) =>
    `**${figure(mean)} mites per bee, ${hundred(prevalence)} in 100 bees with mites,** ${figure(intensity)} mites in each of those.${
      k === null ? "" : ` At random, as many mites would sit on ${hundred(prevalenceAtRandom)} in 100.`
    }`,
  curve: "Bees with mites by mites per bee",
  curveUnder: "The dashed line is the most that a mean allows: mites at random.",
  mean: "Mites per bee",
  share: "Bees with mites, of 100",
  uneven: (k: number) => `Aggregation k ${figure(k)}`,
  random: "At random",
  here: (share: number) => `${hundred(share)} in 100`,
  label: (points: readonly { readonly mean: number; readonly prevalence: number }[]) =>
    points.map(({ mean, prevalence }) => `${figure(mean)} mites per bee: ${hundred(prevalence)} in 100`).join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
