/** Drones driven out. */
import type { ConditionFact } from "../fact.ts";

/** Drones driven out. */
export const droneEviction = {
  id: "drone_eviction",
  term: "Drones driven out",
  scientificName: null,
  role: "normal",
  rollUp: "normal",
  apiaryWide: false,
  stage: ["adult"],
  season: "Late summer to autumn",
  onset: "Days to weeks",
  apiaryPattern: "Any",
  lookAlikes: [
    {
      what: "Poisoning, paralysis",
      conditions: ["acute_poisoning", "chronic_paralysis"],
      tellApart: "There the dead are workers.",
    },
  ],
  confirm: "Eyes that meet and a blunt tail: drones.",
  management: ["Nothing to do"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 0.05, spring: 0.7, summer: 3, autumn: 7 },
  frequencies: {
    onset_sudden: { grade: "usual", source: "judgement" },
    mostly_drones: { grade: "typical", source: "judgement" },
    crawlers: { grade: "usual", source: "judgement" },
    dead_heap: { grade: "usual", source: "judgement" },
    guards_reject_bees: { grade: "common", source: "judgement" },
    robbing_signs: { grade: "occasional", source: "judgement" },
    most_colonies: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"drone_eviction">;
