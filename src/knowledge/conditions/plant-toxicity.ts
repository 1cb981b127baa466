/** Poisoning by plants. */
import type { ConditionFact } from "../fact.ts";

/** Poisoning by plants. */
export const plantToxicity = {
  id: "plant_toxicity",
  term: "Poisoning by plants",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: true,
  priorPercent: { winter: 0.05, spring: 0.49, summer: 0.59, autumn: 0.1 },
  frequencies: {
    onset_sudden: { grade: "common", source: "judgement" },
    onset_gradual: { grade: "common", source: "judgement" },
    single_colony: { grade: "rare", source: "judgement" },
    most_colonies: { grade: "typical", source: "judgement" },
    toxic_bloom: { grade: "typical", source: "judgement" },
    crawlers: { grade: "common", source: "judgement" },
    dead_heap: { grade: "common", source: "judgement" },
    trembling: { grade: "common", source: "judgement" },
    hairless_black: { grade: "common", source: "judgement" },
    deformed_wings: { grade: "occasional", source: "judgement" },
    spotty_brood: { grade: "usual", source: "judgement" },
    no_brood_in_season: { grade: "common", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    spinning_uncoordinated: { grade: "common", source: "judgement" },
    excess_brood_for_bees: { grade: "rare", source: "judgement" },
    dry_larvae: { grade: "occasional", source: "judgement" },
    recent_spray: { grade: "rare", source: "judgement" },
    drone_brood_in_worker_cells: { grade: "occasional", source: "judgement" },
    tongue_out: { grade: "occasional", source: "judgement" },
    mostly_young_bees: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"plant_toxicity">;
