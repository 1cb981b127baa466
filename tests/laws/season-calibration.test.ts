/** Forecasts of colonies drawn from the model: what the full run of the bench measures, with few colonies. */
import { expect, it } from "vitest";
import { drawnColonies } from "../../benchmarks/season/calibration.ts";
import { chiSquare } from "../../src/numerics/index.ts";
import { dynamics } from "../../src/reasoning/index.ts";

const cases = 60;
const few = { cases, examined: 200, particles: 150 };

/** Chance that even ranks, in four bins of five, are as uneven; and deviations of their mean off the middle. */
function evenness(ranks: Int32Array) {
  const bins = [0, 5, 10, 15].map((first) => ranks.slice(first, first + 5).reduce((sum, each) => sum + each, 0));
  const even = cases / bins.length;
  const chi = bins.reduce((sum, each) => sum + (each - even) ** 2 / even, 0);
  const mean = ranks.reduce((sum, each, rank) => sum + each * rank, 0) / cases;
  // Ranks 0 to 19, each as likely.
  return { p: chiSquare({ df: bins.length - 1 }).sf(chi), off: (mean - 9.5) / Math.sqrt((20 ** 2 - 1) / 12 / cases) };
}

it("[SE142] what became of colonies lies anywhere among the particles, and in the 90 % range nine times of ten", () => {
  const { ranks, within90 } = drawnColonies(few);
  const { p, off } = evenness(ranks);
  expect(p).toBeGreaterThan(0.001);
  expect(Math.abs(off)).toBeLessThan(3.3);
  expect(Math.abs(within90 - 0.9)).toBeLessThan(3.3 * Math.sqrt((0.9 * 0.1) / cases));
});

it("[SE142] a filter that is told of half the sensitivity is found out by the same measure", () => {
  const { ranks } = drawnColonies({ ...few, error: { ...dynamics.assumedError, sensitivity: 0.5 } });
  const { p, off } = evenness(ranks);
  expect(p).toBeLessThan(0.001);
  expect(off).toBeLessThan(-3.3);
});
