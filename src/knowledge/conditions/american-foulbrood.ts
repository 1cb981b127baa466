/** American foulbrood. */
import type { ConditionFact } from "../fact.ts";

/** American foulbrood (Paenibacillus larvae). */
export const americanFoulbrood = {
  id: "american_foulbrood",
  term: "American foulbrood",
  scientificName: "Paenibacillus larvae",
  role: "cause",
  rollUp: "brood_disease",
  apiaryWide: false,
  priorPercent: { winter: 0.5, spring: 0.98, summer: 1.98, autumn: 1.48 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    used_comb_or_gear: { grade: "usual", source: "judgement" },
    new_stock_12m: { grade: "common", source: "judgement" },
    spotty_brood: { grade: "usual", source: "judgement" },
    sunken_perforated_caps: { grade: "typical", source: "foulbrood-comparison" },
    ropy_thread: { grade: "typical", source: "foulbrood-comparison" },
    hard_flat_scale: { grade: "usual", source: "foulbrood-comparison" },
    foul_odour: { grade: "common", source: "foulbrood-comparison" },
    robbing_signs: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    twisted_discoloured_larva: { grade: "occasional", source: "judgement" },
    grey_slumped_larva: { grade: "occasional", source: "judgement" },
    chewed_or_bald_pupae: { grade: "rare", source: "judgement" },
    dead_emerging: { grade: "rare", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
    excess_brood_for_bees: { grade: "occasional", source: "judgement" },
    sac_larva: { grade: "rare", source: "judgement" },
    chalk_mummies: { grade: "rare", source: "judgement" },
    brood_dead_at_edge: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"american_foulbrood">;
