/** The cheapest allocation against a search of everything. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { allocateByRisk, type CostedStratum } from "./index.ts";

const stratum = fc.record({
  relativeRisk: fc.integer({ min: 1, max: 9 }),
  weight: fc.integer({ min: 1, max: 9 }),
  cost: fc.oneof(fc.integer({ min: 1, max: 6 }), fc.constantFrom(0.75, 1.25, 2.5, Math.PI)),
  cap: fc.integer({ min: 0, max: 14 }),
});

const designs = fc.array(stratum, { minLength: 1, maxLength: 3 }).map((list) => {
  const total = list.reduce((sum, { weight }) => sum + weight, 0);
  return list.map(
    ({ relativeRisk, weight, cost, cap }): Required<CostedStratum> => ({
      relativeRisk,
      share: weight / total,
      cost,
      cap,
    }),
  );
});

/** Cost of the cheapest of all allocations within the caps, by trying every one; Infinity when none reaches. */
function cheapestOfAll(
  strata: readonly Required<CostedStratum>[],
  { chance, target }: { chance: number; target: number },
) {
  const average = strata.reduce((sum, { relativeRisk, share }) => sum + relativeRisk * share, 0);
  let best = Number.POSITIVE_INFINITY;
  const visit = (place: number, missed: number, cost: number): void => {
    if (missed <= (1 - target) * (1 + 1e-10)) best = Math.min(best, cost);
    const here = strata[place];
    if (!here) return;
    const each = 1 - (chance * here.relativeRisk) / average;
    for (let units = 0; units <= here.cap; units += 1)
      visit(place + 1, missed * each ** units, cost + units * here.cost);
  };
  visit(0, 1, 0);
  return best;
}

it("[SV159] no allocation of all is cheaper, and the one given reaches the target within its caps", () => {
  let solved = 0;
  fc.assert(
    fc.property(designs, fc.double({ min: 0.3, max: 0.97, noNaN: true }), (strata, target) => {
      const [designPrevalence, sensitivity] = [0.1, 0.9];
      const found = allocateByRisk({ designPrevalence, sensitivity, target, strata });
      const least = cheapestOfAll(strata, { chance: designPrevalence * sensitivity, target });
      if (!found.ok) {
        expect(found.problems[0]?.code).toBe("target-out-of-reach");
        expect(least).toBe(Number.POSITIVE_INFINITY);
        return;
      }
      solved += 1;
      expect(found.value.cost).toBeCloseTo(least, 9);
      expect(found.value.sensitivity).toBeGreaterThanOrEqual(target - 1e-10);
      for (const [i, units] of found.value.units.entries()) {
        expect(Number.isInteger(units)).toBe(true);
        expect(units).toBeLessThanOrEqual(strata[i]?.cap ?? 0);
      }
    }),
    { seed: 1160, numRuns: 200 },
  );
  expect(solved).toBeGreaterThan(30);
});

it("[SV159] an exact tie costs no unit more; a unit that is certain to tell is enough alone", () => {
  const one = [{ relativeRisk: 1, share: 1, cost: 2 }];
  // 1 − 0.9² is 0.19.
  const tie = allocateByRisk({ designPrevalence: 0.1, sensitivity: 1, target: 0.19, strata: one });
  expect(tie.ok && tie.value.units).toEqual([2]);
  const certain = allocateByRisk({ designPrevalence: 1, sensitivity: 1, target: 0.99, strata: one });
  expect(certain.ok && certain.value).toMatchObject({ units: [1], cost: 2, sensitivity: 1, representativeUnits: 1 });
});

it("[SV159] six strata of hundreds of units are searched in a blink", () => {
  const strata = [9, 7, 5, 3, 2, 1].map((relativeRisk, i) => ({
    relativeRisk,
    share: 1 / 6,
    cost: [3.1, 2.3, 1.9, 1.3, 1.05, 0.7][i] as number,
    cap: [7, 11, 13, 40, 200, 900][i] as number,
  }));
  const start = performance.now();
  const found = allocateByRisk({ designPrevalence: 0.02, sensitivity: 0.85, target: 0.95, strata });
  expect(found.ok).toBe(true);
  expect(performance.now() - start).toBeLessThan(900);
});

it("[SV160] caps too small are refused with the most that can be reached", () => {
  const strata = [{ relativeRisk: 1, share: 1, cost: 1, cap: 3 }];
  const refused = allocateByRisk({ designPrevalence: 0.1, sensitivity: 1, target: 0.95, strata });
  expect(refused.problems[0]).toMatchObject({ code: "target-out-of-reach" });
  expect(refused.problems[0]?.slots.reachable).toBeCloseTo(1 - 0.9 ** 3, 12);
});

it("[SV157] more than all infested is refused, in the allocation", () => {
  const strata = [
    { relativeRisk: 30, share: 0.02, cost: 1 },
    { relativeRisk: 1, share: 0.98, cost: 1 },
  ];
  const refused = allocateByRisk({ designPrevalence: 0.1, sensitivity: 1, target: 0.95, strata });
  expect(refused.problems[0]?.code).toBe("infested-share-above-one");
  expect(() =>
    allocateByRisk({
      designPrevalence: 0.1,
      sensitivity: 1,
      target: 0.95,
      strata: [{ relativeRisk: 1, share: 1, cost: 0 }],
    }),
  ).toThrow("cost must be");
});
