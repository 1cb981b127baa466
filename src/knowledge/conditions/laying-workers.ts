/** Laying workers. */
import type { ConditionFact } from "../fact.ts";

/** Laying workers. */
export const layingWorkers = {
  id: "laying_workers",
  term: "Laying workers",
  scientificName: null,
  role: "cause",
  rollUp: "queen_trouble",
  apiaryWide: false,
  priorPercent: { winter: 0.5, spring: 1.95, summer: 3.96, autumn: 2.97 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "typical", source: "judgement" },
    most_colonies: { grade: "rare", source: "judgement" },
    multiple_eggs_per_cell: { grade: "typical", source: "queen-state-handbook" },
    drone_brood_in_worker_cells: { grade: "typical", source: "queen-state-handbook" },
    weak_for_season: { grade: "usual", source: "judgement" },
    normal_eggs_and_queen: { grade: "rare", suppresses: true, source: "judgement" },
    emergency_or_supersedure_cells: { grade: "occasional", source: "judgement" },
    spotty_brood: { grade: "usual", source: "judgement" },
    queen_not_found_no_eggs: { grade: "rare", source: "judgement" },
    robbing_signs: { grade: "common", source: "judgement" },
    no_brood_in_season: { grade: "rare", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    small_cluster: { grade: "common", source: "judgement" },
    excess_brood_for_bees: { grade: "rare", source: "judgement" },
    swarmed_5w: { grade: "common", source: "judgement" },
    webbing_tunnels: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"laying_workers">;
