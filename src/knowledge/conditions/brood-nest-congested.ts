/** Brood nest filled with food. */
import type { ConditionFact } from "../fact.ts";

/** Brood nest filled with food. */
export const broodNestCongested = {
  id: "brood_nest_congested",
  term: "Brood nest filled with food",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: false,
  stage: ["colony"],
  season: "Spring to summer flow",
  onset: "Days to weeks",
  apiaryPattern: "One to few",
  lookAlikes: [
    {
      what: "Failing queen",
      conditions: ["failing_queen"],
      tellApart: "There empty cells are left in the brood nest.",
    },
  ],
  confirm: "Almost no empty cells in the brood nest.",
  management: ["Give room", "Stop feeding"],
  listing: "none",
  humanHazard: null,
  urgency: "within-a-month",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 0.05, spring: 2, summer: 2, autumn: 1 },
  frequencies: {
    brood_nest_filled: { grade: "typical", source: "judgement" },
    weak_for_season: { grade: "occasional", source: "judgement" },
    spotty_brood: { grade: "common", source: "judgement" },
    queen_not_found_no_eggs: { grade: "occasional", source: "judgement" },
    swarmed_5w: { grade: "common", source: "judgement" },
    emergency_or_supersedure_cells: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"brood_nest_congested">;
