/** Wilson, Clopper–Pearson and Jeffreys: print, check values, order, coverage and the switch at none or all. */
import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import conover from "../../tests/golden/conover-1999-five-of-25.json" with { type: "json" };
import atZero from "../../tests/golden/one-sided-switch-at-zero.json" with { type: "json" };
import { binomial, clopperPearsonInterval, jeffreysInterval, wilsonInterval } from "./index.ts";

interface Row {
  readonly method: keyof typeof methods;
  readonly x: number;
  readonly n: number;
  readonly level: number;
}
const methods = {
  wilson: wilsonInterval,
  "clopper-pearson": clopperPearsonInterval,
  jeffreys: jeffreysInterval,
};
const golden = JSON.parse(
  readFileSync(new URL("../../tests/golden/numerics-proportion-intervals.json", import.meta.url), "utf8"),
) as {
  readonly printed: readonly (Row & { readonly low: string; readonly high: string })[];
  readonly computed: readonly (Row & { readonly low: number; readonly high: number })[];
};

describe("intervals for a proportion", () => {
  it.each(golden.printed)("[NU9] $method of $x in $n as printed: $low to $high", ({ method, low, high, ...data }) => {
    const interval = methods[method](data);
    const halfUnit = 0.5e-4; // four decimals are printed
    expect(Math.abs(interval.low - Number(low))).toBeLessThanOrEqual(halfUnit);
    expect(Math.abs(interval.high - Number(high))).toBeLessThanOrEqual(halfUnit);
  });

  it.each(golden.computed)(
    "[NU9] $method of $x in $n at $level as computed elsewhere",
    ({ method, low, high, ...data }) => {
      const interval = methods[method](data);
      const rootFinding = 1e-8; // accuracy of the figures compared with
      expect(Math.abs(interval.low - low)).toBeLessThanOrEqual(rootFinding);
      expect(Math.abs(interval.high - high)).toBeLessThanOrEqual(rootFinding);
    },
  );

  it("[NU9] 5 of 25 by Clopper and Pearson as printed by Conover: .068 to .407", () => {
    const { low, high, ...data } = conover;
    const found = clopperPearsonInterval(data);
    expect([found.low, found.high].map((each) => Number(each.toFixed(3)))).toEqual([low, high]);
  });

  it("[NU10] trap: Jeffreys for 0 of 20 ends at 0.11664, not at the one-sided 0.09048 that others switch to", () => {
    const { positive: x, examined: n, level, jeffreys: figures } = atZero;
    const none = jeffreysInterval({ x, n, level });
    expect(none.low).toBe(0);
    expect(none.high).toBeCloseTo(figures.twoSided, 9);
    // The switch: all of 1 − level at the open end, as at level 0.9 with two ends.
    const switched = jeffreysInterval({ x, n, level: 2 * level - 1 });
    expect(Number(switched.high.toFixed(7))).toBe(figures.switched);
    const all = jeffreysInterval({ x: 20, n: 20, level: 0.95 });
    expect(all.high).toBe(1);
    expect(all.low).toBeCloseTo(1 - 0.116638983, 9);
  });

  const data = fc.integer({ min: 1, max: 2000 }).chain((n) =>
    fc.record({
      x: fc.integer({ min: 0, max: n }),
      n: fc.constant(n),
      level: fc.double({ min: 0.5, max: 0.999, noNaN: true }),
    }),
  );

  it.each(Object.entries(methods))(
    "[NU11] %s holds x/n, mirrors, moves up with x and widens with the level",
    (_, method) => {
      fc.assert(
        fc.property(data, ({ x, n, level }) => {
          const { low, high } = method({ x, n, level });
          // Jeffreys holds x/n only above a level that depends on x; at 0.5 and more it does.
          expect(low).toBeLessThanOrEqual((x / n) * (1 + 1e-12));
          expect(high).toBeGreaterThanOrEqual((x / n) * (1 - 1e-12));
          const mirrored = method({ x: n - x, n, level });
          expect(Math.abs(mirrored.low - (1 - high))).toBeLessThanOrEqual(1e-13);
          expect(Math.abs(mirrored.high - (1 - low))).toBeLessThanOrEqual(1e-13);
          if (x < n) {
            const next = method({ x: x + 1, n, level });
            expect(next.low).toBeGreaterThan(low);
            expect(next.high).toBeGreaterThan(high);
          }
          const wider = method({ x, n, level: level + (1 - level) / 2 });
          expect(wider.high - wider.low).toBeGreaterThan(high - low);
        }),
        { seed: 1998, numRuns: 150 },
      );
    },
  );

  it("[NU12] Clopper–Pearson covers the true proportion at least as often as it says", () => {
    for (const n of [5, 30, 59]) {
      const intervals = Array.from({ length: n + 1 }, (_, x) => clopperPearsonInterval({ x, n, level: 0.95 }));
      for (let p = 0.005; p < 1; p += 0.005) {
        const { pmf } = binomial({ n, p });
        const coverage = intervals.reduce((sum, { low, high }, x) => sum + (low <= p && p <= high ? pmf(x) : 0), 0);
        expect(coverage).toBeGreaterThanOrEqual(0.95 - 1e-12);
      }
    }
  });

  it("[NU12] while Jeffreys dips below it: 0.8853 for 5 % among 50", () => {
    const n = 50;
    const p = 0.05;
    const { pmf } = binomial({ n, p });
    const coverage = (method: typeof jeffreysInterval) =>
      Array.from({ length: n + 1 }, (_, x) => x).reduce((sum, x) => {
        const { low, high } = method({ x, n, level: 0.95 });
        return sum + (low <= p && p <= high ? pmf(x) : 0);
      }, 0);
    // Computed elsewhere by the same enumeration: 0.88527885173, and 0.96222382701 for Wilson.
    expect(coverage(jeffreysInterval)).toBeCloseTo(0.88527885173, 9);
    expect(coverage(wilsonInterval)).toBeCloseTo(0.96222382701, 9);
  });
});
