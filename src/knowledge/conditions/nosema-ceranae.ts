/** Nosema, the form without droppings. */
import type { ConditionFact } from "../fact.ts";

/** Nosema, the form without droppings (Vairimorpha (Nosema) ceranae). */
export const nosemaCeranae = {
  id: "nosema_ceranae",
  term: "Nosema, the form without droppings",
  scientificName: "Vairimorpha (Nosema) ceranae",
  role: "cause",
  rollUp: "nosema",
  apiaryWide: false,
  priorPercent: { winter: 2.98, spring: 3.91, summer: 2.97, autumn: 1.98 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "spain-epidemiology-2010" },
    faeces_inside: { grade: "rare", source: "judgement" },
    crawlers: { grade: "occasional", source: "judgement" },
    weak_for_season: { grade: "typical", source: "spain-epidemiology-2010" },
    small_cluster: { grade: "common", source: "judgement" },
    bloated_abdomen: { grade: "occasional", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    low_forager_traffic: { grade: "common", source: "judgement" },
    spotty_brood: { grade: "occasional", source: "judgement" },
    excess_brood_for_bees: { grade: "common", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "occasional", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    hairless_black: { grade: "rare", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    mostly_young_bees: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"nosema_ceranae">;
