/** Ordinary spring turnover. */
import type { ConditionFact } from "../fact.ts";

/** Ordinary spring turnover. */
export const springTurnoverNormal = {
  id: "spring_turnover_normal",
  term: "Ordinary spring turnover",
  scientificName: null,
  role: "normal",
  rollUp: "normal",
  apiaryWide: false,
  stage: ["colony"],
  season: "Spring",
  onset: "Gradual",
  apiaryPattern: "Any",
  lookAlikes: [
    {
      what: "Nosema, tracheal mites",
      conditions: ["nosema_apis", "tracheal_mites"],
      tellApart: "There the colony does not grow again.",
    },
  ],
  confirm: "The colony is small, then grows as young bees emerge.",
  management: ["Nothing to do; look again"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 1, spring: 7, summer: 0.05, autumn: 0.05 },
  frequencies: {
    weak_for_season: { grade: "usual", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    crawlers: { grade: "common", source: "judgement" },
    worn_wings: { grade: "common", source: "judgement" },
    cold_when_seen: { grade: "common", source: "judgement" },
    dead_heap: { grade: "common", source: "judgement" },
    dearth_or_foul_weather: { grade: "usual", source: "judgement" },
    dead_pile_floor: { grade: "common", source: "judgement" },
    low_forager_traffic: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"spring_turnover_normal">;
