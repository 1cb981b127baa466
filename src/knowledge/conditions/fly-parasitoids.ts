/** Parasite flies. */
import type { ConditionFact } from "../fact.ts";

/** Parasite flies (Apocephalus borealis; Conopidae). */
export const flyParasitoids = {
  id: "fly_parasitoids",
  term: "Parasite flies",
  scientificName: "Apocephalus borealis; Conopidae",
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  stage: ["adult"],
  season: "Late summer to winter",
  onset: "Gradual",
  apiaryPattern: "Patchy",
  lookAlikes: [
    {
      what: "Chronic bee paralysis, poisoning",
      conditions: ["chronic_paralysis", "acute_poisoning"],
      tellApart: "Larvae come out of dead bees that are kept.",
    },
  ],
  confirm: "Keep dead bees sealed for 7 to 14 days: larvae or pupae come out.",
  management: ["Nothing known", "Lights off"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [
    { source: "core-2012", at: "secondary pages", read: "seen" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
  priorPercent: { winter: 0.05, spring: 0.05, summer: 0.3, autumn: 0.49 },
  frequencies: {
    onset_sudden: { grade: "occasional", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "occasional", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    night_flight: { grade: "typical", source: "core-2012" },
    crawlers: { grade: "usual", source: "core-2012" },
    spinning_uncoordinated: { grade: "common", source: "core-2012" },
    dead_heap: { grade: "occasional", source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "occasional", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    trembling: { grade: "occasional", source: "judgement" },
    hairless_black: { grade: "rare", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
    low_forager_traffic: { grade: "occasional", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
    spotty_brood: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"fly_parasitoids">;
