/** Pollen shortage. */
import type { ConditionFact } from "../fact.ts";

/** Pollen shortage. */
export const pollenDearth = {
  id: "pollen_dearth",
  term: "Pollen shortage",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: true,
  priorPercent: { winter: 0.5, spring: 1.95, summer: 2.97, autumn: 1.98 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "rare", source: "judgement" },
    most_colonies: { grade: "typical", source: "judgement" },
    dearth_or_foul_weather: { grade: "typical", source: "judgement" },
    no_bee_bread: { grade: "typical", source: "judgement" },
    dry_larvae: { grade: "usual", source: "judgement" },
    spotty_brood: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    no_brood_in_season: { grade: "common", source: "judgement" },
    stores_ample: { grade: "common", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    twisted_discoloured_larva: { grade: "occasional", source: "judgement" },
    low_forager_traffic: { grade: "occasional", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "occasional", source: "judgement" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"pollen_dearth">;
