import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { betaBinomial, binomial, type DiscreteDistribution, hypergeometric, poisson } from "./index.ts";

const share = fc.double({ min: 1e-6, max: 1, noNaN: true });
const count = fc.integer({ min: 1, max: 40 });
const distribution: fc.Arbitrary<DiscreteDistribution> = fc.oneof(
  fc.record({ n: count, p: share }).map(binomial),
  fc
    .tuple(count, share, share)
    .map(([population, m, d]) =>
      hypergeometric({ population, marked: Math.floor(m * population), drawn: Math.floor(d * population) }),
    ),
  fc.record({ n: count, a: share.map((s) => 10 * s), b: share.map((s) => 10 * s) }).map(betaBinomial),
  share.map((s) => poisson({ mean: 20 * s })),
);

/** The first count of the support that is enough, by trying each in turn. */
function firstOf({ support: { low } }: DiscreteDistribution, enough: (k: number) => boolean): number {
  let k = low;
  while (!enough(k)) k += 1;
  return k;
}

describe("quantiles of counts", () => {
  // Once the answer was 1 where 0 was enough: the search took the lowest count for tried when a step landed on it.
  it("[NU6] are those found by trying each count in turn, the lowest among them", () => {
    fc.assert(
      fc.property(
        distribution,
        fc.oneof(
          share,
          share.map((s) => s ** 30),
        ),
        (d, p) => {
          if (p === 1) return;
          expect(d.quantile(p)).toBe(firstOf(d, (k) => d.cdf(k) >= p));
          expect(d.upperQuantile(p)).toBe(firstOf(d, (k) => d.sf(k) <= p));
        },
      ),
      { seed: 1812, numRuns: 1000 },
    );
  });
});

describe("chances of counts", () => {
  it("[NU7] are 0 outside the support and between whole numbers, and the tails close there", () => {
    fc.assert(
      fc.property(distribution, fc.integer({ min: 1, max: 50 }), (d, beyond) => {
        expect(d.pmf(d.support.low - beyond)).toBe(0);
        expect(d.logPmf(d.support.low - beyond)).toBe(-Infinity);
        expect(d.pmf(d.support.low + 0.5)).toBe(0);
        expect(d.cdf(d.support.low - beyond)).toBe(0);
        expect(d.cdf(d.support.low + 0.5)).toBe(d.cdf(d.support.low));
        expect(d.cdf(d.support.high + beyond)).toBe(1);
        expect(d.sf(d.support.high + beyond)).toBe(0);
      }),
      { seed: 1812, numRuns: 300 },
    );
  });
});
