/** Ordinary winter losses. */
import type { ConditionFact } from "../fact.ts";

/** Ordinary winter losses. */
export const winterLossesNormal = {
  id: "winter_losses_normal",
  term: "Ordinary winter losses",
  scientificName: null,
  role: "normal",
  rollUp: "normal",
  apiaryWide: false,
  stage: ["adult", "colony"],
  season: "Winter to early spring",
  onset: "Gradual",
  apiaryPattern: "Most or all",
  lookAlikes: [
    {
      what: "Dysentery, nosema",
      conditions: ["dysentery_confinement", "nosema_apis"],
      tellApart: "There the soiling is heavy and bees are swollen.",
    },
  ],
  confirm: "The cluster is alive; dead on floor and snow, spots and some crawlers are ordinary.",
  management: ["Nothing to do; look again"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [{ source: null, at: "experts' judgement, table of conditions", read: "judgement" }],
  priorPercent: { winter: 8, spring: 4, summer: 0.05, autumn: 0.3 },
  frequencies: {
    onset_sudden: { grade: "usual", source: "judgement" },
    dead_heap: { grade: "usual", source: "judgement" },
    dead_pile_floor: { grade: "usual", source: "judgement" },
    faecal_streaks_front: { grade: "usual", source: "judgement" },
    cold_when_seen: { grade: "typical", source: "judgement" },
    crawlers: { grade: "common", source: "judgement" },
    revive_on_warming: { grade: "common", source: "judgement" },
    worn_wings: { grade: "common", source: "judgement" },
    bloated_abdomen: { grade: "common", source: "judgement" },
    low_forager_traffic: { grade: "occasional", source: "judgement" },
    long_confinement: { grade: "common", source: "judgement" },
    most_colonies: { grade: "usual", source: "judgement" },
    single_colony: { grade: "occasional", source: "judgement" },
  },
} as const satisfies ConditionFact<"winter_losses_normal">;
