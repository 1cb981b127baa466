/** The further intervals of a proportion: print, mirror and order, Blaker's exact ends and coverage. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import printed from "../../tests/golden/newcombe-1998-table-1-more.json" with { type: "json" };
import atZero from "../../tests/golden/one-sided-switch-at-zero.json" with { type: "json" };
import {
  agrestiCoullInterval,
  binomial,
  blakerAcceptability,
  blakerInterval,
  clopperPearsonInterval,
  intervalCoverage,
  jeffreysInterval,
  likelihoodRatioInterval,
  midPInterval,
  type ProportionData,
  wilsonCorrectedInterval,
  wilsonInterval,
} from "./index.ts";

const methods = {
  "wilson-corrected": wilsonCorrectedInterval,
  "mid-p": midPInterval,
  "likelihood-ratio": likelihoodRatioInterval,
  "agresti-coull": agrestiCoullInterval,
  blaker: blakerInterval,
};

const anyCounts = (most: number) =>
  fc.integer({ min: 1, max: most }).chain((n) =>
    fc.record({
      x: fc.integer({ min: 0, max: n }),
      n: fc.constant(n),
      level: fc.double({ min: 0.5, max: 0.999, noNaN: true }),
    }),
  );

describe("further intervals for a proportion", () => {
  it.each(printed.intervals)("[NU101] $method of $x in $n as printed", ({ method, low, high, x, n }) => {
    const interval = methods[method as keyof typeof methods]({ x, n, level: 0.95 });
    const halfUnit = 0.5e-4; // four decimals are printed
    expect(Math.abs(interval.low - low)).toBeLessThanOrEqual(halfUnit);
    expect(Math.abs(interval.high - high)).toBeLessThanOrEqual(halfUnit);
  });

  it("[NU101] 3 in 50 as computed elsewhere", () => {
    // own Python with scipy 1.10.1, accurate to 1e-8
    const computed = {
      "wilson-corrected": [0.015624593980681233, 0.17541873734199234],
      "mid-p": [0.015487252721315278, 0.15463784443065567],
      "likelihood-ratio": [0.01526809028785816, 0.1482733314069154],
      "agresti-coull": [0.014420713926101836, 0.16836517331125384],
      blaker: [0.016551859189231355, 0.16375989412805547],
    };
    for (const [method, [low, high]] of Object.entries(computed)) {
      const interval = methods[method as keyof typeof methods]({ x: 3, n: 50, level: 0.95 });
      expect(Math.abs(interval.low - (low as number)), method).toBeLessThanOrEqual(1e-8);
      expect(Math.abs(interval.high - (high as number)), method).toBeLessThanOrEqual(1e-8);
    }
  });

  it("[NU102] trap: Agresti–Coull for 0 of 20 ends at 0.18981, not at the one-sided 0.14129 that others switch to", () => {
    const { positive: x, examined: n, level, agrestiCoull: figures } = atZero;
    const none = agrestiCoullInterval({ x, n, level });
    expect(none.high).toBeCloseTo(figures.twoSided, 9);
    const switched = agrestiCoullInterval({ x, n, level: 2 * level - 1 });
    expect(Number(switched.high.toFixed(7))).toBe(figures.switched);
    expect(none.low).toBe(0);
    expect(none.rawLow).toBeCloseTo(-0.02868440249, 10);
    const all = agrestiCoullInterval({ x: 20, n: 20, level: 0.95 });
    expect(all.high).toBe(1);
    expect(all.rawHigh).toBeCloseTo(1.02868440249, 10);
  });

  it.each(Object.entries(methods))("[NU103] %s mirrors, moves up with x, never narrows with the level", (_, method) => {
    fc.assert(
      fc.property(anyCounts(120), ({ x, n, level }) => {
        const { low, high } = method({ x, n, level });
        expect(low).toBeGreaterThanOrEqual(0);
        expect(high).toBeLessThanOrEqual(1);
        expect(low).toBeLessThanOrEqual((x / n) * (1 + 1e-12));
        expect(high).toBeGreaterThanOrEqual((x / n) * (1 - 1e-12));
        const mirrored = method({ x: n - x, n, level });
        expect(Math.abs(mirrored.low - (1 - high))).toBeLessThanOrEqual(1e-13);
        if (x < n) {
          const next = method({ x: x + 1, n, level });
          expect(next.low).toBeGreaterThanOrEqual(low);
          expect(next.high).toBeGreaterThanOrEqual(high);
        }
        const wider = method({ x, n, level: level + (1 - level) / 2 });
        expect(wider.low).toBeLessThanOrEqual(low + 1e-15);
        expect(wider.high).toBeGreaterThanOrEqual(high - 1e-15);
      }),
      { seed: 2001, numRuns: 60 },
    );
  });

  it("[NU104] Blaker: just outside is not accepted, the end or just inside it is", () => {
    fc.assert(
      fc.property(anyCounts(80), ({ x, n, level }) => {
        const { low, high } = blakerInterval({ x, n, level });
        const at = (p: number) => blakerAcceptability({ x, n, p });
        const step = 1e-11; // far below the customary step of 1e-4; above what one root may err by
        if (low > 2 * step) expect(at(low - step)).toBeLessThan(1 - level);
        if (high < 1 - 2 * step) expect(at(high + step)).toBeLessThan(1 - level);
        // A jump is accepted from its foot on, a crossing just behind it; both have the slope of a tail.
        expect(at(Math.min(1, low + step))).toBeGreaterThanOrEqual(1 - level - 1e-9);
        expect(at(Math.max(0, high - step))).toBeGreaterThanOrEqual(1 - level - 1e-9);
      }),
      { seed: 2000, numRuns: 60 },
    );
  });

  /** Blaker's low end as the widely used program finds it: steps of 1e-4 from Clopper and Pearson's. */
  const steppedLow = (data: ProportionData): number => {
    let p = clopperPearsonInterval(data).low;
    while (blakerAcceptability({ ...data, p }) < 1 - data.level) p += 1e-4;
    return p;
  };

  it("[NU104] trap: Blaker by a step of 1e-4 from Clopper and Pearson's end stops elsewhere", () => {
    const data = { x: 5, n: 25, level: 0.95 };
    const exact = blakerInterval(data).low;
    expect(exact).toBeCloseTo(0.0822908998612, 12);
    expect(steppedLow(data) - exact).toBeGreaterThan(1e-6);
  });

  it("[NU104] trap: Blaker by steps leaps over a gap: 38 of 41 at 90 % begins at .8216, not at .8268", () => {
    const data = { x: 38, n: 41, level: 0.9 };
    const exact = blakerInterval(data).low;
    const at = (p: number) => blakerAcceptability({ ...data, p });
    expect(exact).toBeCloseTo(0.8216110249, 9);
    expect(at(exact + 1e-9)).toBeGreaterThanOrEqual(0.1 - 1e-9);
    expect(at(exact + 1e-4)).toBeLessThan(0.1); // accepted for less than a step, then not, then again
    expect(steppedLow(data)).toBeCloseTo(0.8268046445, 9);
  });

  it("[NU105] Blaker lies inside Clopper and Pearson's", () => {
    for (const level of [0.8, 0.95, 0.99]) {
      for (let n = 1; n <= 40; n += 1) {
        for (let x = 0; x <= n; x += 1) {
          const [ours, outer] = [blakerInterval, clopperPearsonInterval].map((each) => each({ x, n, level }));
          expect(ours?.low).toBeGreaterThanOrEqual((outer?.low as number) * (1 - 1e-13));
          expect(ours?.high).toBeLessThanOrEqual((outer?.high as number) + 1e-15);
        }
      }
    }
  });

  it("[NU106] Blaker covers at least as often as it says", () => {
    for (const n of [5, 30]) {
      const kept = Array.from({ length: n + 1 }, (_, x) => blakerInterval({ x, n, level: 0.95 }));
      const interval = ({ x }: ProportionData) => kept[x] as { low: number; high: number };
      for (let p = 0.004; p < 1; p += 0.004) {
        expect(intervalCoverage({ interval, n, p, level: 0.95 })).toBeGreaterThanOrEqual(0.95 - 1e-12);
      }
    }
  });

  it("[NU107] coverage at n = 50, p = 0.05: Wilson above 0.95, Jeffreys in its dip", () => {
    const at = { n: 50, p: 0.05, level: 0.95 };
    expect(intervalCoverage({ ...at, interval: wilsonInterval })).toBeCloseTo(0.96222382701, 10);
    expect(intervalCoverage({ ...at, interval: jeffreysInterval })).toBeCloseTo(0.88527885173, 10);
    // What is not covered is the chance of the outcomes whose interval misses p.
    const { pmf } = binomial({ n: 50, p: 0.05 });
    const truth = at.p;
    let missed = 0;
    for (let x = 0; x <= 50; x += 1) {
      const { low, high } = wilsonInterval({ x, n: 50, level: 0.95 });
      if (truth < low || truth > high) missed += pmf(x);
    }
    expect(intervalCoverage({ ...at, interval: wilsonInterval })).toBeCloseTo(1 - missed, 13);
  });
});
