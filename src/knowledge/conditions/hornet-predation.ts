/** Hornets. */
import type { ConditionFact } from "../fact.ts";

/** Hornets (Vespa species). */
export const hornetPredation = {
  id: "hornet_predation",
  term: "Hornets",
  scientificName: "Vespa species",
  role: "cause",
  rollUp: null,
  apiaryWide: true,
  stage: ["colony"],
  season: "Late summer to autumn",
  onset: "Gradual",
  apiaryPattern: "Most",
  lookAlikes: [],
  confirm: "Hornets take bees at the entrance.",
  management: ["Report an exotic hornet", "Narrow the entrance"],
  listing: "national-in-some",
  humanHazard: "Hornet stings.",
  urgency: "within-a-week",
  urgencyNote: "Same day if the hornet is exotic: report.",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 0.01, spring: 0.05, summer: 0.5, autumn: 1.5 },
  frequencies: {
    hornets_hawking: { grade: "typical", source: "judgement" },
    low_forager_traffic: { grade: "usual", source: "judgement" },
    weak_for_season: { grade: "common", source: "judgement" },
    most_colonies: { grade: "usual", source: "judgement" },
    few_dead_depopulated: { grade: "common", source: "judgement" },
    stores_low: { grade: "common", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
  },
} as const satisfies ConditionFact<"hornet_predation">;
