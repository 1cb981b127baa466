/** Harm from a hive treatment. */
import type { ConditionFact } from "../fact.ts";

/** Harm from a hive treatment. */
export const treatmentInjury = {
  id: "treatment_injury",
  term: "Harm from a hive treatment",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: true,
  stage: ["adult", "brood", "colony"],
  season: "After a treatment",
  onset: "Hours to days",
  apiaryPattern: "The treated ones",
  lookAlikes: [
    {
      what: "Poisoning, paralysis",
      conditions: ["acute_poisoning", "chronic_paralysis"],
      tellApart: "A treatment went in shortly before; wait one label period before judging crawlers.",
    },
  ],
  confirm: "The record of treatment, and recovery.",
  management: [
    "Take out what still can be taken out, as the label says",
    "Air",
    "Wait and look again; check the queen",
  ],
  listing: "none",
  humanHazard: null,
  urgency: "within-a-week",
  note: "During formic acid use a day’s natural deaths (1,200 to 1,500 bees) may lie outside.",
  citations: [
    { source: "formic-supplier", at: "text, low grade", read: "seen" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
  priorPercent: { winter: 1, spring: 2, summer: 3, autumn: 4 },
  frequencies: {
    recent_hive_treatment: { grade: "typical", source: "judgement" },
    onset_sudden: { grade: "usual", source: "judgement" },
    crawlers: { grade: "common", source: "judgement" },
    dead_heap: { grade: "common", source: "judgement" },
    most_colonies: { grade: "usual", source: "judgement" },
    ejected_brood: { grade: "common", source: "judgement" },
    queen_not_found_no_eggs: { grade: "occasional", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "common", source: "judgement" },
    spotty_brood: { grade: "common", source: "judgement" },
    closed_or_overheated: { grade: "occasional", source: "judgement" },
    revive_on_warming: { grade: "occasional", source: "judgement" },
    brood_dead_at_edge: { grade: "occasional", source: "judgement" },
    no_brood_in_season: { grade: "occasional", source: "judgement" },
    trembling: { grade: "occasional", source: "judgement" },
    spinning_uncoordinated: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"treatment_injury">;
