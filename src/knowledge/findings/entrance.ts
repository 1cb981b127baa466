/** Findings at the entrance. */
import type { FindingFact } from "../fact.ts";

/** What is looked for at the entrance. */
export const entranceFindings = {
  dead_heap: {
    id: "dead_heap",
    kind: "sign",
    place: "entrance",
    group: "mortality",
    term: "Heap of dead bees",
    question: "Heap of dead bees?",
    lookFor:
      "More than about 200 fresh dead workers lie at the entrance in a day, or they form a visible carpet (drones driven out are not counted).",
    tellApart:
      "Paralysis strikes one or few strong colonies for weeks; poison strikes most colonies within hours, with tongues out.",
    minutes: 2,
  },
  faecal_streaks_front: {
    id: "faecal_streaks_front",
    kind: "sign",
    place: "entrance",
    group: "faeces",
    term: "Droppings on the hive front",
    question: "Droppings on the front?",
    lookFor: "Ten or more brown or yellow streaks of droppings mark the hive front or landing board.",
    tellApart: "Spots after a long time shut in prove nothing; spores under the microscope do.",
    minutes: 1,
  },
  robbing_signs: {
    id: "robbing_signs",
    kind: "sign",
    place: "entrance",
    group: "robbing",
    term: "Robbing",
    question: "Signs of robbing?",
    lookFor:
      "Fighting at the entrance, bees prying at joints, wax crumbs on the floor or ragged opened honey cappings are seen.",
    tellApart: "Robbers fight and pry; young bees on a practice flight hover calmly and face the hive.",
    minutes: 2,
  },
  low_forager_traffic: {
    id: "low_forager_traffic",
    kind: "sign",
    place: "entrance",
    group: "mortality",
    term: "Few bees flying",
    question: "Few bees flying?",
    lookFor: "In good flying weather clearly fewer bees come and go than at like colonies in the same place.",
    minutes: 3,
  },
  guards_reject_bees: {
    id: "guards_reject_bees",
    kind: "sign",
    place: "entrance",
    group: "adult_skin",
    term: "Guards turn back own bees",
    question: "Guards turn back own bees?",
    lookFor: "Guards pull at, nibble or turn back bees of the same colony that look dark or shaky.",
    tellApart: "Paralysed black bees tremble and cannot fly; robbers fly well; old bees have ragged wings.",
    minutes: 5,
  },
  night_flight: {
    id: "night_flight",
    kind: "sign",
    place: "entrance",
    group: "locomotion",
    term: "Bees at lights by night",
    question: "Bees at lights by night?",
    lookFor: "Bees leave after dark, circle or fall under lights and die there by morning.",
    minutes: 10,
  },
  hover_facing_hive: {
    id: "hover_facing_hive",
    kind: "sign",
    place: "entrance",
    group: "locomotion",
    term: "Bees hovering, facing the hive",
    question: "Hovering and facing the hive?",
    lookFor: "Bees hover in arcs facing the hive for 10-40 minutes, without fighting.",
    tellApart: "Practice flight is calm hovering facing the hive; robbing is fighting and prying.",
    minutes: 10,
  },
  hornets_hawking: {
    id: "hornets_hawking",
    kind: "sign",
    place: "entrance",
    group: "predator",
    term: "Hornets taking bees",
    question: "Hornets taking bees?",
    lookFor: "Hornets or wasps take bees at the entrance.",
    minutes: 10,
  },
  ejected_brood: {
    id: "ejected_brood",
    kind: "sign",
    place: "entrance",
    group: "brood_pupae",
    term: "Thrown-out brood",
    question: "Brood thrown out?",
    lookFor: "Whole or chewed pupae or larvae lie at the entrance or on the floor.",
    minutes: 2,
  },
} as const satisfies {
  readonly [Id in
    | "dead_heap"
    | "faecal_streaks_front"
    | "robbing_signs"
    | "low_forager_traffic"
    | "guards_reject_bees"
    | "night_flight"
    | "hover_facing_hive"
    | "hornets_hawking"
    | "ejected_brood"]: FindingFact<Id>;
};
