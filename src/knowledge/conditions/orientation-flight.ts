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
  stage: ["adult"],
  season: "Fair weather",
  onset: "Minutes",
  apiaryPattern: "Any",
  lookAlikes: [{ what: "Robbing", conditions: ["robbing"], tellApart: "That is fighting and prying." }],
  confirm: "Young bees hover in arcs and face the hive, without fighting.",
  management: ["Nothing to do"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 0.2, spring: 2, summer: 2, autumn: 0.7 },
  frequencies: {
    onset_sudden: { grade: "typical", source: "judgement" },
    hover_facing_hive: { grade: "typical", source: "judgement" },
    crawlers: { grade: "occasional", source: "judgement" },
    mostly_drones: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"orientation_flight">;
