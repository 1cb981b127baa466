/** Gauss–Hermite rules against print and against the moments they must give; intervals of counts that are not whole. */
import fc from "fast-check";
import { expect, it } from "vitest";
import golden from "../../tests/golden/abramowitz-stegun-table-25-10.json" with { type: "json" };
import {
  clopperPearsonInterval,
  effectiveClopperPearsonInterval,
  effectiveWilsonInterval,
  gaussHermiteRule,
  wilsonInterval,
} from "./index.ts";

it("[NU151] is the printed rule of five points", () => {
  const { nodes, weights } = gaussHermiteRule(golden.points);
  for (const [i, node] of golden.nodes.entries()) {
    // Print has 15 places of the nodes and 12 digits of the weights.
    expect(Math.abs((nodes[2 + i] as number) - node)).toBeLessThan(1e-14);
    expect(Math.abs((nodes[2 - i] as number) + node)).toBeLessThan(1e-14);
    expect((weights[2 + i] as number) / (golden.weights[i] as number)).toBeCloseTo(1, 11);
  }
});

it.each([1, 2, 3, 8, 25, 60, 200])("[NU151] %i points are exact to degree 2n − 1", (points) => {
  const { nodes, weights } = gaussHermiteRule(points);
  expect(nodes).toHaveLength(points);
  let exact = Math.sqrt(Math.PI);
  for (let power = 0; power <= Math.min(2 * points - 2, 40); power += 2) {
    const sum = nodes.reduce((all, x, i) => all + (weights[i] as number) * x ** power, 0);
    // Γ(k + ½) by its recursion; the rule's own rounding stays below 1e-11 for these powers.
    expect(Math.abs(sum / exact - 1)).toBeLessThan(1e-11);
    exact *= (power + 1) / 2;
  }
  for (let i = 1; i < points; i += 1) expect(nodes[i] as number).toBeGreaterThan(nodes[i - 1] as number);
});

it("[NU151] no rule of no points, or of more than 200", () => {
  for (const points of [0, 1.5, 201]) expect(() => gaussHermiteRule(points)).toThrow("points must be");
});

it("[NU150] counts that are whole give the intervals for whole counts, and more bees give shorter ones", () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 300 }), fc.double({ min: 0, max: 1, noNaN: true }), (n, share) => {
      const x = Math.round(n * share);
      const data = { x, n, level: 0.95 };
      expect(effectiveWilsonInterval(data)).toEqual(wilsonInterval(data));
      expect(effectiveClopperPearsonInterval(data)).toEqual(clopperPearsonInterval(data));
      const half = { x: share * (n / 2), n: n / 2, level: 0.95 };
      const full = { x: share * n, n, level: 0.95 };
      for (const interval of [effectiveWilsonInterval, effectiveClopperPearsonInterval]) {
        const [wide, narrow] = [interval(half), interval(full)];
        expect(wide.high - wide.low).toBeGreaterThanOrEqual((narrow.high - narrow.low) * (1 - 1e-12));
      }
    }),
    { seed: 1150, numRuns: 200 },
  );
});

it("[NU150] refuses a sample of nothing and more than all", () => {
  expect(() => effectiveWilsonInterval({ x: 0, n: 0, level: 0.95 })).toThrow("n must be");
  expect(() => effectiveClopperPearsonInterval({ x: 2.5, n: 2.4, level: 0.95 })).toThrow("x must be");
});
