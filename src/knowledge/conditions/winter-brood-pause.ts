/** Winter pause in brood. */
import type { ConditionFact } from "../fact.ts";

/** Winter pause in brood. */
export const winterBroodPause = {
  id: "winter_brood_pause",
  term: "Winter pause in brood",
  scientificName: null,
  role: "normal",
  rollUp: "normal",
  apiaryWide: false,
  stage: ["colony"],
  season: "Late autumn to winter",
  onset: "Gradual",
  apiaryPattern: "All",
  lookAlikes: [
    { what: "No queen", conditions: ["queenless"], tellApart: "The season, and other colonies with brood." },
  ],
  confirm: "Like colonies have no brood either.",
  management: ["Nothing to do; look again in spring"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 4, spring: 0.7, summer: 0.2, autumn: 4 },
  frequencies: {
    no_brood_in_season: { grade: "usual", source: "judgement" },
    queen_not_found_no_eggs: { grade: "typical", source: "judgement" },
    sealed_brood_only: { grade: "common", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"winter_brood_pause">;
