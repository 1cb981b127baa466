/** Chilled or old foragers. */
import type { ConditionFact } from "../fact.ts";

/** Chilled or old foragers. */
export const chilledOrOldForagers = {
  id: "chilled_or_old_foragers",
  term: "Chilled or old foragers",
  scientificName: null,
  role: "normal",
  rollUp: "normal",
  apiaryWide: false,
  stage: ["adult"],
  season: "Cool or windy days",
  onset: "Hours",
  apiaryPattern: "Any",
  lookAlikes: [
    {
      what: "Tracheal mites, paralysis",
      conditions: ["tracheal_mites", "chronic_paralysis"],
      tellApart: "Those bees do not fly when warmed.",
    },
  ],
  confirm: "They fly when warmed, or have worn wings.",
  management: ["Nothing to do; look again"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 2, spring: 7, summer: 2, autumn: 4 },
  frequencies: {
    onset_sudden: { grade: "usual", source: "judgement" },
    crawlers: { grade: "usual", source: "judgement" },
    revive_on_warming: { grade: "usual", source: "judgement" },
    worn_wings: { grade: "usual", source: "judgement" },
    cold_when_seen: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
    k_wing: { grade: "occasional", source: "judgement" },
    dead_heap: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"chilled_or_old_foragers">;
