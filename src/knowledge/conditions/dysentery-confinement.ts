/** Dysentery from long confinement. */
import type { ConditionFact } from "../fact.ts";

/** Dysentery from long confinement. */
export const dysenteryConfinement = {
  id: "dysentery_confinement",
  term: "Dysentery from long confinement",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 3.98, spring: 2.44, summer: 0.1, autumn: 0.2 },
  frequencies: {
    onset_sudden: { grade: "occasional", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    long_confinement: { grade: "typical", source: "judgement" },
    faecal_streaks_front: { grade: "typical", source: "judgement" },
    faeces_inside: { grade: "usual", source: "judgement" },
    bloated_abdomen: { grade: "usual", source: "judgement" },
    crawlers: { grade: "occasional", source: "judgement" },
    dead_heap: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    small_cluster: { grade: "occasional", source: "judgement" },
    dead_pile_floor: { grade: "common", source: "judgement" },
    wet_mould: { grade: "common", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    loose_cluster: { grade: "occasional", source: "judgement" },
    slimed_fermenting_honey: { grade: "occasional", source: "judgement" },
    hairless_black: { grade: "rare", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"dysentery_confinement">;
