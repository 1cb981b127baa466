/** What every distribution must obey, whatever its family: one line in a test applies it all. */
import { expect, it } from "vitest";
import type { ContinuousDistribution, DiscreteDistribution } from "../../src/numerics/index.ts";
import { integral, sum } from "../../src/numerics/index.ts";

const probabilities = [1e-300, 1e-50, 1e-9, 0.001, 0.025, 0.3, 0.5, 0.7, 0.975, 0.999];

/** Rounding of some thousand additions of chances. */
const slack = 1e-11;

const close = (actual: number, wanted: number, relative = slack) =>
  expect(Math.abs(actual - wanted)).toBeLessThanOrEqual(relative * Math.max(1, Math.abs(wanted)));

/** Applies the laws to one distribution under the rule it serves, such as NU6. */
export function obeysDistributionLaws(
  rule: string,
  name: string,
  distribution: DiscreteDistribution | ContinuousDistribution,
): void {
  if (distribution.kind === "discrete") countLaws(rule, name, distribution);
  else densityLaws(rule, name, distribution);
}

/** The whole support where it is small, else the counts that hold all but 1e-15 of each tail. */
function countsOf({ support, quantile, upperQuantile }: DiscreteDistribution): readonly number[] {
  const isSmall = support.high - support.low < 1000;
  const low = isSmall ? support.low : quantile(1e-15);
  const high = isSmall ? support.high : Math.min(support.high, upperQuantile(1e-15) + 1);
  return Array.from({ length: high - low + 1 }, (_, i) => low + i);
}

function countLaws(rule: string, name: string, d: DiscreteDistribution): void {
  const counts = countsOf(d);
  const first = counts[0] ?? 0;

  it(`[${rule}] ${name}: chances sum to 1`, () => {
    close(sum(counts.map(d.pmf)), 1);
  });
  it(`[${rule}] ${name}: the cdf is the running sum of chances, and never falls`, () => {
    let running = d.cdf(first - 1);
    let before = running;
    for (const k of counts) {
      running += d.pmf(k);
      const cdf = d.cdf(k);
      close(cdf, running);
      expect(cdf).toBeGreaterThanOrEqual(before * (1 - 1e-13));
      before = cdf;
    }
  });
  it(`[${rule}] ${name}: sf and cdf sum to 1`, () => {
    for (const k of counts) close(d.sf(k) + d.cdf(k), 1, 1e-14);
  });
  it(`[${rule}] ${name}: each tail changes from count to count by the chance of the count, tiny tails too`, () => {
    for (const k of counts) {
      const drop = d.sf(k - 1) - d.sf(k);
      const rise = d.cdf(k) - d.cdf(k - 1);
      if (d.sf(k - 1) < 0.5) expect(Math.abs(drop - d.pmf(k))).toBeLessThanOrEqual(1e-10 * d.sf(k - 1));
      if (d.cdf(k) < 0.5) expect(Math.abs(rise - d.pmf(k))).toBeLessThanOrEqual(1e-10 * d.cdf(k));
    }
  });
  it(`[${rule}] ${name}: the quantile inverts the cdf, from either end`, () => {
    for (const k of counts) {
      // A cdf that has rounded to 1, or an sf that has underflowed to 0, no longer tells counts apart.
      if (d.cdf(k) === 1 || d.sf(k) === 0) continue;
      const lower = d.quantile(d.cdf(k));
      expect(d.cdf(lower)).toBeGreaterThanOrEqual(d.cdf(k));
      if (d.cdf(k - 1) < d.cdf(k)) expect(lower).toBe(k);
      const upper = d.upperQuantile(d.sf(k));
      expect(d.sf(upper)).toBeLessThanOrEqual(d.sf(k));
      if (d.sf(k - 1) > d.sf(k)) expect(upper).toBe(k);
    }
    expect(d.quantile(0)).toBe(d.support.low);
    expect(d.quantile(1)).toBe(d.support.high);
    expect(d.upperQuantile(0)).toBe(d.support.high);
    expect(d.upperQuantile(1)).toBe(d.support.low);
  });
  it(`[${rule}] ${name}: a quantile is enough, and one count fewer is not`, () => {
    for (const p of probabilities) {
      const lower = d.quantile(p);
      expect(d.cdf(lower)).toBeGreaterThanOrEqual(p);
      expect(d.cdf(lower - 1)).toBeLessThan(p);
      const upper = d.upperQuantile(p);
      expect(d.sf(upper)).toBeLessThanOrEqual(p);
      expect(d.sf(upper - 1)).toBeGreaterThan(p);
    }
  });
  it(`[${rule}] ${name}: mean and variance by sum are those by formula`, () => {
    const mean = sum(counts.map((k) => k * d.pmf(k)));
    close(mean, d.mean);
    close(sum(counts.map((k) => (k - mean) ** 2 * d.pmf(k))), d.variance, 1e-9);
  });
  it(`[${rule}] ${name}: pmf is the exponential of logPmf`, () => {
    for (const k of counts) close(Math.exp(d.logPmf(k)), d.pmf(k));
  });
  it(`[NU7] ${name}: nothing outside the support nor between counts`, () => {
    expect(d.pmf(d.support.low - 1)).toBe(0);
    expect(d.pmf(first + 0.5)).toBe(0);
    expect(d.cdf(d.support.low - 1)).toBe(0);
    expect(d.sf(d.support.low - 1)).toBe(1);
    expect(d.cdf(Infinity)).toBe(1);
    expect(d.sf(Infinity)).toBe(0);
    if (Number.isFinite(d.support.high)) expect(d.pmf(d.support.high + 1)).toBe(0);
  });
}

function densityLaws(rule: string, name: string, d: ContinuousDistribution): void {
  it(`[${rule}] ${name}: the density integrates to the cdf between quantiles`, () => {
    const ends = [0.001, 0.2, 0.5, 0.8, 0.999].map(d.quantile);
    for (const [i, high] of ends.entries()) {
      const low = ends[i - 1];
      if (low === undefined) continue;
      close(integral({ f: d.pdf, low, high }).value, d.cdf(high) - d.cdf(low), 1e-10);
    }
  });
  it(`[${rule}] ${name}: sf and cdf sum to 1`, () => {
    for (const p of probabilities) close(d.sf(d.quantile(p)) + d.cdf(d.quantile(p)), 1, 1e-14);
  });
  it(`[${rule}] ${name}: quantiles invert both tails, to 1e-300`, () => {
    for (const p of probabilities) {
      const x = d.quantile(p);
      // Near an end of the support the nearest double may be far off in probability.
      if (sharp(d, x)) expect(Math.abs(d.cdf(x) / p - 1)).toBeLessThanOrEqual(1e-10);
      const y = d.upperQuantile(p);
      if (sharp(d, y)) expect(Math.abs(d.sf(y) / p - 1)).toBeLessThanOrEqual(1e-10);
    }
    expect(d.quantile(0)).toBe(d.support.low);
    expect(d.quantile(1)).toBe(d.support.high);
    expect(d.upperQuantile(0)).toBe(d.support.high);
    expect(d.upperQuantile(1)).toBe(d.support.low);
  });
  it(`[${rule}] ${name}: mean and variance by integral are those by formula`, () => {
    if (!Number.isFinite(d.variance)) return;
    // Over probabilities rather than places: the range is finite whatever the support.
    const moment = (g: (x: number) => number) =>
      integral({ f: (u) => g(d.quantile(u)), low: 1e-14, high: 0.5, relative: 1e-9 }).value +
      integral({ f: (u) => g(d.upperQuantile(u)), low: 1e-14, high: 0.5, relative: 1e-9 }).value;
    const spread = Math.sqrt(d.variance);
    expect(Math.abs(moment((x) => x) - d.mean)).toBeLessThanOrEqual(1e-7 * Math.max(spread, Math.abs(d.mean)));
    expect(Math.abs(moment((x) => (x - d.mean) ** 2) - d.variance)).toBeLessThanOrEqual(1e-6 * d.variance);
  });
  it(`[${rule}] ${name}: pdf is the exponential of logPdf`, () => {
    for (const p of probabilities) {
      const density = d.pdf(d.quantile(p));
      if (Number.isFinite(density)) close(Math.exp(d.logPdf(d.quantile(p))), density);
      else expect(d.logPdf(d.quantile(p))).toBe(Infinity);
    }
  });
  it(`[NU7] ${name}: nothing outside the support`, () => {
    const { low, high } = d.support;
    if (Number.isFinite(low)) {
      expect(d.pdf(low - 1)).toBe(0);
      expect(d.cdf(low - 1)).toBe(0);
      expect(d.sf(low - 1)).toBe(1);
    }
    if (Number.isFinite(high)) {
      expect(d.pdf(high + 1)).toBe(0);
      expect(d.cdf(high + 1)).toBe(1);
      expect(d.sf(high + 1)).toBe(0);
    }
  });
}

/** Whether one rounding step of x changes the chance too little to matter. */
function sharp(d: ContinuousDistribution, x: number): boolean {
  if (!Number.isFinite(x) || x === d.support.low || x === d.support.high) return false;
  const tail = Math.min(d.cdf(x), d.sf(x));
  return d.pdf(x) * Math.abs(x) * 2 ** -53 < 1e-12 * tail && Math.abs(x) > 1e-290;
}
