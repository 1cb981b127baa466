import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import {
  beta,
  betaBinomial,
  binomial,
  type ContinuousDistribution,
  chiSquare,
  type DiscreteDistribution,
  drawBeta,
  drawBinomial,
  drawGamma,
  drawIndex,
  drawNormal,
  drawPoisson,
  gamma,
  normal,
  philox,
  poisson,
  randomStream,
} from "./index.ts";

const golden = JSON.parse(
  readFileSync(new URL("../../tests/golden/numerics-philox-known-answers.json", import.meta.url), "utf8"),
) as { readonly cases: readonly Readonly<Record<"counter" | "key" | "answer", readonly string[]>>[] };

const words = (hex: readonly string[]) => hex.map((each) => Number.parseInt(each, 16));

describe("random streams", () => {
  it.each(golden.cases)("[NU13] counter $counter gives the published answer", ({ counter, key, answer }) => {
    const [c0 = 0, c1 = 0, c2 = 0, c3 = 0] = words(counter);
    const [k0 = 0, k1 = 0] = words(key);
    expect(philox([c0, c1, c2, c3], [k0, k1])).toEqual(words(answer));
  });

  const take = (seed: number, stream: number, count: number) => {
    const { next } = randomStream({ seed, stream });
    return Array.from({ length: count }, next);
  };

  it("[NU14] repeats itself for the same seed and stream, and for no other", () => {
    const first = take(2 ** 40 + 7, 3, 100);
    expect(take(2 ** 40 + 7, 3, 100)).toEqual(first);
    const others = [take(7, 3, 100), take(2 ** 40 + 7, 4, 100), take(2 ** 40 + 7, 2 ** 33 + 3, 100)];
    const seen = new Set([...first, ...others.flat()]);
    expect(seen.size).toBe(400);
  });

  it("[NU14] the blocks of a stream are those of its counter: place below, stream above", () => {
    const stream = randomStream({ seed: 5, stream: 2 ** 32 + 9 });
    const drawn = Array.from({ length: 8 }, stream.nextWord);
    expect(drawn).toEqual([...philox([0, 0, 9, 1], [5, 0]), ...philox([1, 0, 9, 1], [5, 0])]);
  });

  it("[NU15] uniform numbers lie inside (0, 1), evenly", () => {
    const drawn = take(1, 0, 20_000);
    expect(drawn.every((u) => u > 0 && u < 1)).toBe(true);
    follows(drawn, (u) => u);
  });
});

/**
 * Kolmogorov's test at a level of 1e-4 (critical value 2.23/√n, Kolmogorov 1933 asymptotics): with fixed seeds it
 * gives the same answer each time, and wrong methods fail it by far.
 */
function follows(drawn: readonly number[], cdf: (x: number) => number): void {
  const sorted = drawn.toSorted((a, b) => a - b);
  const n = sorted.length;
  const gap = sorted.reduce((most, x, i) => Math.max(most, cdf(x) - i / n, (i + 1) / n - cdf(x)), 0);
  expect(gap).toBeLessThan(2.23 / Math.sqrt(n));
}

/** Chi-square test at a level of 1e-4 over cells that expect at least ten. */
function countsFollow(drawn: readonly number[], { cdf, support }: DiscreteDistribution): void {
  const n = drawn.length;
  const tally = new Map<number, number>();
  for (const k of drawn) tally.set(k, (tally.get(k) ?? 0) + 1);
  const largest = Math.max(...drawn);
  const smallest = Math.min(...drawn);
  let statistic = 0;
  let cells = 0;
  let from = support.low - 1;
  let found = 0;
  for (let k = smallest; k <= largest; k += 1) {
    found += tally.get(k) ?? 0;
    const expected = n * (cdf(k) - cdf(from));
    const rest = n * (1 - cdf(k));
    if (k < largest && (expected < 10 || rest < 10)) continue;
    const all = k === largest ? n * (1 - cdf(from)) : expected;
    if (all < 1) continue;
    statistic += (found - all) ** 2 / all;
    cells += 1;
    from = k;
    found = 0;
  }
  expect(cells).toBeGreaterThan(1);
  expect(chiSquare({ df: cells - 1 }).sf(statistic)).toBeGreaterThan(1e-4);
}

describe("draws", () => {
  const runs = 4000;
  const many = (seed: number, draw: (stream: ReturnType<typeof randomStream>) => number) => {
    const stream = randomStream({ seed, stream: 1 });
    return Array.from({ length: runs }, () => draw(stream));
  };
  const continuous: readonly [string, (s: ReturnType<typeof randomStream>) => number, ContinuousDistribution][] = [
    ["normal", drawNormal, normal({ mean: 0, sd: 1 })],
    ["gamma 0.2", (s) => drawGamma(s, 0.2), gamma({ shape: 0.2, rate: 1 })],
    ["gamma 1", (s) => drawGamma(s, 1), gamma({ shape: 1, rate: 1 })],
    ["gamma 250", (s) => drawGamma(s, 250), gamma({ shape: 250, rate: 1 })],
    ["beta 0.5, 20.5", (s) => drawBeta(s, { a: 0.5, b: 20.5 }), beta({ a: 0.5, b: 20.5 })],
    ["beta 30, 12", (s) => drawBeta(s, { a: 30, b: 12 }), beta({ a: 30, b: 12 })],
  ];
  it.each(continuous)("[NU16] %s", (_, draw, { cdf }) => {
    follows(many(11, draw), cdf);
  });

  const counts: readonly [string, (s: ReturnType<typeof randomStream>) => number, DiscreteDistribution][] = [
    ["binomial 59, 0.05", (s) => drawBinomial(s, { n: 59, p: 0.05 }), binomial({ n: 59, p: 0.05 })],
    ["binomial 40, 0.9", (s) => drawBinomial(s, { n: 40, p: 0.9 }), binomial({ n: 40, p: 0.9 })],
    ["binomial 1000, 0.3", (s) => drawBinomial(s, { n: 1000, p: 0.3 }), binomial({ n: 1000, p: 0.3 })],
    ["binomial 1e6, 0.999", (s) => drawBinomial(s, { n: 1e6, p: 0.999 }), binomial({ n: 1e6, p: 0.999 })],
    ["Poisson 3", (s) => drawPoisson(s, 3), poisson({ mean: 3 })],
    ["Poisson 200", (s) => drawPoisson(s, 200), poisson({ mean: 200 })],
    [
      "beta-binomial 20, 2, 3",
      (s) => drawBinomial(s, { n: 20, p: drawBeta(s, { a: 2, b: 3 }) }),
      betaBinomial({ n: 20, a: 2, b: 3 }),
    ],
  ];
  it.each(counts)("[NU16] %s", (_, draw, distribution) => {
    countsFollow(many(12, draw), distribution);
  });

  it("[NU16] indices are equally likely", () => {
    const stream = randomStream({ seed: 3, stream: 0 });
    const drawn = Array.from({ length: 6000 }, () => drawIndex(stream, 6));
    const statistic = [0, 1, 2, 3, 4, 5].reduce(
      (sum, i) => sum + (drawn.filter((d) => d === i).length - 1000) ** 2 / 1000,
      0,
    );
    expect(chiSquare({ df: 5 }).sf(statistic)).toBeGreaterThan(1e-4);
    expect(drawn.every((d) => Number.isInteger(d) && d >= 0 && d < 6)).toBe(true);
  });
});
