/** Chalkbrood. */
import type { ConditionFact } from "../fact.ts";

/** Chalkbrood (Ascosphaera apis). */
export const chalkbrood = {
  id: "chalkbrood",
  term: "Chalkbrood",
  scientificName: "Ascosphaera apis",
  role: "cause",
  rollUp: "brood_disease",
  apiaryWide: false,
  priorPercent: { winter: 0.2, spring: 2.93, summer: 2.47, autumn: 0.49 },
  frequencies: {
    onset_sudden: { grade: "occasional", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    chalk_mummies: { grade: "typical", source: "judgement" },
    spotty_brood: { grade: "common", source: "judgement" },
    dearth_or_foul_weather: { grade: "common", source: "judgement" },
    wet_mould: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "occasional", source: "judgement" },
    excess_brood_for_bees: { grade: "common", source: "judgement" },
    foul_odour: { grade: "rare", source: "judgement" },
    sunken_perforated_caps: { grade: "occasional", source: "judgement" },
    ropy_thread: { grade: "never", suppresses: true, source: "judgement" },
    hard_flat_scale: { grade: "never", source: "judgement" },
    normal_eggs_and_queen: { grade: "typical", source: "judgement" },
    green_hard_mummies: { grade: "rare", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    sac_larva: { grade: "rare", source: "judgement" },
    small_or_late_start: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"chalkbrood">;
