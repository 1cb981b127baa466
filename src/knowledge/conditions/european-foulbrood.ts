/** European foulbrood. */
import type { ConditionFact } from "../fact.ts";

/** European foulbrood (Melissococcus plutonius). */
export const europeanFoulbrood = {
  id: "european_foulbrood",
  term: "European foulbrood",
  scientificName: "Melissococcus plutonius",
  role: "cause",
  rollUp: "brood_disease",
  apiaryWide: false,
  priorPercent: { winter: 0.1, spring: 3.91, summer: 3.96, autumn: 0.69 },
  frequencies: {
    onset_sudden: { grade: "occasional", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    dearth_or_foul_weather: { grade: "usual", source: "judgement" },
    spotty_brood: { grade: "usual", source: "foulbrood-comparison" },
    twisted_discoloured_larva: { grade: "typical", source: "foulbrood-comparison" },
    sunken_perforated_caps: { grade: "occasional", source: "foulbrood-comparison" },
    ropy_thread: { grade: "rare", source: "foulbrood-comparison" },
    hard_flat_scale: { grade: "rare", source: "foulbrood-comparison" },
    foul_odour: { grade: "common", source: "foulbrood-comparison" },
    grey_slumped_larva: { grade: "common", source: "efb-us-2021" },
    dry_larvae: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
    sac_larva: { grade: "occasional", source: "efb-us-2021" },
    chalk_mummies: { grade: "rare", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    excess_brood_for_bees: { grade: "occasional", source: "judgement" },
    chewed_or_bald_pupae: { grade: "rare", source: "judgement" },
    new_stock_12m: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"european_foulbrood">;
