/** Overheating or suffocation. */
import type { ConditionFact } from "../fact.ts";

/** Overheating or suffocation. */
export const overheatingSuffocation = {
  id: "overheating_suffocation",
  term: "Overheating or suffocation",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 0.1, spring: 0.39, summer: 1.48, autumn: 0.2 },
  frequencies: {
    onset_sudden: { grade: "typical", source: "judgement" },
    onset_gradual: { grade: "never", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    closed_or_overheated: { grade: "typical", source: "judgement" },
    dead_pile_floor: { grade: "typical", source: "judgement" },
    wet_regurgitating: { grade: "usual", source: "judgement" },
    strong_hit_hardest: { grade: "usual", source: "judgement" },
    dead_heap: { grade: "occasional", source: "judgement" },
    brood_dead_at_edge: { grade: "occasional", source: "judgement" },
    tongue_out: { grade: "common", source: "judgement" },
    crawlers: { grade: "common", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    hairless_black: { grade: "common", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    normal_eggs_and_queen: { grade: "common", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    recent_spray: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"overheating_suffocation">;
