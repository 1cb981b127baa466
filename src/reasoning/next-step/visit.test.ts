/** One visit: its bits together against every combination of results, and what overlaps counted once. */
import { describe, expect, it } from "vitest";
import golden from "../../../tests/golden/noisy-or-network.json" with { type: "json" };
import { printedBelief } from "../../../tests/printed-belief.ts";
import { type FindingId, findings } from "../../knowledge/index.ts";
import type { Belief, Candidate } from "../differential/index.ts";
import { nextSteps, visitMinutes, visitOf } from "./index.ts";

describe("one visit", () => {
  /** The five findings of the reference network under names of five groups, with their minutes. */
  const names = ["crawlers", "spotty_brood", "faecal_streaks_front", "roar_agitated", "hairless_black"] as const;
  const candidatesOf = (absent: (finding: number) => Float64Array, used: readonly number[]): readonly Candidate[] =>
    names.flatMap((id, finding) => {
      if (used.includes(finding)) return [];
      const none = absent(finding);
      return [
        { kind: "look" as const, id, dependsOn: "set" as const, results: () => [none.map((each) => 1 - each), none] },
      ];
    });
  /** Joint information of some looks, by every combination of their results and every set. */
  function together({ probability }: Belief, chosen: readonly Candidate[]): number {
    const results = chosen.map((each) => (each.dependsOn === "set" ? each.results() : []));
    let [all, given] = [0, 0];
    for (let combination = 0; combination < 2 ** chosen.length; combination++) {
      let chance = 0;
      for (const [set, weight] of probability.entries()) {
        const p = results.reduce((product, each, at) => product * (each[(combination >> at) & 1]?.[set] ?? 0), 1);
        chance += weight * p;
        if (p > 0) given -= weight * p * Math.log2(p);
      }
      if (chance > 0) all -= chance * Math.log2(chance);
    }
    return all - given;
  }
  const subsets = <T>(items: readonly T[]): readonly (readonly T[])[] =>
    Array.from({ length: 2 ** items.length }, (_, bits) => items.filter((_item, at) => ((bits >> at) & 1) === 1));
  const minutesOf = (chosen: readonly Candidate[]) =>
    chosen.reduce((sum, { id }) => sum + findings[id as FindingId].minutes, 0);

  it("[NX50] begins with what checks a reported sign, as the next look does", () => {
    const steps = nextSteps({ season: "spring", findings: { crawlers: "present", k_wing: "present" } });
    if (!steps.ok) throw new Error("no steps");
    expect(steps.value.next[0]).toMatchObject({ step: "revive_on_warming", because: "checks-what-was-reported" });
    expect(steps.value.visit.steps[0]?.step).toBe("revive_on_warming");
    expect(steps.value.visit.minutes).toBeLessThanOrEqual(visitMinutes);
  });

  it.each(golden.cases.slice(0, 3))(
    "[NX50] bits of case $id together are those of all combinations, and at least 63 in 100 of the best choice's",
    ({ evidence }) => {
      const { belief, absent } = printedBelief(evidence as unknown as Record<string, number>);
      const open = candidatesOf(absent, Object.keys(evidence).map(Number));
      for (const within of [5, 10, 15]) {
        const visit = visitOf(belief, open, within);
        const chosen = open.filter(({ id }) => visit.steps.some(({ step }) => step === id));
        expect(visit.bits).toBeCloseTo(together(belief, chosen), 9);
        expect(visit.minutes).toBeLessThanOrEqual(within);
        const best = Math.max(
          ...subsets(open)
            .filter((each) => minutesOf(each) <= within)
            .map((each) => together(belief, each)),
        );
        expect(visit.bits).toBeGreaterThanOrEqual((1 - 1 / Math.E) * best - 1e-9);
        expect(visit.bits).toBeLessThanOrEqual(best + 1e-9);
      }
    },
  );

  it("[NX51] of signs that go together one is taken, and what overlaps is counted once", () => {
    const result = nextSteps({ season: "spring", findings: { crawlers: "present" } });
    if (!result.ok) throw new Error("an answer was expected");
    const { visit, next } = result.value;
    const looks = visit.steps
      .filter(({ kind }) => kind === "look")
      .map(({ step }) => findings[step as FindingId].group);
    expect(new Set(looks).size).toBe(looks.length);
    const alone = visit.steps.reduce((sum, { step }) => sum + (next.find((each) => each.step === step)?.bits ?? 0), 0);
    expect(visit.bits).toBeLessThan(alone);
    expect(visit.minutes).toBeLessThanOrEqual(visitMinutes);
  });
});
