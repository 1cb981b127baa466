/** Nosema, the form of late winter. */
import type { ConditionFact } from "../fact.ts";

/** Nosema, the form of late winter (Vairimorpha (Nosema) apis). */
export const nosemaApis = {
  id: "nosema_apis",
  term: "Nosema, the form of late winter",
  scientificName: "Vairimorpha (Nosema) apis",
  role: "cause",
  rollUp: "nosema",
  apiaryWide: false,
  priorPercent: { winter: 1.99, spring: 2.93, summer: 0.3, autumn: 0.3 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    long_confinement: { grade: "usual", source: "nosema-cold-2017" },
    crawlers: { grade: "common", source: "judgement" },
    dead_heap: { grade: "common", source: "judgement" },
    faecal_streaks_front: { grade: "usual", source: "judgement" },
    faeces_inside: { grade: "common", source: "judgement" },
    bloated_abdomen: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "typical", source: "judgement" },
    small_cluster: { grade: "common", source: "judgement" },
    trembling: { grade: "occasional", source: "judgement" },
    k_wing: { grade: "occasional", source: "judgement" },
    few_dead_depopulated: { grade: "occasional", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "occasional", source: "judgement" },
    dead_pile_floor: { grade: "common", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    low_forager_traffic: { grade: "common", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    hairless_black: { grade: "rare", source: "judgement" },
    spotty_brood: { grade: "rare", source: "judgement" },
    loose_cluster: { grade: "occasional", source: "judgement" },
    wet_mould: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"nosema_apis">;
