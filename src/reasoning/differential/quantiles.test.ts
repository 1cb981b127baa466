/** Dots and ranges are two views of the same draws. */
import { expect, it } from "vitest";
import { differential, quantiles } from "./index.ts";

it("[DX60] ten points begin and end at the ranges of the same seed", () => {
  const input = { season: "spring", findings: { crawlers: "present", k_wing: "present" }, draws: 60 } as const;
  const [answer, points] = [differential(input), quantiles(input, 10)];
  expect(answer.ok && points.ok).toBe(true);
  if (!answer.ok || !points.ok) return;
  for (const { id, low, high } of answer.value.conditions) {
    expect(points.value[id]).toHaveLength(10);
    expect(points.value[id][0]).toBeCloseTo(low, 12);
    expect(points.value[id][9]).toBeCloseTo(high, 12);
    expect(points.value[id].toSorted((one, other) => one - other)).toEqual(points.value[id]);
  }
});

it("[DX60] bad input gives its problems, not points", () => {
  expect(quantiles({ findings: {} }, 20).ok).toBe(false);
});
