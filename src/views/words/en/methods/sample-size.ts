/** Sentences of `sample-size`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some, whole } from "../numbers.ts";
import { hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

export const sampleSize = {
  asks: "How many bees, so that an infestation is not missed?",
  under: "Looks for any at all. To tell how many in 100, ask for a margin instead.",
  fields: {
    designPrevalence: {
      label: "Bees infested, of 100",
      hint: "The smallest share that must not be missed.",
      per: 100,
    },
    confidence: { label: "Found, times of 100", per: 100 },
    sensitivity: {
      label: "Of 100 infested bees, found",
      hint: "100: a perfect eye. Judged 90 to 95 for a trained one.",
      per: 100,
    },
    population: { label: "Bees or colonies in all", hint: "Leave empty for a large colony." },
  },
  says: ({ bees, detectionProbability, infested, design, approximations }) => {
    if (design.population === null || infested === null)
      return `**${some(bees, "bee", "bees")}** find ${hundred(design.designPrevalence)} in 100 infested ${hundred(detectionProbability)} times in 100.`;
    const exact = `**${whole(bees)} of ${whole(design.population)}** find at least one of ${whole(infested)} infested ${hundred(detectionProbability)} times in 100.`;
    if (approximations === null) return exact;
    const { cannonRoe, macDiarmid } = approximations;
    return `${exact} By approximation: ${whole(macDiarmid)} (MacDiarmid), ${whole(cannonRoe)} (Cannon and Roe, for a perfect eye).`;
  },
  couldMiss: "What this number could still miss",
  couldMissUnder: "Times in 100 that none would be found, by how many are infested.",
  atDesign: ({ missed }: { readonly missed: number }) => `missed ${hundred(missed)} times in 100`,
  infested: "Infested, of 100",
  missed: "Missed, times in 100",
  label: ({
    bees,
    points,
  }: {
    readonly bees: number;
    readonly points: readonly { readonly prevalence: number; readonly missed: number }[];
  }) =>
    `${some(bees, "bee", "bees")}: ${points.map((each) => `at ${hundred(each.prevalence)} in 100 infested, none found ${hundred(each.missed)} times in 100`).join("; ")}`,
} satisfies MethodWords<Answers["sample-size"]> & Record<string, unknown>;
