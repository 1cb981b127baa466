/** Findings in the apiary and around it. */
import type { FindingFact } from "../fact.ts";

/** What is looked for in the apiary and around it. */
export const apiaryFindings = {
  single_colony: {
    id: "single_colony",
    kind: "sign",
    place: "apiary",
    group: "spread",
    term: "Only one colony affected",
    question: "Only this colony?",
    lookFor: "In an apiary of four or more colonies only one shows the problem at the visit.",
    exclusiveWith: "most_colonies",
    derived: true,
    minutes: 3,
  },
  most_colonies: {
    id: "most_colonies",
    kind: "sign",
    place: "apiary",
    group: "spread",
    term: "Most colonies affected",
    question: "Half the colonies or more?",
    lookFor: "Half or more of the colonies in the apiary show the same problem at the same time.",
    exclusiveWith: "single_colony",
    derived: true,
    minutes: 3,
  },
  strong_hit_hardest: {
    id: "strong_hit_hardest",
    kind: "sign",
    place: "apiary",
    group: "spread",
    term: "Strong colonies worst hit",
    question: "Strongest colonies worst?",
    lookFor: "Within the apiary the most populous colonies are clearly worse affected than the weak ones.",
    minutes: 3,
  },
  recent_spray: {
    id: "recent_spray",
    kind: "circumstance",
    place: "apiary",
    group: "exposure",
    term: "Recent spraying nearby",
    question: "Spraying nearby last week?",
    lookFor:
      "Insecticide spraying, sowing of insecticide-treated seed, or mosquito control took place within flight range (3 km, about 2 miles) in the 7 days before the trouble began.",
    minutes: 3,
  },
  toxic_bloom: {
    id: "toxic_bloom",
    kind: "circumstance",
    place: "apiary",
    group: "exposure",
    term: "Poisonous plant in bloom",
    question: "Poisonous plant in bloom?",
    lookFor: "A plant known to poison honey bees is in flower within flight range during the signs.",
    minutes: 5,
  },
  long_confinement: {
    id: "long_confinement",
    kind: "circumstance",
    place: "apiary",
    group: "weather",
    term: "Long time shut in by weather",
    question: "No flying days for three weeks?",
    lookFor: "The weather allowed no flight to empty the gut for three weeks or more before the signs.",
    minutes: 1,
  },
  dearth_or_foul_weather: {
    id: "dearth_or_foul_weather",
    kind: "circumstance",
    place: "apiary",
    group: "weather",
    term: "Little forage or foul weather",
    question: "Little forage last month?",
    lookFor:
      "In the month before the trouble began there was little forage, or ten or more days were too cold or wet to forage, and the colony was not fed enough.",
    minutes: 2,
  },
  cold_when_seen: {
    id: "cold_when_seen",
    kind: "sign",
    place: "apiary",
    group: "weather",
    term: "Cold, wind or snow when seen",
    question: "Cold or windy when seen?",
    lookFor: "It was below about 12 °C (54 °F), or windy, or sunny on snow, when the bees were seen.",
    minutes: 1,
  },
} as const satisfies {
  readonly [Id in
    | "single_colony"
    | "most_colonies"
    | "strong_hit_hardest"
    | "recent_spray"
    | "toxic_bloom"
    | "long_confinement"
    | "dearth_or_foul_weather"
    | "cold_when_seen"]: FindingFact<Id>;
};
