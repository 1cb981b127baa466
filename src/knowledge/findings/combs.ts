/** Findings on the combs. */
import type { FindingFact } from "../fact.ts";

/** What is looked for on the combs. */
export const combsFindings = {
  varroa_on_adults: {
    id: "varroa_on_adults",
    kind: "sign",
    place: "combs",
    group: "mite_adult",
    term: "Varroa seen on bees",
    question: "Varroa seen on bees?",
    lookFor: "Reddish-brown crab-shaped mites are seen on adult bees without washing.",
    tellApart: "Varroa is wider than long and slow; Braula, a harmless wingless fly, has six legs.",
    minutes: 5,
  },
  heads_in_cells: {
    id: "heads_in_cells",
    kind: "sign",
    place: "combs",
    group: "starve",
    term: "Dead bees head-first in cells",
    question: "Dead head-first in cells?",
    lookFor: "Many dead workers are head-first in empty cells.",
    tellApart: "Starved: many dead and no food in reach. Varroa: few dead, food left, bees dead while emerging.",
    minutes: 5,
  },
  mostly_young_bees: {
    id: "mostly_young_bees",
    kind: "sign",
    place: "combs",
    group: "strength",
    term: "Only young bees left",
    question: "Only young bees left?",
    lookFor: "Nearly all remaining adults are downy young bees and foragers are missing.",
    minutes: 5,
  },
  slimed_fermenting_honey: {
    id: "slimed_fermenting_honey",
    kind: "sign",
    place: "combs",
    group: "pest",
    term: "Slimy, fermenting honey",
    question: "Slimy, frothing honey?",
    lookFor: "Honey runs, froths or smells fermented and combs look slimy.",
    minutes: 2,
  },
  beetles_or_spined_larvae: {
    id: "beetles_or_spined_larvae",
    kind: "sign",
    place: "combs",
    group: "pest",
    term: "Small beetles or spined larvae",
    question: "Small beetles or spined larvae?",
    lookFor:
      "Many small dark beetles, or larvae with dorsal spines and three leg pairs near the head, are in combs or debris.",
    tellApart:
      "Beetle larvae have three pairs of legs, spines and slime; moth larvae have soft legs along the body and silk.",
    minutes: 5,
  },
  webbing_tunnels: {
    id: "webbing_tunnels",
    kind: "sign",
    place: "combs",
    group: "pest",
    term: "Webbing and tunnels",
    question: "Webbing in the combs?",
    lookFor: "Silk tunnels, cocoons or frass run through combs.",
    tellApart: "Moth larvae spin silk; beetle larvae leave slime and have spines.",
    minutes: 3,
  },
  gnawed_comb_or_nest: {
    id: "gnawed_comb_or_nest",
    kind: "sign",
    place: "combs",
    group: "pest",
    term: "Gnawed comb or a nest",
    question: "Gnawed comb or a nest?",
    lookFor: "Gnawed comb, a nest, droppings or chewed bees, or a hive broken or knocked by an animal, is found.",
    minutes: 3,
  },
  queen_not_found_no_eggs: {
    id: "queen_not_found_no_eggs",
    kind: "sign",
    place: "combs",
    group: "queen",
    term: "No queen and no eggs",
    question: "No queen and no eggs?",
    lookFor: "After a full search in brood season neither queen nor eggs are found.",
    tellApart: "A brood break is calm with polished cells; a queenless colony roars.",
    onlyWhenNeighboursHaveBrood: true,
    minutes: 20,
  },
  emergency_or_supersedure_cells: {
    id: "emergency_or_supersedure_cells",
    kind: "sign",
    place: "combs",
    group: "queen_cells",
    term: "Queen cells",
    question: "Queen cells?",
    lookFor: "Queen cells (sealed, open or just emerged) are present on worker comb.",
    minutes: 10,
  },
  calm_polished_cells: {
    id: "calm_polished_cells",
    kind: "sign",
    place: "combs",
    group: "queen_state",
    term: "Calm bees, polished cells",
    question: "Calm, with polished cells?",
    lookFor: "Bees are calm, a patch of empty cells is polished, an opened queen cell may hang.",
    tellApart: "A brood break is calm with polished cells; a queenless colony roars.",
    minutes: 5,
  },
} as const satisfies {
  readonly [Id in
    | "varroa_on_adults"
    | "heads_in_cells"
    | "mostly_young_bees"
    | "slimed_fermenting_honey"
    | "beetles_or_spined_larvae"
    | "webbing_tunnels"
    | "gnawed_comb_or_nest"
    | "queen_not_found_no_eggs"
    | "emergency_or_supersedure_cells"
    | "calm_polished_cells"]: FindingFact<Id>;
};
