/** Limits of a stopped sample against figures computed apart, by their coverage, and stop by stop. */
import { expect, it } from "vitest";
import golden from "../../../tests/golden/stopped-sample-check-values.json" with { type: "json" };
import { clopperPearsonInterval } from "../../numerics/index.ts";
import {
  type SequentialDesign,
  type SequentialPlan,
  type Stop,
  type StoppedEstimate,
  sequentialPlan,
  stoppedCoverage,
  stoppedSampleEstimate,
  stoppingWalk,
} from "./index.ts";

function made(design: SequentialDesign): SequentialPlan {
  const plan = sequentialPlan(design);
  if (!plan.ok) throw new Error(plan.problems[0]?.code);
  return plan.value;
}

const plan = made(golden.plan);

function stopsOf(of: SequentialPlan): readonly Stop[] {
  const stops: Stop[] = [];
  stoppingWalk(of)(0.3, (kind, bees, positive) => stops.push({ kind, bees, positive }));
  return stops;
}

function estimated(
  of: SequentialPlan,
  { bees, positive }: Pick<Stop, "bees" | "positive">,
  level = 0.95,
): StoppedEstimate {
  const found = stoppedSampleEstimate(of, { examined: bees, positive, level });
  if (!found.ok) throw new Error(found.problems[0]?.code);
  return found.value;
}

it("[SD156] 4 of 23 bees: the limits computed apart, and those that forget the stopping", () => {
  const { estimate, naive } = estimated(plan, { bees: golden.examined, positive: golden.positive });
  expect(estimate.low).toBeCloseTo(golden.stageWise[0] as number, 4);
  expect(estimate.high).toBeCloseTo(golden.stageWise[1] as number, 4);
  expect(naive.low).toBeCloseTo(golden.naive[0] as number, 4);
  expect(naive.high).toBeCloseTo(golden.naive[1] as number, 4);
});

it("[SD156] limits rise from stop to stop in the order of what they tell", () => {
  const rank = { low: 0, end: 1, high: 2 } as const;
  const ordered = [...stopsOf(plan)].sort(
    (a, b) =>
      rank[a.kind] - rank[b.kind] || (a.kind === "high" ? b.bees - a.bees : a.bees - b.bees) || a.positive - b.positive,
  );
  expect(ordered.length).toBeGreaterThan(50);
  const limits = ordered.map((stop) => estimated(plan, stop).estimate);
  expect(limits[0]).toMatchObject({ low: 0, value: 0 });
  expect(limits.at(-1)).toMatchObject({ high: 1, value: 1 });
  for (const [i, { low, high }] of limits.entries()) {
    expect(low).toBeGreaterThanOrEqual(limits[i - 1]?.low ?? 0);
    expect(high).toBeGreaterThanOrEqual(limits[i - 1]?.high ?? 0);
  }
});

it("[SD156] a plan that looks once gives Clopper and Pearson's limits", () => {
  const once = made({ ...golden.plan, maxBees: 30, minBees: 30 });
  for (const positive of [0, 1, 3, 7, 29, 30]) {
    const { estimate } = estimated(once, { bees: 30, positive });
    const { low, high } = clopperPearsonInterval({ x: positive, n: 30, level: 0.95 });
    expect(Math.abs(estimate.low - low)).toBeLessThan(1e-12);
    expect(Math.abs(estimate.high - high)).toBeLessThan(1e-12);
  }
});

const shares = Array.from({ length: 99 }, (_, i) => (i + 1) / 100);

/** Looks late and often, so that stops on both sides may be left out of one interval. */
const patient = made({
  lowPrevalence: 0.05,
  highPrevalence: 0.15,
  alpha: 0.1,
  beta: 0.1,
  maxBees: 90,
  minBees: 30,
  batch: 5,
});

it.each([0.8, 0.95])("[SD157] at %d the limits hold the share at least so often, whatever the share", (level) => {
  for (const each of [plan, patient]) {
    const coverage = stoppedCoverage(each, { prevalences: shares, level });
    for (const { stageWise } of coverage) expect(stageWise).toBeGreaterThanOrEqual(level - 1e-12); // sums of some hundred chances
  }
  // The bound is not idle: where stops on both sides are left out the coverage comes near its level.
  const least = Math.min(...stoppedCoverage(patient, { prevalences: shares, level }).map((each) => each.stageWise));
  expect(least).toBeLessThan((1 + level) / 2);
});

it("[SD157] the limits that forget the stopping fall below their level", () => {
  const naive = stoppedCoverage(plan, { prevalences: shares, level: 0.95 }).map((each) => each.naive);
  expect(Math.min(...naive)).toBeLessThan(0.95);
});

it("[SD157] the coverage told is that of the limits given", () => {
  const short = made({ ...golden.plan, maxBees: 20, minBees: 4, batch: 4 });
  const limits = new Map(stopsOf(short).map((stop) => [`${stop.bees} ${stop.positive}`, estimated(short, stop)]));
  for (const p of [0.031, 0.117, 0.253, 0.619]) {
    const sum = { stageWise: 0, naive: 0 };
    stoppingWalk(short)(p, (_, bees, positive, chance) => {
      const found = limits.get(`${bees} ${positive}`) as StoppedEstimate;
      if (found.estimate.low <= p && p <= found.estimate.high) sum.stageWise += chance;
      if (found.naive.low <= p && p <= found.naive.high) sum.naive += chance;
    });
    const [told] = stoppedCoverage(short, { prevalences: [p], level: 0.95 });
    expect(told?.stageWise).toBeCloseTo(sum.stageWise, 12);
    expect(told?.naive).toBeCloseTo(sum.naive, 12);
  }
});

it.each([
  [50, 1, 1],
  [41, 6, 5],
])(
  "[SD158] at most %i bees: one estimate is right on average, the other lies between the limits",
  (maxBees, minBees, batch) => {
    const each = made({ ...golden.plan, maxBees, minBees, batch });
    const found = new Map(stopsOf(each).map((stop) => [`${stop.bees} ${stop.positive}`, estimated(each, stop, 0.5)]));
    for (const { estimate } of found.values()) {
      expect(estimate.value).toBeGreaterThanOrEqual(estimate.low);
      expect(estimate.value).toBeLessThanOrEqual(estimate.high);
    }
    for (const p of [0, 0.04, 0.13, 0.4, 1]) {
      let mean = 0;
      stoppingWalk(each)(p, (_, bees, positive, chance) => {
        mean += chance * (found.get(`${bees} ${positive}`) as StoppedEstimate).unbiased;
      });
      expect(Math.abs(mean - p)).toBeLessThan(1e-12);
    }
  },
);

it("[SD159] counts that do not stop the plan are refused", () => {
  for (const sample of [
    { examined: 10, positive: 1 },
    { examined: 23, positive: 3 },
    { examined: 60, positive: 20 },
    { examined: 5, positive: 5 },
  ]) {
    const refused = stoppedSampleEstimate(plan, { ...sample, level: 0.95 });
    expect(refused.problems[0]?.code).toBe("not-a-stop-of-the-plan");
  }
  expect(() => stoppedSampleEstimate(plan, { examined: 23, positive: 4, level: 1 })).toThrow("level must be");
});
