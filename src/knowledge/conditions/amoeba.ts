/** Amoeba disease. */
import type { ConditionFact } from "../fact.ts";

/** Amoeba disease (Malpighamoeba mellificae). */
export const amoeba = {
  id: "amoeba",
  term: "Amoeba disease",
  scientificName: "Malpighamoeba mellificae",
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  stage: ["adult"],
  season: "Spring",
  onset: "Gradual",
  apiaryPattern: "Several",
  lookAlikes: [
    {
      what: "Nosema",
      conditions: ["nosema_apis", "nosema_ceranae"],
      tellApart: "Its spores are oval, 5 to 7 micrometres; amoeba cysts are round, 5 to 8 micrometres, in the tubules.",
    },
  ],
  confirm: "Malpighian tubules mounted at 400 times, 20 to 60 bees.",
  management: ["Renew comb", "Acetic acid vapour for stored comb", "Hygiene", "There is no drug"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  note: "Often together with nosema.",
  citations: [
    { source: "malpighamoeba-reference", at: "text", read: "seen" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
  priorPercent: { winter: 0.3, spring: 0.49, summer: 0.1, autumn: 0.1 },
  frequencies: {
    onset_sudden: { grade: "rare", source: "judgement" },
    onset_gradual: { grade: "typical", source: "judgement" },
    single_colony: { grade: "common", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    long_confinement: { grade: "common", source: "judgement" },
    crawlers: { grade: "occasional", source: "judgement" },
    faecal_streaks_front: { grade: "common", source: "malpighamoeba-reference" },
    faeces_inside: { grade: "common", source: "judgement" },
    bloated_abdomen: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "usual", source: "judgement" },
    dead_heap: { grade: "occasional", source: "judgement" },
    small_cluster: { grade: "common", source: "judgement" },
    trembling: { grade: "rare", source: "judgement" },
    k_wing: { grade: "rare", source: "judgement" },
    stores_ample: { grade: "usual", source: "judgement" },
    low_forager_traffic: { grade: "common", source: "judgement" },
    spotty_brood: { grade: "rare", source: "judgement" },
    deformed_wings: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"amoeba">;
