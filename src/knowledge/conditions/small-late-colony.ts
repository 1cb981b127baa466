/** Colony too small for the cold. */
import type { ConditionFact } from "../fact.ts";

/** Colony too small for the cold. */
export const smallLateColony = {
  id: "small_late_colony",
  term: "Colony too small for the cold",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 11.94, spring: 5.86, summer: 1.98, autumn: 4.94 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    small_or_late_start: { grade: "usual", source: "judgement" },
    small_cluster: { grade: "typical", source: "judgement" },
    weak_for_season: { grade: "typical", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    dead_pile_floor: { grade: "occasional", source: "judgement" },
    heads_in_cells: { grade: "common", source: "judgement" },
    wet_mould: { grade: "common", source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "judgement" },
    excess_brood_for_bees: { grade: "occasional", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    normal_eggs_and_queen: { grade: "occasional", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    brood_dead_at_edge: { grade: "occasional", source: "judgement" },
    loose_cluster: { grade: "rare", source: "judgement" },
    spotty_brood: { grade: "rare", source: "judgement" },
    varroa_on_adults: { grade: "rare", source: "judgement" },
    strong_hit_hardest: { grade: "never", source: "judgement" },
  },
} as const satisfies ConditionFact<"small_late_colony">;
