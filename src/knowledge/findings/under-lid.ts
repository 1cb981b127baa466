/** Findings under the lid. */
import type { FindingFact } from "../fact.ts";

/** What is looked for under the lid. */
export const underLidFindings = {
  few_dead_depopulated: {
    id: "few_dead_depopulated",
    kind: "sign",
    place: "under-lid",
    group: "mortality",
    term: "Bees gone, few dead",
    question: "Bees gone, few dead?",
    lookFor: "Most adult bees are gone while dead bees in and around the hive number far fewer than those missing.",
    minutes: 5,
  },
  loose_cluster: {
    id: "loose_cluster",
    kind: "sign",
    place: "under-lid",
    group: "cluster",
    term: "Loose, scattered cluster",
    question: "Scattered cluster in the cold?",
    lookFor: "In cold weather bees fail to form one tight cluster and sit in scattered patches.",
    minutes: 3,
  },
  small_cluster: {
    id: "small_cluster",
    kind: "sign",
    place: "under-lid",
    group: "cluster",
    term: "Very small cluster",
    question: "Cluster smaller than a softball?",
    lookFor: "The live or dead winter cluster is smaller than about 10 cm (4 inches) across (a softball).",
    minutes: 3,
  },
  weak_for_season: {
    id: "weak_for_season",
    kind: "sign",
    place: "under-lid",
    group: "strength",
    term: "Weak for the season",
    question: "Weak for the season?",
    lookFor: "There are clearly fewer adult bees than in like colonies for the date (by about half or more).",
    minutes: 5,
  },
  dead_pile_floor: {
    id: "dead_pile_floor",
    kind: "sign",
    place: "under-lid",
    group: "mortality",
    term: "Dead bees piled on the floor",
    question: "Dead pile on the floor?",
    lookFor:
      "More than about a thousand dead workers have fallen on the floor since it was last cleaned (a winter loss of 125 a day is ordinary for a large colony).",
    tellApart: "Starved: many dead and no food in reach. Varroa: few dead, food left, bees dead while emerging.",
    minutes: 5,
  },
  foul_odour: {
    id: "foul_odour",
    kind: "sign",
    place: "under-lid",
    group: "brood_odour",
    term: "Bad smell",
    question: "Bad smell?",
    lookFor: "The open brood nest smells of glue, rot, sour or ferment before any comb is lifted close.",
    minutes: 1,
  },
  faeces_inside: {
    id: "faeces_inside",
    kind: "sign",
    place: "under-lid",
    group: "faeces",
    term: "Droppings inside",
    question: "Droppings inside?",
    lookFor: "Smears of droppings are on combs, top bars or inner cover.",
    tellApart: "Spots after a long time shut in prove nothing; spores under the microscope do.",
    minutes: 2,
  },
  wet_mould: {
    id: "wet_mould",
    kind: "sign",
    place: "under-lid",
    group: "damp",
    term: "Wet or mouldy inside",
    question: "Wet or mouldy inside?",
    lookFor: "Combs or walls are wet or mouldy, or condensed water stands on the floor or under the lid.",
    tellApart: "Mould also grows after death from any cause.",
    minutes: 2,
  },
  roar_agitated: {
    id: "roar_agitated",
    kind: "sign",
    place: "under-lid",
    group: "queen_state",
    term: "Roaring, restless bees",
    question: "Roar when opened?",
    lookFor: "Bees roar and run when the lid is lifted.",
    tellApart: "A queenless colony roars; in a brood break the bees are calm and the cells polished.",
    minutes: 1,
  },
} as const satisfies {
  readonly [Id in
    | "few_dead_depopulated"
    | "loose_cluster"
    | "small_cluster"
    | "weak_for_season"
    | "dead_pile_floor"
    | "foul_odour"
    | "faeces_inside"
    | "wet_mould"
    | "roar_agitated"]: FindingFact<Id>;
};
