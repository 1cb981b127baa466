/** Several samples of one colony: they share its load, and are not looks at several colonies. */
import { describe, expect, it } from "vitest";
import { beta, gamma } from "../../numerics/index.ts";
import { trachealCount, varroaCount } from "./count-levels.ts";
import { differential, type TestInput } from "./index.ts";
import { trachealShare, varroaLoad } from "./judgements.ts";
import type { PooledCount } from "./shared-load.ts";

const bits = (...tests: readonly TestInput[]) => {
  const answer = differential({ season: "autumn", findings: {}, tests, draws: 40 });
  if (!answer.ok) throw new Error(JSON.stringify(answer.problems));
  const mites = answer.value.conditions.find(({ id }) => id === "varroa_pms");
  return [...(mites?.for ?? []), ...(mites?.against ?? [])].find(({ finding }) => finding === "varroa-wash")?.bits ?? 0;
};
const wash = (mites: number, more: Partial<TestInput> = {}): TestInput => ({
  ...{ test: "varroa-wash", mites, bees: 300 },
  ...more,
});
const unlike = (mites: number) => [
  wash(mites),
  wash(mites, { aliveWhenTaken: false }),
  wash(mites, { daysSinceControl: 10 }),
];

/** Mean over a spread by equal steps of its probability: the second opinion. */
function meanOver(quantile: (p: number) => number, value: (load: number) => number): number {
  const steps = 20_000;
  let sum = 0;
  for (let step = 0; step < steps; step++) sum += value(quantile((step + 0.5) / steps));
  return sum / steps;
}
const choose = (n: number, k: number): number =>
  Array.from({ length: k }, (_, at) => (n - at) / (at + 1)).reduce((product, each) => product * each, 1);
const factorial = (n: number): number => Array.from({ length: n }, (_, at) => at + 1).reduce((a, b) => a * b, 1);

describe("samples of one colony", () => {
  const pools: readonly PooledCount[] = [
    { count: 2, size: 20, chance: 0 },
    { count: 5, size: 30, chance: 0.5 },
    { count: 0, size: 15, chance: 0.75 },
  ];

  it("[DX81] the chance of unlike counts is that of one load behind them, by adding up over loads", () => {
    const binomial = ({ count, size }: PooledCount, p: number) =>
      choose(size, count) * p ** count * (1 - p) ** (size - count);
    const seen = (pool: PooledCount, p: number) =>
      (1 - pool.chance) * binomial(pool, p) + pool.chance * binomial(pool, trachealShare.mistaken);
    const { a, b } = trachealShare.clinical;
    const expected = meanOver(
      (p) => beta({ a, b }).quantile(p),
      (share) => pools.reduce((product, pool) => product * seen(pool, share), 1),
    );
    // Twenty thousand equal steps leave about 1e-6 of a smooth mean.
    expect(trachealCount(pools, false).clinical / expected).toBeCloseTo(1, 5);
  });

  it("[DX81] the same for mites on bees", () => {
    const poisson = ({ count }: PooledCount, mean: number) => (Math.exp(-mean) * mean ** count) / factorial(count);
    const seen = (pool: PooledCount, load: number) =>
      (1 - pool.chance) * poisson(pool, load * pool.size) +
      pool.chance * poisson(pool, varroaLoad.strayPerHundred * pool.size);
    const washes = pools.map((pool) => ({ ...pool, size: pool.size / 10 }));
    const { shape, mean } = varroaLoad.clinical;
    const expected = meanOver(
      (p) => gamma({ shape, rate: shape / mean }).quantile(p),
      (load) => washes.reduce((product, pool) => product * seen(pool, load), 1),
    );
    expect(varroaCount(washes).clinical / expected).toBeCloseTo(1, 4);
  });

  it.each([3, 12, 18, 24])(
    "[DX81] %i mites found in three unlike washes say what they say in three alike, not three times as much",
    (mites) => {
      const alike = bits(wash(mites), wash(mites), wash(mites));
      // What shows in weak samples as well was no accident of them.
      expect(bits(...unlike(mites))).toBeCloseTo(alike, 1);
      expect(Math.abs(bits(...unlike(mites)))).toBeLessThan(2 * Math.abs(bits(wash(mites))) + 0.5);
    },
  );

  it("[DX81] none found in weak samples besides adds a little to a good one", () => {
    expect(bits(...unlike(0))).toBeLessThan(bits(wash(0)));
    expect(bits(...unlike(0))).toBeGreaterThan(bits(wash(0)) - 1);
  });
});
