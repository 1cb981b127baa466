/** Gauss rules from a recurrence: known nodes, moments of the beta distribution, what is refused. */
import { expect, it } from "vitest";
import { betaRule, gaussLegendreRule, gaussRule } from "./index.ts";

it("[NU108] the recurrence of Legendre gives the Gauss–Legendre rule", () => {
  for (const points of [1, 2, 5, 20, 64]) {
    const known = gaussLegendreRule(points);
    const ours = gaussRule({
      middle: Array.from({ length: points }, () => 0),
      off: Array.from({ length: points - 1 }, (_, i) => (i + 1) / Math.sqrt(4 * (i + 1) ** 2 - 1)),
    });
    for (const [i, node] of known.nodes.entries()) {
      expect(Math.abs((ours.nodes[i] as number) - node)).toBeLessThan(1e-14);
      expect(Math.abs(2 * (ours.weights[i] as number) - (known.weights[i] as number))).toBeLessThan(1e-14);
    }
  }
});

it("[NU108] the rule of a beta distribution has its moments", () => {
  for (const { a, b } of [
    { a: 1, b: 1 },
    { a: 0.5, b: 0.5 },
    { a: 96, b: 4 },
    { a: 0.3, b: 7 },
    { a: 1.5, b: 0.5 },
  ]) {
    const { nodes, weights } = betaRule({ a, b, points: 16 });
    for (const [i, node] of nodes.entries()) {
      expect(node).toBeGreaterThan(i === 0 ? 0 : (nodes[i - 1] as number));
      expect(node).toBeLessThan(1);
    }
    let moment = 1;
    for (let k = 0; k < 32; k += 1) {
      const sum = nodes.reduce((all, node, i) => all + (weights[i] as number) * node ** k, 0);
      expect(Math.abs(sum / moment - 1), `moment ${k} of ${a}, ${b}`).toBeLessThan(1e-12);
      moment *= (a + k) / (a + b + k);
    }
  }
});

it("[NU108] refuses shapes, points and recurrences that cannot be", () => {
  expect(() => betaRule({ a: 0, b: 1, points: 4 })).toThrow("a must");
  expect(() => betaRule({ a: 1, b: 1, points: 0 })).toThrow("points");
  expect(() => gaussRule({ middle: [0, 0], off: [] })).toThrow("off");
});
