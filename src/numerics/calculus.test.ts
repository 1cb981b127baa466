import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { DomainError } from "../units/index.ts";
import { gaussLegendre, gaussLegendreRule, integral, logSumExp, normalPdf, root, sum } from "./index.ts";

const golden = JSON.parse(
  readFileSync(new URL("../../tests/golden/numerics-gauss-legendre.json", import.meta.url), "utf8"),
) as {
  readonly rules: readonly {
    readonly points: number;
    readonly nodes: readonly string[];
    readonly weights: readonly string[];
  }[];
};

describe("roots", () => {
  it("[NU17] finds a root to the last digits", () => {
    expect(Math.abs(root({ f: (x) => x * x - 2, low: 0, high: 2 }) - Math.SQRT2)).toBeLessThanOrEqual(5e-16);
    expect(Math.abs(root({ f: Math.cos, low: 1, high: 2 }) - Math.PI / 2)).toBeLessThanOrEqual(5e-16);
    expect(Math.abs(root({ f: (x) => x ** 3, low: -1, high: 2 }))).toBeLessThanOrEqual(5e-15);
    expect(Math.abs(root({ f: (x) => x ** 3, low: -1, high: 2, tolerance: 0 }))).toBeLessThanOrEqual(1e-100);
  });

  it("[NU17] the sign changes within a few roundings of the answer, also for steep and flat functions", () => {
    fc.assert(
      fc.property(fc.double({ min: -50, max: 50, noNaN: true }), fc.constantFrom(1, 3, 0.2), (at, power) => {
        const f = (x: number) => Math.sign(x - at) * Math.abs(x - at) ** power;
        const found = root({ f, low: -60, high: 70 });
        expect(Math.abs(found - at)).toBeLessThanOrEqual(1e-13 * Math.max(1, Math.abs(at)));
      }),
      { seed: 1973, numRuns: 200 },
    );
  });

  it("[NU17] without a change of sign it is refused", () => {
    expect(() => root({ f: (x) => x * x + 1, low: -1, high: 1 })).toThrow(DomainError);
    expect(() => root({ f: () => Number.NaN, low: -1, high: 1 })).toThrow(DomainError);
  });
});

describe("integrals", () => {
  it.each(golden.rules)("[NU18] the rule of $points points as printed", ({ points, nodes, weights }) => {
    const rule = gaussLegendreRule(points);
    const halfUnit = 0.5e-15 + 4e-16; // fifteen decimals are printed; ours carry a few roundings of 1e-16
    const upper = rule.nodes.map((node, i) => [node, rule.weights[i] as number] as const).filter(([node]) => node >= 0);
    expect(upper.length).toBe(nodes.length);
    for (const [i, [node, weight]] of upper.entries()) {
      expect(Math.abs(node - Number(nodes[i]))).toBeLessThanOrEqual(halfUnit);
      expect(Math.abs(weight - Number(weights[i]))).toBeLessThanOrEqual(halfUnit);
    }
  });

  it.each([1, 2, 7, 20, 64])("[NU18] the rule of %i points is exact to degree 2n − 1 and not beyond", (points) => {
    const rule = gaussLegendreRule(points);
    for (let degree = 0; degree < 2 * points; degree += 1) {
      const exact = degree % 2 === 0 ? 2 / (degree + 1) : 0;
      expect(Math.abs(gaussLegendre({ f: (x) => x ** degree, low: -1, high: 1 }, rule) - exact)).toBeLessThanOrEqual(
        1e-14,
      );
    }
    if (points < 10) {
      const beyond = gaussLegendre({ f: (x) => x ** (2 * points), low: -1, high: 1 }, rule);
      expect(Math.abs(beyond - 2 / (2 * points + 1))).toBeGreaterThan(1e-9);
    }
  });

  it.each([
    ["1/x", (x: number) => 1 / x, 1e-3, 1, Math.log(1000)],
    ["the normal curve", normalPdf, -40, 40, 1],
    ["a square root at its branch", Math.sqrt, 0, 1, 2 / 3],
    ["a narrow peak", (x: number) => 1 / (1e-8 + (x - 0.3) ** 2), 0, 1, 1e4 * (Math.atan(7e3) + Math.atan(3e3))],
    ["a logarithm at its pole", Math.log, 0, 1, -1],
  ])("[NU19] the integral of %s is within its error", (_, f, low, high, exact) => {
    const { value, error } = integral({ f, low, high });
    expect(Math.abs(value - exact)).toBeLessThanOrEqual(error + 1e-13 * Math.abs(exact));
    expect(Math.abs(value / exact - 1)).toBeLessThanOrEqual(1e-11);
  });
});

describe("sums", () => {
  it("[NU20] keeps small numbers beside large ones", () => {
    expect(sum([1, 1e100, 1, -1e100])).toBe(2);
    expect(sum(Array.from({ length: 1_000_000 }, () => 0.1))).toBeCloseTo(100_000, 10);
    expect(sum([])).toBe(0);
  });
  it("[NU20] adds in logs without overflow or underflow", () => {
    expect(logSumExp([1000, 1000])).toBeCloseTo(1000 + Math.LN2, 12);
    expect(logSumExp([-2000, -2001])).toBeCloseTo(-2000 + Math.log1p(Math.exp(-1)), 12);
    expect(logSumExp([])).toBe(-Infinity);
    expect(logSumExp([-Infinity, 0])).toBe(0);
  });
});
