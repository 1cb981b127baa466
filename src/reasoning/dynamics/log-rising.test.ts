/** The logarithm of a rising factorial: as its sum of logarithms, and no slower for many bees. */
import { describe, expect, it } from "vitest";
import { colonyForecast } from "./filter/forecast.ts";
import { logRising } from "./log-rising.ts";
import { mostCounted } from "./observe.ts";

/** The sum term by term, with what rounding takes carried along (Kahan). */
function bySum(a: number, n: number): number {
  let [sum, lost] = [0, 0];
  for (let i = 0; i < n; i++) {
    const term = Math.log(a + i) - lost;
    const next = sum + term;
    lost = next - sum - term;
    sum = next;
  }
  return sum;
}

describe("a rising factorial", () => {
  const shapes = [1e-300, 1e-12, 1e-6, 0.003, 0.5, 1, 2.5, 9.999, 10, 49, 1234.5, 1e6, 1e9];
  it.each(shapes)("[SE148] from %d on, is the sum of its logarithms for few terms and for many", (a) => {
    for (const n of [0, 1, 2, 9, 50, 255, 256, 257, 258, 300, 1000, 4096, 20_000, 100_000]) {
      const sum = bySum(a, n);
      expect(Math.abs(logRising(a, n) - sum), `${n} terms`).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(sum)));
    }
  });
});

describe("the largest count that is taken", () => {
  const question = {
    site: {},
    start: { date: "2026-08-01", bees: 30_000, infestedShare: 0.08, brood: "usual" },
    ...{ actions: [], until: "2026-09-15", draws: 1000, seed: 1 },
  } as const;
  it("[SE148] costs hardly more than a small one", () => {
    const begun = performance.now();
    for (let each = 0; each < 5000; each++) logRising(3 + each / 7, mostCounted);
    // Some milliseconds; the product of 5 × 10⁸ terms takes more than a second.
    expect(performance.now() - begun).toBeLessThan(500);
  });

  it("[SE148] is that of one colony: more bees are refused where they were typed", () => {
    const codes = (count: object) =>
      colonyForecast({
        ...question,
        counts: [{ date: "2026-09-01", infested: 1, examined: 50, ...count }],
      }).problems.map(({ code, field }) => `${code} ${field}`);
    expect(codes({ examined: mostCounted + 1 })).toEqual(["season-count-impossible counts[0].infested"]);
    expect(codes({ oneSided: { infested: 0, examined: mostCounted + 1 } })).toEqual([
      "season-count-impossible counts[0].oneSided.infested",
    ]);
    expect(codes({ examined: mostCounted, infested: 5000 })).not.toContain(
      "season-count-impossible counts[0].infested",
    );
  });
});
