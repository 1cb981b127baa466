/** Laws that every estimator of a share, x of n, must obey; a new one gets them all by one call. */
import { expect, it } from "vitest";
import type { Estimate, Result } from "../../src/units/index.ts";

export interface EstimatorUnderLaw {
  /** Stands at the head of each test's name: the rule ids, then the method. */
  readonly name: string;
  readonly estimate: (data: { readonly x: number; readonly n: number; readonly level: number }) => Result<Estimate>;
  /** Always: never below the level, whatever the truth. On average: close to it over all truths, or not below it. */
  readonly coverage: "always" | "on average" | "not below on average";
  /** Ends that left 0 to 1 are cut, so that several counts may share an end. */
  readonly isCut?: true;
}

const estimateOf = (result: Result<Estimate>): Estimate => {
  if (!result.ok) throw new Error(`refused: ${result.problems.map((each) => each.code).join(", ")}`);
  return result.value;
};

/** Registers the laws as tests. */
export function obeysEstimatorLaws({ name, estimate, coverage, isCut }: EstimatorUnderLaw): void {
  const at = (x: number, n: number, level = 0.95) => estimateOf(estimate({ x, n, level }));
  const sizes = [1, 2, 5, 12, 50, 333];

  it(`${name}: the value is x of n, inside the interval, inside 0 to 1`, () => {
    for (const n of sizes) {
      for (let x = 0; x <= n; x++) {
        const { value, low, high, n: counted, level } = at(x, n);
        expect(value).toBe(x / n);
        expect([counted, level]).toEqual([n, 0.95]);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(value);
        expect(high).toBeGreaterThanOrEqual(value);
        expect(high).toBeLessThanOrEqual(1);
      }
    }
  });

  it(`${name}: what is left is mirrored: low of x is 1 − high of n − x`, () => {
    for (const n of sizes) for (let x = 0; x <= n; x++) expect(at(x, n).low).toBeCloseTo(1 - at(n - x, n).high, 10);
  });

  it(`${name}: more positives move both ends up`, () => {
    for (const n of sizes) {
      for (let x = 1; x <= n; x++) {
        if (isCut && at(x, n).low === 0) expect(at(x - 1, n).low).toBe(0);
        else expect(at(x, n).low).toBeGreaterThan(at(x - 1, n).low);
        if (isCut && at(x - 1, n).high === 1) expect(at(x, n).high).toBe(1);
        else expect(at(x, n).high).toBeGreaterThan(at(x - 1, n).high - (x === n ? 1e-15 : 0));
      }
    }
  });

  it(`${name}: a higher level widens, more bees at the same share narrow`, () => {
    for (const [x, n] of [
      [0, 10],
      [1, 20],
      [5, 25],
      [17, 50],
    ] as const) {
      const width = (k: number, level: number) => at(x * k, n * k, level).high - at(x * k, n * k, level).low;
      expect(width(1, 0.99)).toBeGreaterThan(width(1, 0.95));
      expect(width(1, 0.95)).toBeGreaterThan(width(1, 0.5));
      expect(width(4, 0.95)).toBeLessThan(width(1, 0.95));
    }
  });

  it(`${name}: coverage, summed exactly, holds its promise of 95 %: ${coverage}`, () => {
    const n = 40;
    const all = Array.from({ length: n + 1 }, (_, x) => at(x, n));
    const coverages = Array.from({ length: 199 }, (_, i) => {
      const p = (i + 1) / 200;
      let [covered, chance] = [0, (1 - p) ** n];
      for (let x = 0; x <= n; x++) {
        const { low, high } = all[x] as Estimate;
        if (low <= p && p <= high) covered += chance;
        chance *= ((n - x) / (x + 1)) * (p / (1 - p));
      }
      return covered;
    });
    const mean = coverages.reduce((sum, each) => sum + each, 0) / coverages.length;
    if (coverage === "always") expect(Math.min(...coverages)).toBeGreaterThanOrEqual(0.95 - 1e-12);
    else if (coverage === "on average") expect(Math.abs(mean - 0.95)).toBeLessThan(0.01);
    else expect(mean).toBeGreaterThanOrEqual(0.95);
  });
}
