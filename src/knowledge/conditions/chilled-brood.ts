/** Chilled brood. */
import type { ConditionFact } from "../fact.ts";

/** Chilled brood. */
export const chilledBrood = {
  id: "chilled_brood",
  term: "Chilled brood",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 0.2, spring: 2.93, summer: 0.49, autumn: 0.3 },
  frequencies: {
    onset_sudden: { grade: "usual", source: "judgement" },
    onset_gradual: { grade: "rare", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    brood_dead_at_edge: { grade: "typical", source: "judgement" },
    excess_brood_for_bees: { grade: "usual", source: "judgement" },
    dearth_or_foul_weather: { grade: "usual", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    small_or_late_start: { grade: "common", source: "judgement" },
    recent_spray: { grade: "occasional", source: "judgement" },
    spotty_brood: { grade: "occasional", source: "judgement" },
    sunken_perforated_caps: { grade: "occasional", source: "judgement" },
    foul_odour: { grade: "occasional", source: "judgement" },
    ropy_thread: { grade: "never", suppresses: true, source: "judgement" },
    hard_flat_scale: { grade: "rare", source: "judgement" },
    twisted_discoloured_larva: { grade: "occasional", source: "judgement" },
    grey_slumped_larva: { grade: "common", source: "judgement" },
    dead_emerging: { grade: "occasional", source: "judgement" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    swarmed_5w: { grade: "common", source: "judgement" },
    ejected_brood: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"chilled_brood">;
