/** Findings on the ground in front of the hive. */
import type { FindingFact } from "../fact.ts";

/** What is looked for on the ground in front of the hive. */
export const groundFindings = {
  crawlers: {
    id: "crawlers",
    kind: "sign",
    place: "ground",
    group: "locomotion",
    term: "Crawling bees",
    question: "Crawling bees?",
    lookFor:
      "In flight weather twenty or more live adult workers (count drones apart) crawl, hop or cling to grass in front of the hive and cannot take off, also after warming.",
    tellApart: "Chilled bees fly when warmed; drones have eyes that meet and no sting.",
    minutes: 5,
  },
  k_wing: {
    id: "k_wing",
    kind: "sign",
    place: "ground",
    group: "locomotion",
    term: "K-wing",
    question: "Wings held like a K?",
    lookFor:
      "On several live bees the hind wing sits unhooked in front of or above the fore wing so the pair stands out like a letter K.",
    tellApart:
      "A K-wing is a full-sized smooth wing come unhooked; a deformed wing is crumpled or stubby from birth. Score it only on live, warm bees: cold or poisoned bees hold their wings out too.",
    minutes: 5,
  },
  trembling: {
    id: "trembling",
    kind: "sign",
    place: "ground",
    group: "nervous",
    term: "Trembling bees",
    question: "Trembling bees?",
    lookFor: "Bees shiver or tremble with body or wings while standing, without cold explaining it.",
    tellApart: "Paralysed black bees tremble and cannot fly; robbers fly well; old bees have ragged wings.",
    minutes: 5,
  },
  spinning_uncoordinated: {
    id: "spinning_uncoordinated",
    kind: "sign",
    place: "ground",
    group: "nervous",
    term: "Spinning or stumbling bees",
    question: "Spinning or stumbling?",
    lookFor: "Bees spin on the back, stumble, convulse or lose righting ability.",
    minutes: 5,
  },
  hairless_black: {
    id: "hairless_black",
    kind: "sign",
    place: "ground",
    group: "adult_skin",
    term: "Black, shiny bees",
    question: "Black, shiny bees?",
    lookFor: "Bees look small, black, shiny or greasy through loss of body hair.",
    tellApart: "Paralysed black bees tremble and cannot fly; robbers fly well; old bees have ragged wings.",
    minutes: 5,
  },
  bloated_abdomen: {
    id: "bloated_abdomen",
    kind: "sign",
    place: "ground",
    group: "faeces",
    term: "Swollen abdomens",
    question: "Swollen abdomens?",
    lookFor: "The abdomens of living bees are clearly swollen.",
    minutes: 5,
  },
  deformed_wings: {
    id: "deformed_wings",
    kind: "sign",
    place: "ground",
    group: "mite_adult",
    term: "Crumpled wings",
    question: "Crumpled wings?",
    lookFor: "Young bees with crumpled, stubby wings or shortened abdomens are seen on comb or ground.",
    tellApart:
      "A deformed wing is crumpled or stubby from birth; a K-wing is a full-sized smooth wing come unhooked; a worn wing is ragged but still hooked.",
    minutes: 5,
  },
  tongue_out: {
    id: "tongue_out",
    kind: "sign",
    place: "ground",
    group: "mortality_look",
    term: "Tongues stuck out",
    question: "Dead with tongues out?",
    lookFor: "Most fresh dead adults have the tongue fully extended.",
    minutes: 2,
  },
  wet_regurgitating: {
    id: "wet_regurgitating",
    kind: "sign",
    place: "ground",
    group: "mortality_look",
    term: "Wet, sticky bees",
    question: "Wet or sticky bees?",
    lookFor: "Dying or dead adults are wet or sticky from fluid they brought up, or as if sweating.",
    minutes: 2,
  },
  revive_on_warming: {
    id: "revive_on_warming",
    kind: "sign",
    place: "ground",
    group: "locomotion",
    term: "Bees revive when warmed",
    question: "Do they fly when warmed?",
    lookFor:
      "Ten still or crawling bees in a box with air holes at 25–30 °C (77–86 °F) with a drop of sugar water: eight or more walk and fly within 15 minutes.",
    tellApart: "Chilled bees fly when warmed.",
    minutes: 16,
  },
  mostly_drones: {
    id: "mostly_drones",
    kind: "sign",
    place: "ground",
    group: "mortality_look",
    term: "Mostly drones",
    question: "Mostly drones?",
    lookFor: "Over half of the dead or crawling bees are drones (eyes meet on top, blunt tail).",
    tellApart: "Drones have eyes that meet and no sting.",
    minutes: 3,
  },
  worn_wings: {
    id: "worn_wings",
    kind: "sign",
    place: "ground",
    group: "locomotion",
    term: "Worn wings",
    question: "Ragged wing edges?",
    lookFor: "Most crawlers have ragged wing edges but stand and walk steadily.",
    tellApart: "Worn wings are ragged but still hooked.",
    minutes: 5,
  },
} as const satisfies {
  readonly [Id in
    | "crawlers"
    | "k_wing"
    | "trembling"
    | "spinning_uncoordinated"
    | "hairless_black"
    | "bloated_abdomen"
    | "deformed_wings"
    | "tongue_out"
    | "wet_regurgitating"
    | "revive_on_warming"
    | "mostly_drones"
    | "worn_wings"]: FindingFact<Id>;
};
