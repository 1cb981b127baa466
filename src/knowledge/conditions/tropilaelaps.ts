/** Tropilaelaps mites. */
import type { ConditionFact } from "../fact.ts";

/** Tropilaelaps mites (Tropilaelaps mercedesae, T. clareae). */
export const tropilaelaps = {
  id: "tropilaelaps",
  term: "Tropilaelaps mites",
  scientificName: "Tropilaelaps mercedesae, T. clareae",
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  priorPercent: { winter: 0.01, spring: 0.01, summer: 0.01, autumn: 0.01 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "occasional", source: "judgement" },
    most_colonies: { grade: "usual", source: "judgement" },
    fast_small_mites: { grade: "usual", source: "pettis-2013" },
    spotty_brood: { grade: "typical", source: "judgement" },
    deformed_wings: { grade: "usual", source: "judgement" },
    crawlers: { grade: "usual", source: "judgement" },
    sunken_perforated_caps: { grade: "common", source: "judgement" },
    chewed_or_bald_pupae: { grade: "usual", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    dead_emerging: { grade: "common", source: "judgement" },
    new_stock_12m: { grade: "usual", source: "judgement" },
    no_mite_control: { grade: "common", source: "judgement" },
    varroa_on_adults: { grade: "common", source: "judgement" },
    foul_odour: { grade: "occasional", source: "judgement" },
    white_cell_deposits: { grade: "occasional", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    hairless_black: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"tropilaelaps">;
