/** Findings in the brood. */
import type { FindingFact } from "../fact.ts";

/** What is looked for in the brood. */
export const broodFindings = {
  fast_small_mites: {
    id: "fast_small_mites",
    kind: "sign",
    place: "brood",
    group: "mite_adult",
    term: "Fast, slim mites",
    question: "Fast, slim mites?",
    lookFor:
      "Small long mites about a third the size of varroa run quickly over brood combs or fall when a brood comb is bumped.",
    tellApart: "Varroa is wider than long and slow; Tropilaelaps is under 1 mm, longer than wide and fast.",
    minutes: 8,
  },
  spotty_brood: {
    id: "spotty_brood",
    kind: "sign",
    place: "brood",
    group: "brood_pattern",
    term: "Spotty brood",
    question: "Spotty brood?",
    lookFor: "In a patch of sealed brood of one age more than about a fifth of the cells are empty or of other ages.",
    minutes: 5,
  },
  sunken_perforated_caps: {
    id: "sunken_perforated_caps",
    kind: "sign",
    place: "brood",
    group: "brood_caps",
    term: "Sunken or pierced cappings",
    question: "Sunken or pierced cappings?",
    lookFor: "Several brood cappings are sunken, dark, greasy or raggedly perforated.",
    tellApart: "Sound cappings are dry and lightly domed; a smooth round hole may be a capping still being built.",
    minutes: 5,
  },
  ropy_thread: {
    id: "ropy_thread",
    kind: "sign",
    place: "brood",
    group: "brood_afb",
    term: "Ropy thread from a dead larva",
    question: "Does it rope?",
    lookFor: "A matchstick drawn from a dead sealed larva pulls a brown thread of about 2 cm (3/4 inch) or more.",
    tellApart: "American foulbrood kills sealed brood and ropes; European foulbrood twists open larvae and does not.",
    minutes: 5,
  },
  hard_flat_scale: {
    id: "hard_flat_scale",
    kind: "sign",
    place: "brood",
    group: "brood_afb",
    term: "Hard scale stuck in the cell",
    question: "Hard scale stuck in cells?",
    lookFor: "A dark dried scale lies along the lower cell wall and cannot be lifted out without tearing the wax.",
    tellApart:
      "American foulbrood scale is glued to the lower wall; a mummy rattles; European foulbrood scale lifts out.",
    minutes: 5,
  },
  twisted_discoloured_larva: {
    id: "twisted_discoloured_larva",
    kind: "sign",
    place: "brood",
    group: "brood_open",
    term: "Twisted, discoloured larvae",
    question: "Twisted, yellow-brown larvae?",
    lookFor: "Unsealed larvae are yellow to brown, twisted, flattened or melted in the cell.",
    tellApart:
      "European foulbrood twists open larvae and does not rope; American foulbrood kills sealed brood and ropes.",
    minutes: 5,
  },
  grey_slumped_larva: {
    id: "grey_slumped_larva",
    kind: "sign",
    place: "brood",
    group: "brood_open",
    term: "Grey, slumped larvae",
    question: "Grey, slumped larvae?",
    lookFor: "Dead larvae of mixed ages are white-grey, slumped like mucus on the cell wall, and do not rope.",
    tellApart: "Larvae dead of mites and viruses are of mixed ages, with mites and white deposits.",
    minutes: 5,
  },
  sac_larva: {
    id: "sac_larva",
    kind: "sign",
    place: "brood",
    group: "brood_sac",
    term: "Larva in a sac",
    question: "Larva lifts out as a sac?",
    lookFor:
      "A dead larva lies on its back in a capped cell as a sac of fluid with a dark raised head and lifts out whole.",
    tellApart: "A sacbrood larva lifts out whole.",
    minutes: 5,
  },
  chalk_mummies: {
    id: "chalk_mummies",
    kind: "sign",
    place: "brood",
    group: "brood_fungus",
    term: "Chalky mummies",
    question: "Chalky mummies?",
    lookFor:
      "Hard white, grey or black mummified larvae lie in cells, on the floor or at the entrance and rattle in the comb.",
    tellApart: "Chalkbrood crumbles; stonebrood is stone-hard and green; a mouldy pollen plug is layered and coloured.",
    minutes: 5,
  },
  green_hard_mummies: {
    id: "green_hard_mummies",
    kind: "sign",
    place: "brood",
    group: "brood_fungus",
    term: "Green, stone-hard mummies",
    question: "Green, stone-hard mummies?",
    lookFor: "Stone-hard larvae or adults carry yellow-green powdery growth.",
    tellApart: "Chalkbrood crumbles; stonebrood is stone-hard and green. Do not crush it.",
    minutes: 5,
  },
  chewed_or_bald_pupae: {
    id: "chewed_or_bald_pupae",
    kind: "sign",
    place: "brood",
    group: "brood_pupae",
    term: "Chewed or uncapped pupae",
    question: "Chewed or uncapped pupae?",
    lookFor: "Pupae with opened cells, or partly chewed white pupae, are seen (not in one straight tunnel line).",
    tellApart: "Uncapped brood in a line is moth; scattered, it is bees cleaning out mites.",
    minutes: 5,
  },
  dead_emerging: {
    id: "dead_emerging",
    kind: "sign",
    place: "brood",
    group: "brood_pupae",
    term: "Bees dead while emerging",
    question: "Bees dead while emerging?",
    lookFor: "Several fully formed workers died while emerging, head out of the cell.",
    tellApart: "Varroa: few dead, food left, bees dead while emerging. Starved: many dead and no food in reach.",
    minutes: 5,
  },
  white_cell_deposits: {
    id: "white_cell_deposits",
    kind: "sign",
    place: "brood",
    group: "brood_pupae",
    term: "White specks in brood cells",
    question: "White specks in brood cells?",
    lookFor: "White salt-like specks stick to the ceilings or walls of brood cells.",
    minutes: 5,
  },
  brood_dead_at_edge: {
    id: "brood_dead_at_edge",
    kind: "sign",
    place: "brood",
    group: "brood_chill",
    term: "Brood dead at the edge",
    question: "Brood dead at the edge?",
    lookFor: "Dead brood of all ages is confined to the edge or lower part of the brood nest.",
    minutes: 5,
  },
  excess_brood_for_bees: {
    id: "excess_brood_for_bees",
    kind: "sign",
    place: "brood",
    group: "brood_ratio",
    term: "More brood than bees can cover",
    question: "More brood than bees?",
    lookFor: "There is clearly more brood than the remaining adults can cover.",
    minutes: 5,
  },
  dry_larvae: {
    id: "dry_larvae",
    kind: "sign",
    place: "brood",
    group: "brood_feed",
    term: "Larvae without food",
    question: "Dry, unfed larvae?",
    lookFor: "Young larvae lie without visible brood food, or eggs and larvae are being eaten.",
    minutes: 5,
  },
  no_brood_in_season: {
    id: "no_brood_in_season",
    kind: "sign",
    place: "brood",
    group: "queen",
    term: "No brood in brood season",
    question: "No brood in brood season?",
    lookFor: "No eggs, larvae or sealed worker brood are found at a date when like colonies have brood.",
    onlyWhenNeighboursHaveBrood: true,
    minutes: 10,
  },
  drone_brood_in_worker_cells: {
    id: "drone_brood_in_worker_cells",
    kind: "sign",
    place: "brood",
    group: "queen",
    term: "Drone brood in worker cells",
    question: "Drone brood in worker cells?",
    lookFor: "Domed drone cappings stand scattered in worker-size cells.",
    tellApart: "Laying workers leave several eggs on walls; a drone-laying queen leaves single eggs at the base.",
    minutes: 5,
  },
  multiple_eggs_per_cell: {
    id: "multiple_eggs_per_cell",
    kind: "sign",
    place: "brood",
    group: "queen",
    term: "Several eggs in a cell",
    question: "Several eggs in a cell?",
    lookFor: "Many cells hold two or more eggs, or eggs stuck on the cell side.",
    tellApart: "Laying workers leave several eggs on walls; a drone-laying queen leaves single eggs at the base.",
    minutes: 5,
  },
  normal_eggs_and_queen: {
    id: "normal_eggs_and_queen",
    kind: "sign",
    place: "brood",
    group: "queen",
    term: "Queen laying well",
    question: "Single eggs in a compact patch, or a laying queen?",
    lookFor: "Single eggs at the cell base in a compact patch, or a laying queen, are seen.",
    ofHealth: true,
    minutes: 10,
  },
  sealed_brood_only: {
    id: "sealed_brood_only",
    kind: "sign",
    place: "brood",
    group: "queen",
    term: "Only sealed brood",
    question: "Only sealed brood?",
    lookFor: "Sealed worker brood is present but no eggs and no open larvae.",
    minutes: 10,
  },
  brood_nest_filled: {
    id: "brood_nest_filled",
    kind: "sign",
    place: "brood",
    group: "brood_ratio",
    term: "Brood nest filled with food",
    question: "Brood nest filled with food?",
    lookFor: "Nectar, syrup or pollen leaves almost no empty cells in the brood nest.",
    minutes: 5,
  },
} as const satisfies {
  readonly [Id in
    | "fast_small_mites"
    | "spotty_brood"
    | "sunken_perforated_caps"
    | "ropy_thread"
    | "hard_flat_scale"
    | "twisted_discoloured_larva"
    | "grey_slumped_larva"
    | "sac_larva"
    | "chalk_mummies"
    | "green_hard_mummies"
    | "chewed_or_bald_pupae"
    | "dead_emerging"
    | "white_cell_deposits"
    | "brood_dead_at_edge"
    | "excess_brood_for_bees"
    | "dry_larvae"
    | "no_brood_in_season"
    | "drone_brood_in_worker_cells"
    | "multiple_eggs_per_cell"
    | "normal_eggs_and_queen"
    | "sealed_brood_only"
    | "brood_nest_filled"]: FindingFact<Id>;
};
