/** Stonebrood. */
import type { ConditionFact } from "../fact.ts";

/** Stonebrood (Aspergillus flavus and others). */
export const stonebrood = {
  id: "stonebrood",
  term: "Stonebrood",
  scientificName: "Aspergillus flavus and others",
  role: "cause",
  rollUp: "brood_disease",
  apiaryWide: false,
  stage: ["brood", "adult"],
  season: "Rare",
  onset: "No pattern known",
  apiaryPattern: "One",
  lookAlikes: [
    { what: "Chalkbrood", conditions: ["chalkbrood"], tellApart: "It crumbles." },
    { what: "Mould on brood that died of something else", conditions: ["winter_damp"], tellApart: "It is soft." },
  ],
  confirm: "Culture, wearing a mask.",
  management: ["Burn combs"],
  listing: "none",
  humanHazard: "Spores and toxin of the mould: wear a respirator and do not open it.",
  urgency: "within-a-week",
  citations: [
    { source: null, at: "hazard to people, recalled", read: "memory" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
  priorPercent: { winter: 0.02, spring: 0.05, summer: 0.05, autumn: 0.02 },
  frequencies: {
    onset_sudden: { grade: "occasional", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "typical", source: "judgement" },
    most_colonies: { grade: "rare", source: "judgement" },
    green_hard_mummies: { grade: "typical", source: "judgement" },
    chalk_mummies: { grade: "occasional", source: "judgement" },
    spotty_brood: { grade: "common", source: "judgement" },
    wet_mould: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    crawlers: { grade: "occasional", source: "judgement" },
    ropy_thread: { grade: "never", suppresses: true, source: "judgement" },
    foul_odour: { grade: "occasional", source: "judgement" },
    normal_eggs_and_queen: { grade: "usual", source: "judgement" },
  },
} as const satisfies ConditionFact<"stonebrood">;
