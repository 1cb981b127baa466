/** Rounds of none found: against print, by Bayes' rule itself, and where certainty is contradicted. */
import fc from "fast-check";
import { expect, it } from "vitest";
import golden from "../../../tests/golden/martin-2007-surveillance.json" with { type: "json" };
import {
  adjustedRisks,
  type FreedomDesign,
  type FreedomRound,
  freedomEquilibrium,
  freedomSeries,
  scenarioTree,
  sensitivityForTarget,
  twoStageFinite,
} from "./index.ts";

const share = fc.double({ min: 0.001, max: 0.999, noNaN: true });

function series(design: FreedomDesign): readonly FreedomRound[] {
  const rows = freedomSeries(design);
  if (!rows.ok) throw new Error(rows.problems[0]?.code);
  return rows.value;
}

it.each(golden.monthly)("[SV150] a year of monthly rounds at $sensitivity gives $after, as printed", (row) => {
  const { sensitivity, after } = row;
  const rows = series({
    priorFree: 0.5,
    sensitivities: new Array<number>(12).fill(sensitivity),
    introduction: 0,
    priorAt: "first-round",
  });
  expect(Math.abs((rows.at(-1)?.after ?? 0) - after)).toBeLessThan(0.01);
});

it("[SV150] without introduction rounds multiply the odds; with it each is Bayes' rule on what came in", () => {
  fc.assert(
    fc.property(
      share,
      fc.array(share, { minLength: 1, maxLength: 8 }),
      share,
      (priorFree, sensitivities, introduction) => {
        const still = series({ priorFree, sensitivities, introduction: 0, priorAt: "first-round" });
        const missed = sensitivities.reduce((product, each) => product * (1 - each), 1);
        const odds = (priorFree / (1 - priorFree)) * (1 / missed);
        expect((still.at(-1)?.after ?? 0) / (odds / (1 + odds))).toBeCloseTo(1, 9);
        let free = priorFree;
        const moving = series({ priorFree, sensitivities, introduction, priorAt: "first-round" });
        for (const [i, { before, after, afterIntroduction }] of moving.entries()) {
          expect(before).toBeCloseTo(free, 12);
          const none = free + (1 - free) * (1 - (sensitivities[i] as number));
          expect(after).toBeCloseTo(free / none, 12);
          free = after * (1 - introduction);
          expect(afterIntroduction).toBeCloseTo(free, 12);
        }
      },
    ),
    { seed: 2007, numRuns: 200 },
  );
});

it("[SV151] trap: a prior of the period before is discounted once more, and the two end apart", () => {
  const design = { priorFree: 0.5, sensitivities: new Array<number>(12).fill(0.5), introduction: 0.01 } as const;
  const [holds, before] = [
    series({ ...design, priorAt: "first-round" }),
    series({ ...design, priorAt: "period-before" }),
  ];
  expect(holds[0]?.before).toBe(0.5);
  expect(before[0]?.before).toBeCloseTo(0.495, 12);
  expect(holds.at(-1)?.after).toBeCloseTo(0.98963731322, 11);
  expect(before.at(-1)?.after).toBeCloseTo(0.98963191815, 11);
});

it("[SV151] introductions by round are those between that round and the next", () => {
  const rows = series({ priorFree: 0.5, sensitivities: [0.5, 0.5], introduction: [0.2, 0.7], priorAt: "first-round" });
  expect(rows[1]?.before).toBeCloseTo((2 / 3) * 0.8, 12);
  expect(rows[1]?.afterIntroduction).toBeCloseTo((rows[1]?.after ?? 0) * 0.3, 12);
  expect(() => series({ priorFree: 0.5, sensitivities: [0.5], introduction: [], priorAt: "first-round" })).toThrow(
    "introduction must be",
  );
});

it("[SV152] one more round changes nothing once it has settled", () => {
  fc.assert(
    fc.property(share, share, (sensitivity, introduction) => {
      const { before, after } = freedomEquilibrium({ sensitivity, introduction });
      const [next] = series({ priorFree: before, sensitivities: [sensitivity], introduction, priorAt: "first-round" });
      expect(next?.after).toBeCloseTo(after, 12);
      expect(next?.afterIntroduction).toBeCloseTo(before, 12);
      if (introduction < sensitivity) expect(before).toBeGreaterThan(0);
    }),
    { seed: 2008, numRuns: 300 },
  );
  expect(freedomEquilibrium({ sensitivity: 0.1, introduction: 0.1 })).toEqual({ before: 0, after: 0 });
  expect(freedomEquilibrium({ sensitivity: 0.1, introduction: 0 })).toEqual({ before: 1, after: 1 });
  expect(freedomEquilibrium({ sensitivity: 0, introduction: 0.1 })).toEqual({ before: 0, after: 0 });
  expect(() => freedomEquilibrium({ sensitivity: 0, introduction: 0 })).toThrow("sensitivity must be");
});

it("[SV153] a round with the sensitivity needed reaches the target exactly", () => {
  fc.assert(
    fc.property(share, share, share, (priorFree, introduction, target) => {
      const { raw, needed, priorAfterIntroduction } = sensitivityForTarget({ priorFree, introduction, target });
      expect(needed).toBe(Math.max(0, raw));
      if (raw <= 0) {
        expect(priorAfterIntroduction).toBeGreaterThanOrEqual(target - 1e-12);
        return;
      }
      const [row] = series({ priorFree, sensitivities: [needed], introduction, priorAt: "period-before" });
      expect(row?.after).toBeCloseTo(target, 9);
    }),
    { seed: 2009, numRuns: 300 },
  );
  expect(() => sensitivityForTarget({ priorFree: 1, introduction: 0, target: 0.95 })).toThrow("priorFree must be");
});

it("[SV154] surely infested, surely found, none found: refused", () => {
  const refused = freedomSeries({ priorFree: 0, sensitivities: [0.5, 1], introduction: 0, priorAt: "first-round" });
  expect(refused.problems[0]).toMatchObject({ code: "zero-contradicts-certainty", slots: { round: 2 } });
});

it("[SV155] adjusted risks as printed; their average over all is 1; shares must make 1", () => {
  const { relativeRisks, shares, risks } = golden.adjusted;
  const strata = relativeRisks.map((relativeRisk, i) => ({ relativeRisk, share: shares[i] as number }));
  const found = adjustedRisks(strata);
  if (!found.ok) throw new Error("refused");
  for (const [i, risk] of risks.entries()) expect(found.value[i]).toBeCloseTo(risk, 1);
  expect(found.value.reduce((sum, risk, i) => sum + risk * (shares[i] as number), 0)).toBeCloseTo(1, 12);
  expect(adjustedRisks([{ relativeRisk: 2, share: 0.5 }]).problems[0]?.code).toBe("shares-not-whole");
  expect(() => adjustedRisks([])).toThrow("strata must be");
});

it("[SV156] a tree misses the product of what its clusters miss, and says that they are taken as independent", () => {
  const strata = [
    { relativeRisk: 3, share: 0.25 },
    { relativeRisk: 1, share: 0.75 },
  ];
  const tree = scenarioTree({
    clusterPrevalence: 0.1,
    unitPrevalence: 0.2,
    strata,
    clusters: [
      { stratum: 0, units: 2, sensitivity: 0.5 },
      { stratum: 1, units: 1, sensitivity: 1 },
      { stratum: 1, units: 0, sensitivity: 1 },
    ],
  });
  if (!tree.ok) throw new Error("refused");
  // Average risk 1.5, so EPI is 0.2 and 0.0667; SeH 1 − 0.9² and 0.2.
  const [first, second] = [1 - 0.19 * 0.2, 1 - 0.2 * (0.1 / 1.5)];
  expect(tree.value.byStratum[0]).toBeCloseTo(1 - first, 12);
  expect(tree.value.sensitivity).toBeCloseTo(1 - first * second, 12);
  expect(tree.problems[0]?.code).toBe("parts-taken-as-independent");
});

it("[SV157] more than all infested is refused, in the tree", () => {
  const strata = [
    { relativeRisk: 30, share: 0.02 },
    { relativeRisk: 1, share: 0.98 },
  ];
  const refused = scenarioTree({ clusterPrevalence: 0.1, unitPrevalence: 0.1, strata, clusters: [] });
  expect(refused.problems[0]).toMatchObject({ code: "infested-share-above-one", slots: { stratum: 1 } });
});

/** Every way to place the infested among the clusters; the first ones are tested. */
function missedByPlacing(clusters: number, infested: number, sensitivities: readonly number[]): number {
  let [ways, missed] = [0, 0];
  for (let bits = 0; bits < 2 ** clusters; bits += 1) {
    const places = Array.from({ length: clusters }, (_, i) => (bits >> i) & 1);
    if (places.reduce((sum, each) => sum + each, 0) !== infested) continue;
    ways += 1;
    missed += sensitivities.reduce((product, each, i) => product * (places[i] ? 1 - each : 1), 1);
  }
  return missed / ways;
}

it("[SV158] few clusters, each with its own sensitivity: the sum over all placings", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 1, max: 9 }),
      fc.integer({ min: 1, max: 9 }),
      fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 9 }),
      (clusters, infested, sensitivities) => {
        const found = twoStageFinite({ clusters, infested, sensitivities });
        if (infested > clusters || sensitivities.length > clusters) {
          expect(found.problems[0]?.code).toMatch(/^more-(infested|tested)-than-places$/);
          return;
        }
        if (!found.ok) throw new Error("refused");
        expect(found.value.exact).toBeCloseTo(1 - missedByPlacing(clusters, infested, sensitivities), 12);
      },
    ),
    { seed: 1998, numRuns: 150 },
  );
  expect(twoStageFinite({ clusters: 5, infested: 1, sensitivities: [] }).problems[0]?.code).toBe("nothing-tested");
  // A test that finds nothing changes nothing, and no rounding makes a chance below 0 of it.
  const exact = (sensitivities: readonly number[]) => {
    const round = twoStageFinite({ clusters: 5000, infested: 700, sensitivities });
    return round.ok ? round.value.exact : Number.NaN;
  };
  expect(exact([0.3, 0, 0.8, 0])).toBe(exact([0.3, 0.8]));
  expect(exact(Array(5000).fill(0))).toBe(0);
});
