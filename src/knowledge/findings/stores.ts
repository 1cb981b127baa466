/** Findings in the stores. */
import type { FindingFact } from "../fact.ts";

/** What is looked for in the stores. */
export const storesFindings = {
  stores_exhausted: {
    id: "stores_exhausted",
    kind: "sign",
    place: "stores",
    group: "stores",
    term: "No food left",
    question: "No food left?",
    lookFor: "Less than about 1 kg (2 lb) of food is left, or none within 5 cm (2 inches) of the cluster.",
    tellApart: "Starved: many dead and no food in reach. Varroa: few dead, food left, bees dead while emerging.",
    exclusiveWith: "stores_ample",
    minutes: 3,
  },
  stores_ample: {
    id: "stores_ample",
    kind: "sign",
    place: "stores",
    group: "stores",
    term: "Plenty of food",
    question: "Plenty of food in reach?",
    lookFor: "Five kilograms (11 lb) or more of capped honey touches the cluster, with no empty comb between.",
    exclusiveWith: "stores_exhausted",
    minutes: 3,
  },
  no_bee_bread: {
    id: "no_bee_bread",
    kind: "sign",
    place: "stores",
    group: "stores_pollen",
    term: "No stored pollen",
    question: "No stored pollen?",
    lookFor: "No cells of stored pollen are found at a date when brood is or should be reared.",
    minutes: 5,
  },
  stores_low: {
    id: "stores_low",
    kind: "sign",
    place: "stores",
    group: "stores",
    term: "Low stores",
    question: "Low stores?",
    lookFor: "About 1–5 kg (2–11 lb) is left while brood is reared.",
    minutes: 3,
  },
} as const satisfies {
  readonly [Id in "stores_exhausted" | "stores_ample" | "no_bee_bread" | "stores_low"]: FindingFact<Id>;
};
