/** Small hive beetle. */
import type { ConditionFact } from "../fact.ts";

/** Small hive beetle (Aethina tumida). */
export const smallHiveBeetle = {
  id: "small_hive_beetle",
  term: "Small hive beetle",
  scientificName: "Aethina tumida",
  role: "secondary",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 0.1, spring: 0.29, summer: 2.97, autumn: 1.98 },
  frequencies: {
    onset_sudden: { grade: "common", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    beetles_or_spined_larvae: { grade: "typical", source: "practical-manual-shb" },
    slimed_fermenting_honey: { grade: "usual", source: "practical-manual-shb" },
    foul_odour: { grade: "usual", source: "practical-manual-shb" },
    weak_for_season: { grade: "usual", source: "judgement" },
    webbing_tunnels: { grade: "rare", source: "practical-manual-shb" },
    no_brood_in_season: { grade: "common", source: "judgement" },
    queen_not_found_no_eggs: { grade: "common", source: "judgement" },
    new_stock_12m: { grade: "common", source: "judgement" },
    robbing_signs: { grade: "rare", source: "judgement" },
    stores_ample: { grade: "common", source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "practical-manual-shb" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    normal_eggs_and_queen: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"small_hive_beetle">;
