/** Harm from bad feed. */
import type { ConditionFact } from "../fact.ts";

/** Harm from bad feed. */
export const feedToxicity = {
  id: "feed_toxicity",
  term: "Harm from bad feed",
  scientificName: null,
  role: "cause",
  rollUp: null,
  apiaryWide: true,
  stage: ["adult", "colony"],
  season: "After feeding; winter",
  onset: "Days",
  apiaryPattern: "Most of those fed",
  lookAlikes: [
    {
      what: "Dysentery, nosema",
      conditions: ["dysentery_confinement", "nosema_apis"],
      tellApart: "The history of feeding, and the microscope.",
    },
  ],
  confirm: "The history of feeding; the feed itself.",
  management: ["Take the feed away", "Give fresh white syrup or sugar"],
  listing: "none",
  humanHazard: null,
  urgency: "within-a-week",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 0.7, spring: 0.7, summer: 0.3, autumn: 0.5 },
  frequencies: {
    faecal_streaks_front: { grade: "usual", source: "judgement" },
    faeces_inside: { grade: "usual", source: "judgement" },
    bloated_abdomen: { grade: "usual", source: "judgement" },
    crawlers: { grade: "common", source: "judgement" },
    most_colonies: { grade: "usual", source: "judgement" },
    dead_heap: { grade: "common", source: "judgement" },
    slimed_fermenting_honey: { grade: "common", source: "judgement" },
    onset_gradual: { grade: "common", source: "judgement" },
    onset_sudden: { grade: "common", source: "judgement" },
  },
} as const satisfies ConditionFact<"feed_toxicity">;
