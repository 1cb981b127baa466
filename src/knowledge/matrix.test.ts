/** The matrix of conditions and findings against rows typed from the evidence. */
import { describe, expect, it } from "vitest";
import type { Frequency } from "./index.ts";
import { conditionIds, conditions, findingIds, findings, gradeProbability, healthyRates, priors } from "./index.ts";

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
