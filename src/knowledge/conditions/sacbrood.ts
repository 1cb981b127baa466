/** Sacbrood. */
import type { ConditionFact } from "../fact.ts";

/** Sacbrood (Sacbrood virus). */
export const sacbrood = {
  id: "sacbrood",
  term: "Sacbrood",
  scientificName: "Sacbrood virus",
  role: "cause",
  rollUp: "brood_disease",
  apiaryWide: false,
  stage: ["brood"],
  season: "Spring",
  onset: "Weeks; ends by itself",
  apiaryPattern: "One to few",
  lookAlikes: [
    {
      what: "European foulbrood, early chalkbrood",
      conditions: ["european_foulbrood", "chalkbrood"],
      tellApart: "Sacbrood lifts out whole with a raised dark head.",
    },
  ],
  confirm: "The sign; RT-PCR.",
  management: ["Requeen", "A brood break"],
  listing: "none",
  humanHazard: null,
  urgency: "next-season",
  citations: [
    { source: "arkansas-sacbrood", at: "text", read: "seen" },
    { source: null, at: "experts' judgement, table of conditions", read: "judgement" },
  ],
  priorPercent: { winter: 0.1, spring: 1.95, summer: 1.48, autumn: 0.3 },
  frequencies: {
    onset_sudden: { grade: "occasional", source: "judgement" },
    onset_gradual: { grade: "usual", source: "judgement" },
    single_colony: { grade: "usual", source: "judgement" },
    most_colonies: { grade: "occasional", source: "judgement" },
    sac_larva: { grade: "typical", source: "arkansas-sacbrood" },
    spotty_brood: { grade: "common", source: "arkansas-sacbrood" },
    sunken_perforated_caps: { grade: "common", source: "judgement" },
    dearth_or_foul_weather: { grade: "common", source: "judgement" },
    weak_for_season: { grade: "occasional", source: "judgement" },
    normal_eggs_and_queen: { grade: "typical", source: "judgement" },
    ropy_thread: { grade: "never", suppresses: true, source: "judgement" },
    twisted_discoloured_larva: { grade: "occasional", source: "judgement" },
    foul_odour: { grade: "rare", source: "judgement" },
    hard_flat_scale: { grade: "rare", source: "judgement" },
    grey_slumped_larva: { grade: "occasional", source: "judgement" },
    crawlers: { grade: "rare", source: "judgement" },
    dead_heap: { grade: "rare", source: "judgement" },
  },
} as const satisfies ConditionFact<"sacbrood">;
