/** Sentences of `three-way-plan`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { some } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";
import { planFieldWords, times } from "./sequential-words.ts";

type Answer = Answers["three-way-plan"];
type Row = Answer["characteristics"][number];

const { maxBees, minBees, batch, atEnd } = planFieldWords;

export const threeWayPlan = {
  asks: "Light, moderate or severe: when may reading stop?",
  under: "Two plans over the same bees: one tells light from moderate, one moderate from severe.",
  fields: {
    lightShare: { label: "A share to call light, of 100", per: 100 },
    moderateFrom: { label: "Moderate from, of 100", per: 100 },
    moderateTo: { label: "Moderate up to, of 100", per: 100 },
    severeShare: { label: "A share to call severe, of 100", per: 100 },
    alpha: { label: "Called too high, by name, of 100", hint: "What it really is stands in the answer.", per: 100 },
    beta: { label: "Called too low, by name, of 100", per: 100 },
    maxBees,
    minBees,
    batch,
    atEnd: { label: atEnd.label, choices: atEnd.choices },
  },
  says: ({ atShares, atWorst, looks }) => {
    const [light, from, to, severe] = atShares;
    if (!light || !from || !to || !severe) return "";
    const last = looks.at(-1)?.bees ?? 0;
    return [
      `**At most ${some(last, "bee", "bees")}; on average up to ${figure(atWorst.averageBees)}, most at ${hundred(atWorst.prevalence)} in 100 infested.**`,
      `At ${hundred(light.prevalence)} in 100 it says light ${times(light.light)};`,
      `at ${hundred(from.prevalence)} and ${hundred(to.prevalence)}, moderate ${hundred(from.moderate)} and ${times(to.moderate)};`,
      `at ${hundred(severe.prevalence)}, severe ${times(severe.severe)}.`,
    ].join(" ");
  },
  stops: "The counts at which each plan speaks",
  stopsUnder: "Each plan keeps what it said first. Reading ends when both have spoken.",
  bees: "Bees read",
  found: "Bees with mites",
  light: "Light: so many, or fewer",
  notLight: "Not light: so many, or more",
  notSevere: "Not severe: so many, or fewer",
  severe: "Severe: so many, or more",
  stopsLabel: (looks: Answer["looks"]) => {
    const first = (of: "light" | "notLight" | "notSevere" | "severe") => looks.find((each) => each[of] !== null)?.bees;
    const told = [
      ["light", first("light")],
      ["not light", first("notLight")],
      ["not severe", first("notSevere")],
      ["severe", first("severe")],
    ] as const;
    return told
      .map(([name, bees]) =>
        bees === undefined ? `never ${name} before the last bee` : `${name} from ${some(bees, "bee", "bees")}`,
      )
      .join("; ");
  },
  answers: "How often it gives each answer",
  answersUnder: "By how many bees are infested.",
  prevalence: "Bees infested, of 100",
  timesSaid: "Given, times in 100",
  names: { light: "Light", moderate: "Moderate", severe: "Severe", undecided: "Undecided" },
  answersLabel: (rows: readonly Row[]) =>
    rows
      .map(
        ({ prevalence, light, moderate, severe }) =>
          `at ${hundred(prevalence)} in 100 infested, light ${hundred(light)}, moderate ${hundred(moderate)}, severe ${times(severe)}`,
      )
      .join("; "),
  average: "How many bees it takes",
  averageUnder: "On average, by how many bees are infested.",
  averageBees: "Bees read, on average",
  averageLabel: (rows: readonly Row[]) =>
    rows
      .map(({ prevalence, averageBees }) => `at ${hundred(prevalence)} in 100 infested, ${figure(averageBees)} bees`)
      .join("; "),
} satisfies MethodWords<Answer> & Record<string, unknown>;
