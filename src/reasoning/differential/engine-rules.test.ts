/** Rules of the engine on networks small enough to see through: groups, suppression, and which way the sums go. */
import { describe, expect, it } from "vitest";
import { bruteForce } from "./brute-force.ts";
import { findingsOnly, type Network, type NetworkFinding, type NetworkPair } from "./network.ts";
import { parametersOf } from "./parameters.ts";
import { type Posterior, posteriorOf } from "./posterior.ts";
import { unionTables } from "./union-tables.ts";

const network = (
  odds: readonly number[],
  findings: readonly Omit<NetworkFinding, "id">[],
  pairs: readonly NetworkPair[],
  dependence = 0.7,
): Network => ({
  conditions: odds.map((each, index) => ({ id: `c${index}`, odds: each, rollUp: null })),
  findings: findings.map((each, index) => ({ id: `f${index}`, ...each })),
  pairs,
  blocks: [],
  nothingWrong: null,
  dependence,
});
const posterior = (of: Network, present: readonly number[], absent: readonly number[] = []): Posterior => {
  const result = posteriorOf(parametersOf(of), findingsOnly(of, present, absent), []);
  if (result === null) throw new Error("the evidence is possible");
  return result;
};
const bits = (p: number) => Math.log2(p / (1 - p));

describe("groups", () => {
  const pair = { condition: 0, rate: 0.65, suppresses: false };
  const twins = (group: string | null) =>
    network(
      [0.01],
      [
        { healthy: 0.05, group },
        { healthy: 0.05, group },
      ],
      [
        { ...pair, finding: 0 },
        { ...pair, finding: 1 },
      ],
    );

  it("[DX5] one finding of a group counts as if it had none", () => {
    expect(posterior(twins("g"), [0]).condition[0]).toBeCloseTo(posterior(twins(null), [0]).condition[0] ?? 0, 12);
    expect(posterior(twins("g"), [], [1]).condition[0]).toBeCloseTo(
      posterior(twins(null), [], [1]).condition[0] ?? 0,
      12,
    );
  });

  it("[DX5] a second finding that tells as much adds about three tenths of its bits", () => {
    const prior = bits(0.01 / 1.01);
    const first = bits(posterior(twins("g"), [0]).condition[0] ?? 0) - prior;
    const both = bits(posterior(twins("g"), [0, 1]).condition[0] ?? 0) - prior;
    expect(first).toBeCloseTo(Math.log2(0.65 / 0.05), 9);
    expect((both - first) / first).toBeGreaterThan(0.25);
    expect((both - first) / first).toBeLessThan(0.4);
    const alone = bits(posterior(twins(null), [0, 1]).condition[0] ?? 0) - prior;
    expect(alone).toBeCloseTo(2 * first, 9);
  });
});

describe("grades at or below the healthy rate", () => {
  it("[DX6] have no influence, present or absent", () => {
    const weak = network(
      [0.3],
      [{ healthy: 0.35, group: null }],
      [{ condition: 0, finding: 0, rate: 0.1, suppresses: false }],
    );
    expect(posterior(weak, [0]).condition[0]).toBeCloseTo(0.3 / 1.3, 12);
    expect(posterior(weak, [], [0]).condition[0]).toBeCloseTo(0.3 / 1.3, 12);
  });

  it("[DX6] suppress by their ratio where the pair is marked", () => {
    const rare = network(
      [0.3],
      [{ healthy: 0.35, group: null }],
      [{ condition: 0, finding: 0, rate: 0.1, suppresses: true }],
    );
    const odds = (p: number) => p / (1 - p);
    expect(odds(posterior(rare, [0]).condition[0] ?? 0)).toBeCloseTo((0.3 * 0.1) / 0.35, 12);
    expect(odds(posterior(rare, [], [0]).condition[0] ?? 0)).toBeCloseTo((0.3 * 0.9) / 0.65, 12);
  });
});

describe("which way the sums go", () => {
  /** Five conditions and many findings, each brought by two of them; leaks so small that the expansion cancels. */
  const long = (findings: number, healthy: number) =>
    network(
      [0.2, 0.1, 0.05, 0.3, 0.02],
      Array.from({ length: findings }, () => ({ healthy, group: null })),
      Array.from({ length: findings }, (_, finding) => [
        { condition: finding % 5, finding, rate: 0.3, suppresses: false },
        { condition: (finding + 1) % 5, finding, rate: 0.6, suppresses: false },
      ]).flat(),
    );
  const all = (count: number) => Array.from({ length: count }, (_, index) => index);

  it("[DX10] the expansion gives way to the tables when its cancellation is too large", () => {
    const rare = long(12, 1e-6);
    const tables = posterior(rare, all(12));
    expect(tables.method).toBe("tables");
    expect(posterior(long(6, 0.1), all(6)).method).toBe("expansion");
    const brute = bruteForce(rare, findingsOnly(rare, all(12), []));
    for (const [index, weight] of brute.withCondition.entries()) {
      expect(tables.condition[index]).toBeCloseTo(weight / brute.total, 9);
    }
  });

  it("[DX10] more than twelve present findings go to the tables, nothing neglected", () => {
    const tables = posterior(long(14, 0.05), all(14));
    expect(tables.method).toBe("tables");
    expect(tables.neglectedMass).toBe(0);
    const brute = bruteForce(long(14, 0.05), findingsOnly(long(14, 0.05), all(14), []));
    expect(tables.condition[0]).toBeCloseTo((brute.withCondition[0] ?? 0) / brute.total, 9);
  });

  it("[DX10] more than sixteen go to the best sets, which say what they left out", () => {
    const many = long(17, 0.05);
    const sets = posterior(many, all(17));
    expect(sets.method).toBe("sets");
    expect(sets.neglectedMass).toBeLessThan(1e-6); // all 32 sets are listed
    const exact = unionTables(parametersOf(many), findingsOnly(many, all(17), []));
    expect(sets.condition[0]).toBeCloseTo((exact.withCondition[0] ?? 0) / exact.total, 6);
  });
});
