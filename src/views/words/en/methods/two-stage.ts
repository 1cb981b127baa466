/** Sentences of `two-stage`. */
import type { Answers } from "../../../../reasoning/index.ts";
import { list, some, whole } from "../numbers.ts";
import { figure, hundred } from "./amounts.ts";
import type { MethodWords } from "./method-words.ts";

type Answer = Answers["two-stage"];

function costSays({ cost, cheapest, near, chosen }: Answer): string {
  if (cost === null || cheapest === null) return "";
  if (chosen === "given")
    return ` Cost ${figure(cost)}; the cheapest takes ${some(cheapest.beesPerColony, "bee", "bees")} from each of ${whole(cheapest.colonies)} and costs ${figure(cheapest.cost)}.`;
  const others = near.filter((each) => Math.abs(each.beesPerColony - cheapest.beesPerColony) === 1);
  const beside = list(others.map((each) => `${whole(each.beesPerColony)} bees ${figure(each.cost)}`));
  return ` Cost ${figure(cost)}, the least of all${beside === "" ? "" : `; with ${beside}`}.`;
}

export const twoStage = {
  asks: "How many colonies, and how many bees from each?",
  under: "So that an infested yard or region is not missed; with costs, the cheapest way.",
  fields: {
    colonies: { label: "Colonies in all", hint: "Leave empty for very many." },
    colonyPrevalence: {
      label: "Colonies infested, of 100",
      hint: "The smallest share that must not be missed.",
      per: 100,
    },
    beePrevalence: { label: "Bees infested in such a colony, of 100", per: 100 },
    sensitivity: { label: "Of 100 infested bees, found", per: 100 },
    confidence: { label: "Found, times of 100", per: 100 },
    beesPerColony: { label: "Bees from each colony", hint: "Leave empty to look for the cheapest number." },
    costPerColony: { label: "Cost of a colony", hint: "In any unit: the way there, opening it." },
    costPerBee: { label: "Cost of a bee on the bench", hint: "In the same unit." },
    mostBees: { label: "At most so many bees from each" },
  },
  says: (answer) => {
    const { beesPerColony, colonies, bees, colonySensitivity, design } = answer;
    const taken =
      design.colonies === null
        ? some(colonies, "colony", "colonies")
        : `${whole(colonies)} of ${whole(design.colonies)} colonies`;
    return `**${some(beesPerColony, "bee", "bees")} from each of ${taken},** ${whole(bees)} in all. Such a colony is found ${hundred(colonySensitivity)} times in 100.${costSays(answer)}`;
  },
  costs: "What each number of bees would cost",
  costsUnder: "With the fewest colonies that reach the certainty. Up to twice the least cost.",
  bees: "Bees from each colony",
  cost: "Cost",
  least: ({ beesPerColony, cost }: { readonly beesPerColony: number; readonly cost: number }) =>
    `least: ${some(beesPerColony, "bee", "bees")}, ${figure(cost)}`,
  costsLabel: (rows: readonly { readonly beesPerColony: number; readonly cost: number }[]) =>
    `Cost by bees from each colony: ${rows.map(({ beesPerColony, cost }) => `${whole(beesPerColony)}: ${figure(cost)}`).join("; ")}`,
  needed: "How many colonies each number of bees takes",
  colonies: "Colonies",
  taken: (colonies: number) => some(colonies, "colony", "colonies"),
  neededLabel: (rows: readonly { readonly beesPerColony: number; readonly colonies: number }[]) =>
    `Colonies by bees from each: ${rows.map(({ beesPerColony, colonies }) => `${whole(beesPerColony)}: ${whole(colonies)}`).join("; ")}`,
} satisfies MethodWords<Answer> & Record<string, unknown>;
