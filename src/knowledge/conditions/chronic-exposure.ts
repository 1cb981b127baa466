/** Slow poisoning by residues. */
import type { ConditionFact } from "../fact.ts";

/** Slow poisoning by residues. */
export const chronicExposure = {
  id: "chronic_exposure",
  term: "Slow poisoning by residues",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: true,
  priorPercent: { winter: 0.99, spring: 1.95, summer: 2.97, autumn: 1.98 },
  frequencies: {
    onset_sudden: { grade: "occasional", source: "judgement" },
    onset_gradual: { grade: "usual", source: "ontario-poisoning" },
    single_colony: { grade: "rare", source: "judgement" },
    most_colonies: { grade: "usual", source: "judgement" },
    recent_spray: { grade: "common", source: "judgement" },
    recent_hive_treatment: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "usual", source: "ontario-poisoning" },
    few_dead_depopulated: { grade: "usual", source: "judgement" },
    spotty_brood: { grade: "common", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "common", source: "ontario-poisoning" },
    queen_not_found_no_eggs: { grade: "occasional", source: "judgement" },
    low_forager_traffic: { grade: "common", source: "judgement" },
    dead_heap: { grade: "occasional", source: "judgement" },
    crawlers: { grade: "occasional", source: "judgement" },
    excess_brood_for_bees: { grade: "common", source: "judgement" },
    trembling: { grade: "occasional", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    mostly_young_bees: { grade: "common", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    dry_larvae: { grade: "occasional", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    no_brood_in_season: { grade: "occasional", source: "judgement" },
    ejected_brood: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"chronic_exposure">;
