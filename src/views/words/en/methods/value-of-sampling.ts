/** Sentences of `value-of-sampling`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { figure } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const valueOfSampling = {
  asks: "What is looking at more bees worth?",
  under: "Before treating or waiting: what a sample saves on average, less what it costs. Prices in one unit, yours.",
  fields: {
    a: {
      label: "Infested bees, as if seen",
      hint: "What you believe now, told as a count; it need not be whole. After a count add a half to both: 0 of 30 is 0.5 and 30.5.",
    },
    b: { label: "Clear bees, as if seen" },
    lossAtFull: {
      label: "Loss by waiting if every bee is infested",
      hint: "With half of the bees infested, half of it: a straight line, not the judged curve of a case.",
    },
    actCost: { label: "Cost of treating" },
    costPerBee: { label: "Cost of looking at one bee" },
    fixedCost: { label: "Cost of a sample, whatever its size" },
    sensitivity: { label: "Of 100 infested bees, found", per: 100 },
    specificity: { label: "Of 100 clear bees, called clear", per: 100 },
    sizes: { label: "Numbers of bees to weigh", hint: "Up to 400 bees." },
  },
  says: ({ best, evpi, lossNow, threshold, priorMean }) => {
    const choice = priorMean > threshold ? "treating" : "waiting";
    const most = `Knowing the share exactly would be worth ${figure(evpi)}; no sample is worth more.`;
    if (best.net <= 0 || best.bees === 0)
      return `**None of these samples pays.** Without one ${choice} loses least on average: ${figure(lossNow)}. ${most}`;
    const acting =
      best.actFrom === null || threshold > 1
        ? ""
        : ` Treat from ${some(best.actFrom, "positive bee", "positive bees")} on.`;
    return `**Of these numbers look at ${some(best.bees, "bee", "bees")}:** that saves ${figure(best.evsi)} on average and ${figure(best.net)} after its cost.${acting} ${most}`;
  },
  picture: "What a sample is worth, by its size",
  pictureUnder: "Averages over many such colonies.",
  bees: "Bees looked at",
  worth: "Worth, in your unit",
  evsi: "Saved on average",
  net: "After the cost of the sample",
  most: (evpi: number) => `knowing exactly: ${figure(evpi)}`,
  best: (bees: number) => `best: ${some(bees, "bee", "bees")}`,
  label: (rows: Answers["value-of-sampling"]["sizes"]) =>
    rows
      .map(({ bees, evsi, net }) => `${some(bees, "bee", "bees")} ${figure(evsi)}, after the cost ${figure(net)}`)
      .join("; "),
} satisfies MethodWords<Answers["value-of-sampling"]> & Record<string, unknown>;
