/** A sample followed bee by bee, and what holds when more bees are read than the plan asked for. */
import { expect, it } from "vitest";
import golden from "../../../tests/golden/stopped-sample-check-values.json" with { type: "json" };
import { binomial, clopperPearsonInterval } from "../../numerics/index.ts";
import {
  pastStopEstimate,
  plannedStop,
  type ReadPastStop,
  runningPath,
  type SequentialDesign,
  type SequentialPlan,
  type Stop,
  sequentialPlan,
  stoppedSampleEstimate,
  stoppingWalk,
} from "./index.ts";

function made(design: SequentialDesign): SequentialPlan {
  const plan = sequentialPlan(design);
  if (!plan.ok) throw new Error(plan.problems[0]?.code);
  return plan.value;
}

const plan = made(golden.plan);

/** Bees as a row of marks: 1 infested, 0 clear. */
const bees = (row: string): readonly boolean[] => [...row].map((mark) => mark === "1");

it("[SD270] a path stops at its first crossing; what is read later changes nothing", () => {
  const row = "00100000010000010000001";
  expect(runningPath(plan, bees(row))).toMatchObject({
    stop: { kind: "high", bees: 23, positive: 4, said: "high" },
    soonest: null,
  });
  expect(runningPath(plan, bees(`${row}0000000000`)).stop).toEqual(runningPath(plan, bees(row)).stop);
  expect(runningPath(plan, bees(row.slice(0, 22))).stop).toBe(null);
});

it("[SD270] an open path tells the soonest stop if none is found and if all are, and reading them stops there", () => {
  for (const row of ["0", "1", "0010", "0100000100", "00000000100"]) {
    const { stop, soonest } = runningPath(plan, bees(row));
    expect(stop).toBe(null);
    for (const [mark, ahead] of [
      ["0", soonest?.noneMore],
      ["1", soonest?.allMore],
    ] as const) {
      const more = (ahead?.bees ?? 0) - row.length;
      expect(runningPath(plan, bees(row + mark.repeat(more))).stop).toEqual(ahead);
      expect(runningPath(plan, bees(row + mark.repeat(more - 1))).stop).toBe(null);
    }
  }
  expect(() => runningPath(plan, [])).toThrow("results must be");
});

it("[SD270] the last bee stops by the rule of the end", () => {
  const atEnd = (rule: NonNullable<SequentialDesign["atEnd"]>) =>
    runningPath(made({ ...golden.plan, maxBees: 10, minBees: 10, atEnd: rule }), bees("0001000000")).stop;
  expect(atEnd("midline")).toEqual({ kind: "end", bees: 10, positive: 1, said: "low" });
  expect(atEnd("undecided")?.said).toBe("undecided");
  expect(atEnd({ lowUpTo: 0 })?.said).toBe("high");
  expect(atEnd({ lowUpTo: 1 })?.said).toBe("low");
  expect(plannedStop(plan, { examined: 10, positive: 1 })).toBe(null);
});

function past(sample: Omit<ReadPastStop, "level">) {
  const found = pastStopEstimate(plan, { ...sample, level: 0.95 });
  if (!found.ok) throw new Error(found.problems[0]?.code);
  return found;
}

const atStop = { examined: golden.examined, positive: golden.positive };

it("[SD271] both are given: at the stop by the order of the stops, of all bees by a fixed number", () => {
  const { value, problems } = past({ atStop, all: { examined: 50, positive: 6 }, setBeforehand: 50 });
  expect(problems).toEqual([]);
  expect(value.stop.said).toBe("high");
  expect(value.atStop.estimate.low).toBeCloseTo(golden.stageWise[0] as number, 4);
  expect(value.atStop.estimate.high).toBeCloseTo(golden.stageWise[1] as number, 4);
  expect(value.allBees).toMatchObject(clopperPearsonInterval({ x: 6, n: 50, level: 0.95 }));
  expect(value.allBeesHold).toBe(true);
});

it("[SD271] bees read on with no number set, or another, weaken the limits of all bees and say so", () => {
  const all = { examined: 40, positive: 6 };
  const unplanned = past({ atStop, all, setBeforehand: null });
  expect(unplanned.problems[0]).toMatchObject({ code: "read-on-unplanned", severity: "warned", slots: { readOn: 17 } });
  expect(unplanned.value.allBeesHold).toBe(false);
  expect(unplanned.value.allBees?.n).toBe(40);
  const other = past({ atStop, all, setBeforehand: 50 });
  expect(other.problems[0]).toMatchObject({ code: "read-other-than-planned", severity: "warned" });
  const none = past({ atStop, all: atStop, setBeforehand: null });
  expect([none.problems, none.value.allBees]).toEqual([[], null]);
});

const level = 0.9;
const shares = Array.from({ length: 40 }, (_, i) => (i + 1) / 100);

/** Whether limits from `positive` of `examined`, taken as a fixed number, hold the share. */
function holds(positive: number, examined: number, share: number): boolean {
  const { low, high } = clopperPearsonInterval({ x: positive, n: examined, level });
  return low <= share && share <= high;
}

/** Coverage of the limits of all bees where reading goes on to `total` after stops of some kinds, exact over all stops. */
function coverageOfAll(share: number, { total, after }: { total: number; after: readonly Stop["kind"][] }): number {
  let covered = 0;
  stoppingWalk(plan)(share, (kind, examined, positive, chance) => {
    if (!after.includes(kind)) {
      if (holds(positive, examined, share)) covered += chance;
      return;
    }
    const rest = binomial({ n: total - examined, p: share });
    for (let more = 0; more <= total - examined; more += 1) {
      if (holds(positive + more, total, share)) covered += chance * rest.pmf(more);
    }
  });
  return covered;
}

it("[SD272] all bees of a number set beforehand hold as those of a fixed sample do, at their level or above", () => {
  for (const share of [0.03, 0.1, 0.22, 0.4]) {
    const covered = coverageOfAll(share, { total: 60, after: ["low", "end", "high"] });
    const fixed = binomial({ n: 60, p: share });
    let sum = 0;
    for (let x = 0; x <= 60; x += 1) if (holds(x, 60, share)) sum += fixed.pmf(x);
    expect(covered).toBeCloseTo(sum, 12);
    expect(covered).toBeGreaterThanOrEqual(level);
  }
});

it.each([["low"], ["high"]] as const)(
  "[SD272] read on only where the plan said %s, all bees hold too rarely",
  (kind) => {
    const covered = shares.map((share) => coverageOfAll(share, { total: 50, after: [kind] }));
    // 0.849 and 0.861 at worst: 4 to 5 in 100 below what they claim.
    expect(Math.min(...covered)).toBeLessThan(0.87);
  },
);

it("[SD273] counts of all bees that cannot hold those at the stop are refused, and so is a stop that is none", () => {
  const code = (all: ReadPastStop["all"], at = atStop) =>
    pastStopEstimate(plan, { atStop: at, all, setBeforehand: null, level: 0.95 }).problems[0]?.code;
  expect(code({ examined: 22, positive: 4 })).toBe("past-stop-counts-disagree");
  expect(code({ examined: 30, positive: 3 })).toBe("past-stop-counts-disagree");
  expect(code({ examined: 24, positive: 6 })).toBe("past-stop-counts-disagree");
  expect(code({ examined: 30, positive: 4 }, { examined: 22, positive: 3 })).toBe("not-a-stop-of-the-plan");
  expect(() =>
    pastStopEstimate(plan, { atStop, all: { examined: 30.5, positive: 4 }, setBeforehand: null, level: 0.95 }),
  ).toThrow("all.examined must be");
  expect(stoppedSampleEstimate(plan, { ...atStop, level: 0.95 }).ok).toBe(true);
});
