/** Brood break after a swarm or new queen. */
import type { ConditionFact } from "../fact.ts";

/** Brood break after a swarm or new queen. */
export const broodBreakSwarm = {
  id: "brood_break_swarm",
  term: "Brood break after a swarm or new queen",
  scientificName: null,
  role: "normal",
  rollUp: "normal",
  apiaryWide: false,
  priorPercent: { winter: 0.1, spring: 8, summer: 10, autumn: 1 },
  frequencies: {
    onset_sudden: { grade: "common", source: "judgement" },
    onset_gradual: { grade: "rare", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "rare", source: "judgement" },
    no_brood_in_season: { grade: "usual", source: "judgement" },
    queen_not_found_no_eggs: { grade: "usual", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "usual", source: "judgement" },
    swarmed_5w: { grade: "usual", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    normal_eggs_and_queen: { grade: "rare", suppresses: true, source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "judgement" },
    excess_brood_for_bees: { grade: "rare", source: "judgement" },
    multiple_eggs_per_cell: { grade: "rare", source: "judgement" },
    drone_brood_in_worker_cells: { grade: "rare", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    low_forager_traffic: { grade: "occasional", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    sealed_brood_only: { grade: "usual", source: "judgement" },
    calm_polished_cells: { grade: "usual", source: "judgement" },
    roar_agitated: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"brood_break_swarm">;
