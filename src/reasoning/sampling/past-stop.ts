/** Bees read on after a sequential plan had stopped: the share at the stop, the share of all bees, and which one holds. */
import { clopperPearsonInterval } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Problem, type Result } from "../../units/index.ts";
import { samplingProblem } from "./problems.ts";
import { type Counts, type PlannedStop, plannedStop } from "./running-path.ts";
import type { SequentialPlan } from "./sequential-plan.ts";
import { type StoppedEstimate, stoppedSampleEstimate } from "./stopped-sample.ts";

export interface ReadPastStop {
  readonly atStop: Counts;
  /** All bees read, those up to the stop among them. */
  readonly all: Counts;
  /** Bees to be read whatever was found, set before the first one; null where no such number was set. */
  readonly setBeforehand: number | null;
  readonly level: number;
}

export interface PastStopEstimate {
  readonly stop: PlannedStop;
  /** Holds always: what comes after the stop is no part of it. */
  readonly atStop: StoppedEstimate;
  /** Clopper and Pearson's limits of all bees; null where none was read past the stop. */
  readonly allBees: Estimate | null;
  /** Whether the limits of all bees keep their level: only when just this number was set beforehand. */
  readonly allBeesHold: boolean;
}

/**
 * Both estimates of a sample that was read past its stop.
 *
 * The plan's answer is that of the first stop and stays. A number of bees set beforehand and read whatever was found
 * makes a fixed sample, and all its bees count. Reading on because of what was found makes neither: the limits of all
 * bees are given, and a warning says that they may hold too rarely.
 *
 * @returns both, warned of with `read-on-unplanned` or `read-other-than-planned`; or `past-stop-counts-disagree`, `not-a-stop-of-the-plan`
 * @throws DomainError for counts that are not whole or a level outside (0, 1)
 * @source stage-wise order as in `stoppedSampleEstimate`; Clopper & Pearson 1934, Biometrika 26:404–413, for a fixed number
 *
 * @example
 * pastStopEstimate(sequentialPlan({ lowPrevalence: 0.05, highPrevalence: 0.2, alpha: 0.1, beta: 0.1, maxBees: 50 }).value, { atStop: { examined: 23, positive: 4 }, all: { examined: 50, positive: 6 }, setBeforehand: 50, level: 0.95 }).value.allBees.high  // → 0.2431
 */
export function pastStopEstimate(plan: SequentialPlan, sample: ReadPastStop): Result<PastStopEstimate> {
  const { atStop, all, setBeforehand, level } = sample;
  ensure(Number.isInteger(all.examined) && all.examined >= 1, "all.examined", all.examined, "a whole number ≥ 1");
  ensure(Number.isInteger(all.positive) && all.positive >= 0, "all.positive", all.positive, "a whole number ≥ 0");
  const isSet = setBeforehand === null || (Number.isInteger(setBeforehand) && setBeforehand >= 1);
  ensure(isSet, "setBeforehand", setBeforehand, "a whole number ≥ 1, or null");
  const later = { examined: all.examined - atStop.examined, positive: all.positive - atStop.positive };
  if (later.examined < 0 || later.positive < 0 || later.positive > later.examined) {
    const slots = { examined: atStop.examined, positive: atStop.positive };
    return blocked(
      samplingProblem("past-stop-counts-disagree", "blocked", "all", {
        ...slots,
        allExamined: all.examined,
        allPositive: all.positive,
      }),
    );
  }
  const stopped = stoppedSampleEstimate(plan, { ...atStop, level });
  if (!stopped.ok) return stopped;
  const stop = plannedStop(plan, atStop);
  if (!stop) throw new Error("a stop with an estimate is a stop of the plan");
  const shared = { stop, atStop: stopped.value };
  if (later.examined === 0) return answered({ ...shared, allBees: null, allBeesHold: false });
  const allBees: Estimate = {
    value: all.positive / all.examined,
    ...clopperPearsonInterval({ x: all.positive, n: all.examined, level }),
    level,
    interval: "confidence",
    method: "clopper-pearson",
    n: all.examined,
    rule: "SD271",
  };
  const warning = warningOf(later.examined, all.examined, setBeforehand);
  return answered({ ...shared, allBees, allBeesHold: warning === null }, warning ? [warning] : []);
}

function warningOf(readOn: number, examined: number, setBeforehand: number | null): Problem | null {
  if (setBeforehand === examined) return null;
  if (setBeforehand === null)
    return samplingProblem("read-on-unplanned", "warned", "setBeforehand", { readOn, examined });
  return samplingProblem("read-other-than-planned", "warned", "setBeforehand", { examined, setBeforehand });
}
