/** Laws that every interval for a share, x of n, must obey; a new one gets them all by one call. */
import { expect, it } from "vitest";
import type { Interval, ProportionData } from "../../src/numerics/index.ts";
import type { Estimate, Result } from "../../src/units/index.ts";

export interface IntervalUnderLaw {
  /** Stands at the head of each test's name: the rule ids, then the method. */
  readonly name: string;
  readonly interval: (data: ProportionData) => Interval;
  /** Always: never below the level, whatever the truth. On average: close to it over all truths, or not below it. */
  readonly coverage: "always" | "on average" | "not below on average";
  /** Ends that left 0 to 1 are cut, so that several counts may share an end. */
  readonly isCut?: true;
  /** Ends move by steps with the level, so that two levels may share an interval. */
  readonly isStepped?: true;
}

export interface EstimatorUnderLaw extends Omit<IntervalUnderLaw, "interval"> {
  readonly estimate: (data: { readonly x: number; readonly n: number; readonly level: number }) => Result<Estimate>;
}

const sizes = [1, 2, 5, 12, 50, 333];

/** Two ways to the same end may differ by the rounding of a quantile. */
const rounding = 5e-11;

/** Registers the laws of an interval, and those of an estimate: x of n as its value, with number and level. */
export function obeysEstimatorLaws({ name, estimate, ...promised }: EstimatorUnderLaw): void {
  const at = ({ x, n, level }: ProportionData): Estimate => {
    const result = estimate({ x, n, level });
    if (!result.ok) throw new Error(`refused: ${result.problems.map((each) => each.code).join(", ")}`);
    return result.value;
  };
  obeysIntervalLaws({ name, interval: at, ...promised });

  it(`${name}: the value is x of n, and number and level are told`, () => {
    for (const n of sizes) {
      for (let x = 0; x <= n; x++) {
        expect(at({ x, n, level: 0.9 })).toMatchObject({ value: x / n, n, level: 0.9 });
      }
    }
  });
}

/** Registers the laws as tests. */
export function obeysIntervalLaws({ name, interval, coverage, isCut, isStepped }: IntervalUnderLaw): void {
  const at = (x: number, n: number, level = 0.95) => interval({ x, n, level });

  it(`${name}: x of n lies inside, and all of it inside 0 to 1`, () => {
    for (const n of sizes) {
      for (let x = 0; x <= n; x++) {
        const { low, high } = at(x, n);
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(x / n);
        expect(high).toBeGreaterThanOrEqual(x / n);
        expect(high).toBeLessThanOrEqual(1);
      }
    }
  });

  it(`${name}: what is left is mirrored: low of x is 1 − high of n − x`, () => {
    for (const n of sizes) {
      for (let x = 0; x <= n; x++) expect(Math.abs(at(x, n).low + at(n - x, n).high - 1)).toBeLessThan(rounding);
    }
  });

  it(`${name}: more positives move both ends up`, () => {
    for (const n of sizes) {
      for (let x = 1; x <= n; x++) {
        const [before, now] = [at(x - 1, n), at(x, n)];
        if (isCut && now.low === 0) expect(before.low).toBe(0);
        else expect(now.low).toBeGreaterThan(before.low);
        if (before.high === 1) expect(now.high).toBe(1);
        else expect(now.high).toBeGreaterThan(before.high);
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
      const widths = [0.5, 0.8, 0.9, 0.95, 0.99, 0.999].map((level) => width(1, level));
      for (const [i, each] of widths.entries()) {
        if (isStepped) expect(each).toBeGreaterThanOrEqual((widths[i - 1] ?? 0) - 1e-12);
        else expect(each).toBeGreaterThan(widths[i - 1] ?? 0);
      }
      expect(widths.at(-1)).toBeGreaterThan(widths[0] as number);
      expect(width(4, 0.95)).toBeLessThan(width(1, 0.95));
    }
  });

  if (coverage === "always") {
    it(`${name}: coverage, summed exactly, is never below the level, on a grid and beside every end, n to 40`, () => {
      for (const level of [0.8, 0.95, 0.99]) {
        for (let n = 1; n <= 40; n++) expect(leastCoverage(interval, n, level)).toBeGreaterThanOrEqual(level - slack);
      }
    });
  } else {
    // The widest of those that do not fall short covers 97.1 % on average; far above it would be needlessly wide.
    const [least, most] = coverage === "on average" ? [0.94, 0.96] : [0.95, 0.98];
    it(`${name}: coverage at 95 % of 40, summed exactly, is ${least} to ${most} on average over the truth`, () => {
      const all = intervalsOf(interval, 40, 0.95);
      const shares = Array.from({ length: 199 }, (_, i) => (i + 1) / 200);
      const mean = shares.reduce((sum, p) => sum + covered(all, p), 0) / shares.length;
      expect(mean).toBeGreaterThanOrEqual(least);
      expect(mean).toBeLessThanOrEqual(most);
    });
  }
}

/** How far beside an end the coverage is looked at: there one outcome has just dropped out, so it is at its lowest. */
const beside = 1e-10;
/** Moving by `beside` changes a chance of n ≤ 40 by at most n·1e-10. */
const slack = 1e-8;

function leastCoverage(interval: IntervalUnderLaw["interval"], n: number, level: number): number {
  const all = intervalsOf(interval, n, level);
  const grid = Array.from({ length: 99 }, (_, i) => (i + 1) / 100);
  const ends = all.flatMap(({ low, high }) => [low, high]).filter((end) => end > 0 && end < 1);
  const places = [...grid, ...ends.flatMap((end) => [end - beside, end + beside])];
  return Math.min(...places.map((p) => covered(all, p)));
}

const intervalsOf = (interval: IntervalUnderLaw["interval"], n: number, level: number): readonly Interval[] =>
  Array.from({ length: n + 1 }, (_, x) => interval({ x, n, level }));

/** Chance of all outcomes whose interval holds p, each by its ratio to the one before: no code of the library. */
function covered(all: readonly Interval[], p: number): number {
  const n = all.length - 1;
  let [sum, chance] = [0, (1 - p) ** n];
  for (const [x, { low, high }] of all.entries()) {
    if (low <= p && p <= high) sum += chance;
    chance *= ((n - x) / (x + 1)) * (p / (1 - p));
  }
  return sum;
}
