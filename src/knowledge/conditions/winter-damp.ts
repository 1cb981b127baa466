/** Damp in winter. */
import type { ConditionFact } from "../fact.ts";

/** Damp in winter. */
export const winterDamp = {
  id: "winter_damp",
  term: "Damp in winter",
  scientificName: null,
  role: "secondary",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 2, spring: 1, summer: 0.1, autumn: 0.3 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    wet_mould: { grade: "usual", source: "judgement" },
    dead_pile_floor: { grade: "common", source: "judgement" },
    small_cluster: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    faeces_inside: { grade: "occasional", source: "judgement" },
    chalk_mummies: { grade: "occasional", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    long_confinement: { grade: "usual", source: "judgement" },
    slimed_fermenting_honey: { grade: "occasional", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "occasional", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    bloated_abdomen: { grade: "occasional", source: "judgement" },
    faecal_streaks_front: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"winter_damp">;
