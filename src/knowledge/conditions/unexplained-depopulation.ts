/** Unexplained loss of bees. */
import type { ConditionFact } from "../fact.ts";

/** Unexplained loss of bees. */
export const unexplainedDepopulation = {
  id: "unexplained_depopulation",
  term: "Unexplained loss of bees",
  scientificName: null,
  role: "syndrome",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 4.97, spring: 2.93, summer: 2.97, autumn: 3.96 },
  frequencies: {
    onset_sudden: { grade: "usual", source: "vanengelsdorp-2009" },
    onset_gradual: { grade: "occasional", source: "judgement" },
    single_colony: { grade: "occasional", source: "judgement" },
    most_colonies: { grade: "usual", source: "judgement" },
    few_dead_depopulated: { grade: "typical", source: "vanengelsdorp-2009" },
    excess_brood_for_bees: { grade: "usual", source: "vanengelsdorp-2009" },
    stores_ample: { grade: "typical", source: "vanengelsdorp-2009" },
    robbing_signs: { grade: "rare", suppresses: true, source: "vanengelsdorp-2009" },
    webbing_tunnels: { grade: "rare", source: "vanengelsdorp-2009" },
    beetles_or_spined_larvae: { grade: "rare", source: "vanengelsdorp-2009" },
    mostly_young_bees: { grade: "usual", source: "judgement" },
    weak_for_season: { grade: "typical", source: "vanengelsdorp-2009" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", suppresses: true, source: "vanengelsdorp-2009" },
    faecal_streaks_front: { grade: "rare", source: "judgement" },
    varroa_on_adults: { grade: "rare", source: "vanengelsdorp-2009" },
    spotty_brood: { grade: "occasional", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    small_cluster: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"unexplained_depopulation">;
