/** Robbing. */
import type { ConditionFact } from "../fact.ts";

/** Robbing. */
export const robbing = {
  id: "robbing",
  term: "Robbing",
  scientificName: null,
  role: "secondary",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 0.99, spring: 1.95, summer: 3.96, autumn: 6.92 },
  frequencies: {
    onset_sudden: { grade: "usual", source: "judgement" },
    onset_gradual: { grade: "rare", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    robbing_signs: { grade: "typical", source: "judgement" },
    stores_exhausted: { grade: "usual", source: "judgement" },
    stores_ample: { grade: "rare", suppresses: true, source: "judgement" },
    dead_heap: { grade: "common", source: "judgement" },
    dead_pile_floor: { grade: "common", source: "judgement" },
    dearth_or_foul_weather: { grade: "usual", source: "judgement" },
    hairless_black: { grade: "common", source: "budge-stainton-2016" },
    guards_reject_bees: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    normal_eggs_and_queen: { grade: "common", source: "judgement" },
    spotty_brood: { grade: "rare", source: "judgement" },
    heads_in_cells: { grade: "occasional", source: "judgement" },
    webbing_tunnels: { grade: "occasional", source: "judgement" },
    queen_not_found_no_eggs: { grade: "occasional", source: "judgement" },
    hornets_hawking: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"robbing">;
