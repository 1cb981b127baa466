/** Prior odds by season and region, before anything was looked at. */
import type { Season } from "../units/index.ts";
import { conditions } from "./conditions/index.ts";
import type { RegionAdjustment } from "./fact.ts";
import { type ConditionId, conditionIds } from "./ids.ts";

/**
 * Probability of each condition among referred failing colonies, by season: the printed percents divided by 100.
 * Varroa-endemic temperate region, Apis mellifera. Independent odds p/(1 − p): they need not sum to one. Judgement,
 * anchored on the published occurrence.
 */
export const priors: Readonly<Record<ConditionId, Readonly<Record<Season, number>>>> = Object.fromEntries(
  conditionIds.map((id) => {
    const { winter, spring, summer, autumn } = conditions[id].priorPercent;
    return [id, { winter: winter / 100, spring: spring / 100, summer: summer / 100, autumn: autumn / 100 }];
  }),
) as Record<ConditionId, Record<Season, number>>;

/** Share of referred colonies with nothing wrong at all, where a programme has set none of its own. Judgement. */
export const nothingWrongShare = 0.15;

/**
 * What a region changes in the prior odds. Judgement, except where a condition's absence is cited.
 * A `factor` multiplies the prior; a `winterPercent` says the winter figure of the condition outright.
 */
export const regionAdjustments = {
  "no-varroa": {
    when: "The region has no varroa.",
    conditions: ["varroa_pms", "dwv_overt"],
    change: { kind: "factor", factor: 0.05 },
    thenRenormalise: true,
    citations: [{ source: null, at: "experts' judgement, region adjustments", read: "judgement" }],
  },
  "no-small-hive-beetle": {
    when: "The region has no small hive beetle.",
    conditions: ["small_hive_beetle"],
    change: { kind: "factor", factor: 0.01 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, region adjustments", read: "judgement" }],
  },
  "small-hive-beetle-endemic": {
    when: "Small hive beetle is endemic in a warm region.",
    conditions: ["small_hive_beetle"],
    change: { kind: "factor", factor: 4 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, region adjustments", read: "judgement" }],
  },
  "tropilaelaps-endemic": {
    when: "Tropilaelaps is endemic; it then ranks before varroa.",
    conditions: ["tropilaelaps"],
    change: { kind: "factor", factor: 1000 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, region adjustments", read: "judgement" }],
  },
  "treated-crops-in-bloom": {
    when: "Sown or treated crops bloom near by, and recent spraying was not already scored.",
    conditions: ["acute_poisoning"],
    change: { kind: "factor", factor: 3 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, region adjustments", read: "judgement" }],
  },
  "visited-after-death": {
    when: "The hive was visited after its death: no live bees, so no eggs can be expected.",
    conditions: ["queenless", "drone_layer", "laying_workers", "failing_queen"],
    change: { kind: "factor", factor: 0.5 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, region adjustments", read: "judgement" }],
  },
  "states-of-the-living": {
    when: "The colony is dead: states of a living colony may have been seen before, and do not explain its death.",
    conditions: [
      "brood_break_swarm",
      "chilled_or_old_foragers",
      "drone_eviction",
      "orientation_flight",
      "spring_turnover_normal",
      "winter_brood_pause",
      "winter_losses_normal",
    ],
    change: { kind: "factor", factor: 0.05 },
    thenRenormalise: false,
    citations: [{ source: null, at: "no source", read: "judgement" }],
  },
  "hornet-established": {
    when: "An exotic Vespa is established.",
    conditions: ["hornet_predation"],
    change: { kind: "factor", factor: 20 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, further causes", read: "judgement" }],
  },
  "acarapis-found": {
    when: "Acarapis woodi was found in the region in the last ten years: the printed priors hold (2 % in winter).",
    conditions: ["tracheal_mites"],
    change: { kind: "as-printed" },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, prior by season", read: "judgement" }],
  },
  "acarapis-unknown": {
    when: "Whether Acarapis woodi is in the region is unknown.",
    conditions: ["tracheal_mites"],
    change: { kind: "winter-percent", percent: 0.5 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, prior by season", read: "judgement" }],
  },
  "acarapis-absent": {
    when: "Acarapis woodi is absent (Australia, New Zealand): a finding is exotic, report it.",
    conditions: ["tracheal_mites"],
    change: { kind: "winter-percent", percent: 0 },
    thenRenormalise: false,
    citations: [{ source: "beebook-tracheal", at: "distribution", read: "seen" }],
  },
  "acarapis-cerana-japan": {
    when: "Apis cerana japonica in Japan: ten to forty times the prior, at most 60 percent.",
    conditions: ["tracheal_mites"],
    change: { kind: "factor-range", low: 10, high: 40, atMostPercent: 60 },
    thenRenormalise: false,
    citations: [{ source: null, at: "experts' judgement, reading of the published occurrence", read: "judgement" }],
  },
} as const satisfies Readonly<Record<string, RegionAdjustment>>;
