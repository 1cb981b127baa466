/** Queen lays only drones. */
import type { ConditionFact } from "../fact.ts";

/** Queen lays only drones. */
export const droneLayer = {
  id: "drone_layer",
  term: "Queen lays only drones",
  scientificName: null,
  role: "cause",
  rollUp: "queen_trouble",
  apiaryWide: false,
  stage: ["colony"],
  season: "Early spring",
  onset: "Gradual",
  apiaryPattern: "One",
  lookAlikes: [
    { what: "Laying workers", conditions: ["laying_workers"], tellApart: "Several eggs, on the walls, scattered." },
  ],
  confirm: "Find the queen; look at the pattern of eggs.",
  management: ["Replace the queen", "Unite"],
  listing: "none",
  humanHazard: null,
  urgency: "within-a-month",
  citations: [
    { source: "norfolk-beekeepers", at: "text", read: "seen" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
  priorPercent: { winter: 5, spring: 8, summer: 3, autumn: 3 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "typical", source: "judgement" },
    most_colonies: { grade: "rare", source: "judgement" },
    drone_brood_in_worker_cells: { grade: "typical", source: "queen-state-handbook" },
    weak_for_season: { grade: "usual", source: "judgement" },
    queen_not_found_no_eggs: { grade: "rare", source: "judgement" },
    normal_eggs_and_queen: { grade: "occasional", suppresses: true, source: "judgement" },
    multiple_eggs_per_cell: { grade: "occasional", source: "judgement" },
    spotty_brood: { grade: "usual", source: "judgement" },
    excess_brood_for_bees: { grade: "rare", source: "judgement" },
    small_cluster: { grade: "common", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "common", source: "judgement" },
    no_brood_in_season: { grade: "rare", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    robbing_signs: { grade: "occasional", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"drone_layer">;
