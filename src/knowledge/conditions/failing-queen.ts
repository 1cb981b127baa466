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
  stage: ["colony"],
  season: "Any brood season",
  onset: "Gradual",
  apiaryPattern: "One",
  lookAlikes: [
    {
      what: "Brood disease",
      conditions: ["american_foulbrood", "european_foulbrood"],
      tellApart: "Dead brood is found.",
    },
    { what: "Queen lays only drones", conditions: ["drone_layer"], tellApart: "Drone brood in worker cells." },
  ],
  confirm: "The brood over three weeks; the queen.",
  management: ["Look again before you requeen", "Requeen", "Unite"],
  listing: "none",
  humanHazard: null,
  urgency: "within-a-month",
  note: "Never leading on spotty brood alone: queens swapped between colonies recovered in 21 days (21 pairs).",
  citations: [
    { source: "lee-2019", at: "21 swapped pairs", read: "seen" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
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
