/** Changes that are taken and may not be what was meant: what is noted of them. */
import { describe, expect, it } from "vitest";
import {
  changedEvidence,
  type EvidenceChange,
  evidenceSeasons,
  hasEffect,
  publishedEvidence,
} from "../../knowledge/index.ts";
import type { Season } from "../../units/index.ts";

const under = (...changes: readonly EvidenceChange[]) =>
  changedEvidence(
    publishedEvidence,
    changes.map((change) => ({
      ...{ change, entry: "entry-1", author: "reader 1", on: "2026-03-02" },
      citation: { source: null, at: "own numbers, invented for this test", read: "judgement" },
    })),
  );
const own: EvidenceChange = {
  ...{ what: "condition", condition: "own_x", term: "t", role: "cause", rollUp: null, urgency: "next-season" },
  prior: { winter: 0.1, spring: 0.1, summer: 0.1, autumn: 0.1 },
};

describe("notes on changes that were taken", () => {
  it("[DX155] a share that two changes set: the one of the season holds, and it is said", () => {
    const { evidence, problems } = under(
      own,
      { what: "prior", condition: "own_x", season: "spring", rate: 0.2 },
      { what: "frequency", condition: "own_x", finding: "crawlers", rate: 0.5, suppresses: false },
    );
    expect(evidence.priors.own_x?.spring.value).toBe(0.2);
    expect(problems).toMatchObject([
      {
        code: "evidence-said-twice",
        severity: "noted",
        slots: { place: "prior own_x spring", other: "condition own_x" },
      },
    ]);
  });

  it("[DX155] a condition that nothing can speak for", () => {
    expect(under(own).problems).toMatchObject([{ code: "evidence-without-pairs", slots: { id: "own_x" } }]);
  });

  it("[DX155] a pair at or below the healthy rate", () => {
    const seldom = { what: "frequency", condition: "queenless", finding: "roar_agitated", suppresses: false } as const;
    expect(under({ ...seldom, rate: 0.5 }).problems).toEqual([]);
    const { evidence, problems } = under({ ...seldom, rate: 0.001 });
    expect(hasEffect(evidence, { condition: "queenless", finding: "roar_agitated", season: "spring" })).toBe(false);
    expect(problems).toMatchObject([
      {
        code: "evidence-without-effect",
        slots: { finding: "roar_agitated", conditions: "queenless", seasons: "winter, spring, summer, autumn" },
      },
    ]);
    const never = { ...seldom, condition: "own_x", rate: 0.001 };
    expect(under(own, never).problems).toMatchObject([
      { code: "evidence-without-effect", slots: { conditions: "own_x" } },
    ]);
  });

  it("[DX156] a queen that lays well: no condition brings it, some take it away, whatever the season", () => {
    const of = (condition: string, season: Season) =>
      hasEffect(publishedEvidence, { condition, finding: "normal_eggs_and_queen", season });
    const { frequencies, conditionIds, healthy } = publishedEvidence;
    for (const season of evidenceSeasons)
      for (const condition of conditionIds) {
        const pair = frequencies[condition]?.normal_eggs_and_queen;
        const takesAway = pair?.suppresses === true && pair.value < (healthy[season].normal_eggs_and_queen?.value ?? 0);
        expect(`${condition} ${of(condition, season)}`).toBe(`${condition} ${takesAway}`);
      }
    expect(of("queenless", "winter")).toBe(true);
    // The grade of a failing queen, judged in the season of brood, is above what well colonies show in winter.
    expect(healthy.winter.normal_eggs_and_queen?.value).toBeLessThan(
      frequencies.failing_queen?.normal_eggs_and_queen?.value ?? 0,
    );
  });

  it("[DX155] a healthy rate that rises takes out every pair below it, in its season", () => {
    const { problems } = under({ what: "healthy-rate", finding: "roar_agitated", season: "spring", rate: 0.7 });
    const lost = publishedEvidence.conditionIds.filter((condition) => {
      const value = publishedEvidence.frequencies[condition]?.roar_agitated?.value ?? 0;
      const healthy = publishedEvidence.healthy.spring.roar_agitated?.value ?? 1;
      return value > healthy && value <= 0.7;
    });
    expect(lost).toContain("queenless");
    expect(problems).toMatchObject([
      { code: "evidence-without-effect", slots: { conditions: lost.join(", "), seasons: "spring" } },
    ]);
  });
});
