/** Young bees on practice flights. */
import type { ConditionFact } from "../fact.ts";

/** Young bees on practice flights. */
export const orientationFlight = {
  id: "orientation_flight",
  term: "Young bees on practice flights",
  scientificName: null,
  role: "normal",
  rollUp: "normal",
  apiaryWide: false,
  priorPercent: { winter: 0.2, spring: 2, summer: 2, autumn: 0.7 },
  frequencies: {
    onset_sudden: { grade: "typical", source: "judgement" },
    hover_facing_hive: { grade: "typical", source: "judgement" },
    crawlers: { grade: "occasional", source: "judgement" },
    mostly_drones: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"orientation_flight">;
