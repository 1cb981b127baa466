/** Wax moth. */
import type { ConditionFact } from "../fact.ts";

/** Wax moth (Galleria mellonella, Achroia grisella). */
export const waxMoth = {
  id: "wax_moth",
  term: "Wax moth",
  scientificName: "Galleria mellonella, Achroia grisella",
  role: "secondary",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 0.5, spring: 0.98, summer: 2.97, autumn: 3.96 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "rare", source: "judgement" },
    webbing_tunnels: { grade: "typical", source: "beebook-wax-moth" },
    weak_for_season: { grade: "typical", source: "judgement" },
    chewed_or_bald_pupae: { grade: "common", source: "judgement" },
    no_brood_in_season: { grade: "common", source: "judgement" },
    queen_not_found_no_eggs: { grade: "common", source: "judgement" },
    robbing_signs: { grade: "occasional", source: "judgement" },
    beetles_or_spined_larvae: { grade: "rare", source: "judgement" },
    slimed_fermenting_honey: { grade: "rare", source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "judgement" },
    stores_ample: { grade: "occasional", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    foul_odour: { grade: "rare", source: "judgement" },
    small_or_late_start: { grade: "common", source: "judgement" },
    normal_eggs_and_queen: { grade: "occasional", source: "judgement" },
    ejected_brood: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"wax_moth">;
