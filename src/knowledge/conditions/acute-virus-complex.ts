/** Acute paralysis viruses. */
import type { ConditionFact } from "../fact.ts";

/** Acute paralysis viruses (Acute bee paralysis, Kashmir bee and Israeli acute paralysis viruses (ABPV, KBV, IAPV)). */
export const acuteVirusComplex = {
  id: "acute_virus_complex",
  term: "Acute paralysis viruses",
  scientificName: "Acute bee paralysis, Kashmir bee and Israeli acute paralysis viruses (ABPV, KBV, IAPV)",
  role: "cause",
  rollUp: "varroa_and_viruses",
  apiaryWide: false,
  priorPercent: { winter: 0.7, spring: 0.98, summer: 1.98, autumn: 1.98 },
  frequencies: {
    onset_sudden: { grade: "usual", source: "judgement" },
    onset_gradual: { grade: "common", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    no_mite_control: { grade: "usual", source: "judgement" },
    crawlers: { grade: "usual", source: "judgement" },
    trembling: { grade: "common", source: "judgement" },
    hairless_black: { grade: "occasional", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "occasional", source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "judgement" },
    varroa_on_adults: { grade: "usual", source: "judgement" },
    spotty_brood: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    bloated_abdomen: { grade: "rare", source: "judgement" },
    spinning_uncoordinated: { grade: "occasional", source: "judgement" },
    dead_pile_floor: { grade: "occasional", source: "judgement" },
    deformed_wings: { grade: "occasional", source: "judgement" },
    excess_brood_for_bees: { grade: "common", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    grey_slumped_larva: { grade: "occasional", source: "judgement" },
    dead_emerging: { grade: "occasional", source: "judgement" },
    low_forager_traffic: { grade: "common", source: "judgement" },
    guards_reject_bees: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"acute_virus_complex">;
