/** Failing queen. */
import type { ConditionFact } from "../fact.ts";

/** Failing queen. */
export const failingQueen = {
  id: "failing_queen",
  term: "Failing queen",
  scientificName: null,
  role: "cause",
  rollUp: "queen_trouble",
  apiaryWide: false,
  priorPercent: { winter: 2.5, spring: 6, summer: 5, autumn: 3 },
  frequencies: {
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    spotty_brood: { grade: "usual", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "common", source: "judgement" },
    drone_brood_in_worker_cells: { grade: "common", source: "judgement" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
    small_cluster: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"failing_queen">;
