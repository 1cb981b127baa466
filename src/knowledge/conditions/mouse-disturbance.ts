/** Mice and other animals. */
import type { ConditionFact } from "../fact.ts";

/** Mice and other animals. */
export const mouseDisturbance = {
  id: "mouse_disturbance",
  term: "Mice and other animals",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  stage: ["colony"],
  season: "Winter",
  onset: "No pattern known",
  apiaryPattern: "One",
  lookAlikes: [],
  confirm: "Sight.",
  management: ["Guards", "Straps", "Fence"],
  listing: "none",
  humanHazard: "Droppings of mice can carry disease.",
  urgency: "within-a-month",
  citations: [
    { source: null, at: "hazard to people, recalled", read: "memory" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
  priorPercent: { winter: 2.98, spring: 0.98, summer: 0.2, autumn: 0.69 },
  frequencies: {
    onset_sudden: { grade: "common", source: "judgement" },
    onset_gradual: { grade: "common", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "rare", source: "judgement" },
    gnawed_comb_or_nest: { grade: "typical", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    dead_pile_floor: { grade: "common", source: "judgement" },
    loose_cluster: { grade: "usual", source: "judgement" },
    faeces_inside: { grade: "common", source: "judgement" },
    small_cluster: { grade: "common", source: "judgement" },
    foul_odour: { grade: "common", source: "judgement" },
    stores_ample: { grade: "common", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    wet_mould: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"mouse_disturbance">;
