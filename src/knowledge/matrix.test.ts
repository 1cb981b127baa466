/** The matrix of conditions and findings against rows typed from the evidence. */
import { describe, expect, it } from "vitest";
import type { Frequency } from "./index.ts";
import {
  conditionIds,
  conditions,
  findingIds,
  findings,
  gradeProbability,
  healthyRates,
  priors,
  sources,
} from "./index.ts";

const pairs = conditionIds.flatMap((condition) =>
  Object.entries(conditions[condition].frequencies as Readonly<Record<string, Frequency>>).map(
    ([finding, frequency]) => ({ condition, finding, ...frequency }),
  ),
);
const healthy = Object.values(healthyRates).flatMap((rates) => Object.entries(rates));

describe("conditions and findings", () => {
  it("[KN1] are 45 and 83, each under its own id, eleven of them circumstances", () => {
    expect(conditionIds.length).toBe(45);
    expect(findingIds.length).toBe(83);
    for (const id of conditionIds) expect(conditions[id].id).toBe(id);
    for (const id of findingIds) expect(findings[id].id).toBe(id);
    expect(Object.keys(conditions).sort()).toEqual([...conditionIds].sort());
    expect(Object.keys(findings).sort()).toEqual([...findingIds].sort());
    expect(findingIds.filter((id) => findings[id].kind === "circumstance").length).toBe(11);
  });

  it("[KN2] are tied by 853 pairs and 332 healthy rates; 13 suppress; 1091 rest on judgement alone", () => {
    expect(pairs.length).toBe(853);
    expect(healthy.length).toBe(332);
    expect(pairs.length + healthy.length).toBe(1185);
    expect(pairs.filter((pair) => pair.suppresses).length).toBe(13);
    expect(pairs.filter((pair) => pair.source === "judgement").length + healthy.length).toBe(1091);
  });

  it.each([
    ["tracheal_mites", "k_wing", "common", "edis-in1072", false],
    ["tracheal_mites", "weak_for_season", "typical", "aphis-facts-23", false],
    ["tracheal_mites", "onset_sudden", "rare", "judgement", false],
    ["queenless", "normal_eggs_and_queen", "never", "judgement", true],
    ["unexplained_depopulation", "dead_heap", "rare", "vanengelsdorp-2009", true],
    ["sacbrood", "ropy_thread", "never", "judgement", true],
  ] as const)("[KN3] %s with %s is %s (%s)", (condition, finding, grade, source, suppresses) => {
    const pair = pairs.find((each) => each.condition === condition && each.finding === finding);
    expect(pair).toMatchObject({ grade, source });
    expect(pair?.suppresses ?? false).toBe(suppresses);
  });

  it("[KN3] well colonies have crawlers now and then in winter, rarely in summer", () => {
    expect(healthyRates.winter.crawlers).toBe("occasional");
    expect(healthyRates.summer.crawlers).toBe("rare");
  });

  it("[KN3] condition by condition there are as many pairs as in the evidence", () => {
    const counted = Object.fromEntries(
      conditionIds.map((id) => [id, pairs.filter((pair) => pair.condition === id).length]),
    );
    expect(counted).toEqual({
      tracheal_mites: 31,
      varroa_pms: 47,
      dwv_overt: 25,
      chronic_paralysis: 28,
      acute_virus_complex: 24,
      nosema_ceranae: 20,
      nosema_apis: 24,
      amoeba: 18,
      dysentery_confinement: 21,
      starvation: 32,
      pollen_dearth: 19,
      acute_poisoning: 31,
      chronic_exposure: 23,
      plant_toxicity: 22,
      queenless: 25,
      drone_layer: 18,
      laying_workers: 20,
      small_late_colony: 22,
      american_foulbrood: 24,
      european_foulbrood: 22,
      sacbrood: 17,
      chalkbrood: 20,
      stonebrood: 13,
      chilled_brood: 24,
      small_hive_beetle: 18,
      wax_moth: 20,
      tropilaelaps: 20,
      robbing: 21,
      mouse_disturbance: 15,
      fly_parasitoids: 18,
      overheating_suffocation: 19,
      winter_damp: 19,
      brood_break_swarm: 21,
      unexplained_depopulation: 21,
      winter_losses_normal: 13,
      chilled_or_old_foragers: 8,
      drone_eviction: 7,
      orientation_flight: 4,
      spring_turnover_normal: 10,
      winter_brood_pause: 4,
      treatment_injury: 15,
      failing_queen: 8,
      brood_nest_congested: 6,
      hornet_predation: 7,
      feed_toxicity: 9,
    });
  });

  it("[KN3] grade by grade and source by source there are as many as in the evidence", () => {
    const count = (words: readonly string[]) =>
      Object.fromEntries([...new Set(words)].map((word) => [word, words.filter((each) => each === word).length]));
    expect(count(pairs.map((pair) => pair.grade))).toEqual({
      never: 8,
      rare: 179,
      occasional: 182,
      common: 240,
      usual: 174,
      typical: 70,
    });
    expect(count(Object.values(healthyRates.winter))).toEqual({
      never: 6,
      rare: 50,
      occasional: 12,
      common: 14,
      typical: 1,
    });
    expect(count(Object.values(healthyRates.spring))).toEqual({
      never: 4,
      rare: 41,
      occasional: 24,
      common: 12,
      usual: 1,
      typical: 1,
    });
    expect(count(Object.values(healthyRates.summer))).toEqual({
      never: 6,
      rare: 40,
      occasional: 26,
      common: 9,
      usual: 1,
      typical: 1,
    });
    expect(count(Object.values(healthyRates.autumn))).toEqual({
      never: 4,
      rare: 44,
      occasional: 22,
      common: 11,
      usual: 1,
      typical: 1,
    });
    const evidenceIds = pairs.flatMap(({ source }) =>
      source === "judgement" ? [] : [sources[source].evidenceId ?? source],
    );
    expect(count(evidenceIds)).toEqual({
      S02: 2,
      S06: 3,
      S25: 2,
      S26: 5,
      S27: 3,
      S30: 2,
      S32: 1,
      S37: 7,
      S38: 3,
      S39: 3,
      S40: 3,
      S41: 11,
      S42: 5,
      S43: 10,
      S45: 2,
      S47: 2,
      S48: 1,
      S49: 6,
      S53: 10,
      S56: 6,
      S59: 3,
      S64: 1,
      S66: 3,
    });
  });

  it("[KN4] words of frequency mean the six printed probabilities", () => {
    expect(gradeProbability).toEqual({
      never: 0.005,
      rare: 0.02,
      occasional: 0.1,
      common: 0.35,
      usual: 0.65,
      typical: 0.9,
    });
  });

  it("[KN5] every condition has four priors between 0 and 1, some typed from the evidence", () => {
    for (const id of conditionIds)
      for (const season of ["winter", "spring", "summer", "autumn"] as const) {
        expect(priors[id][season]).toBeGreaterThan(0);
        expect(priors[id][season]).toBeLessThan(1);
      }
    expect(conditions.tracheal_mites.priorPercent).toEqual({ winter: 1.99, spring: 1.95, summer: 0.3, autumn: 0.69 });
    expect(conditions.varroa_pms.priorPercent).toEqual({ winter: 33.82, spring: 15.64, summer: 17.81, autumn: 35.6 });
    expect(conditions.feed_toxicity.priorPercent).toEqual({ winter: 0.7, spring: 0.7, summer: 0.3, autumn: 0.5 });
    expect(priors.queenless.winter).toBeCloseTo(0.07, 12);
  });

  it("[KN6] the three exclusive pairs name each other", () => {
    const tied = findingIds.filter((id) => findings[id].exclusiveWith !== undefined);
    expect(tied.length).toBe(6);
    for (const id of tied) {
      const other = findings[id].exclusiveWith;
      expect(other && findings[other].exclusiveWith).toBe(id);
    }
  });
});
