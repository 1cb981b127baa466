/** From which level on an agent that is present explains signs. */
import { judged, seen } from "./cite.ts";
import type { Citations } from "./fact.ts";
import type { ConditionId } from "./ids.ts";

/** Bands of a measured level. Below `backgroundBelow` present without harm; from `clinicalFrom` on it explains signs. */
export interface LevelFact {
  readonly condition: ConditionId;
  readonly unit: string;
  readonly backgroundBelow: number | null;
  readonly clinicalFrom: number | null;
  /** What makes it clinical beside the number. */
  readonly or: string | null;
  readonly note: string | null;
  readonly citations: Citations;
}

const bands = judged("levels");

/** Levels by condition. Only the clinical level explains signs. */
export const levels = {
  varroa_pms: {
    condition: "varroa_pms",
    unit: "mites per 100 bees",
    backgroundBelow: 3,
    clinicalFrom: 5,
    or: "signs of mites and viruses in the brood",
    note: null,
    citations: [bands],
  },
  tracheal_mites: {
    condition: "tracheal_mites",
    unit: "percent of bees infested",
    backgroundBelow: 15,
    clinicalFrom: 30,
    or: null,
    note: "From 15 to 30 the answer is grey. The season matters.",
    citations: [bands],
  },
  chronic_paralysis: {
    condition: "chronic_paralysis",
    unit: "copies",
    backgroundBelow: 1e7,
    clinicalFrom: 1e7,
    or: null,
    note: "Only the highest titre class speaks for disease.",
    citations: [bands, seen("danish-virus-2015", "classes")],
  },
  american_foulbrood: {
    condition: "american_foulbrood",
    unit: "spores",
    backgroundBelow: null,
    clinicalFrom: null,
    or: "signs in the brood",
    note: "Spores without signs are background: report them.",
    citations: [bands],
  },
} as const satisfies { readonly [Id in ConditionId]?: LevelFact & { readonly condition: Id } };
