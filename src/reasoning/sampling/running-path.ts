/** A sample read bee by bee against a plan: where it stopped, or what would stop it soonest. */
import { ensure } from "../../units/index.ts";
import type { SequentialPlan } from "./sequential-plan.ts";
import { type Stop, saidAtEnd } from "./stopping-walk.ts";

export interface Counts {
  readonly examined: number;
  readonly positive: number;
}

export interface PlannedStop extends Stop {
  /** What the plan says there, by its lines or, at the end, by its rule. */
  readonly said: "low" | "high" | "undecided";
}

export interface RunningPath {
  /** Infested bees after each bee read; at place i after i + 1 bees. */
  readonly positives: readonly number[];
  /** The first stop on the path; null while reading goes on. */
  readonly stop: PlannedStop | null;
  /** The next stop if no further bee is infested, and the next if every one is; null when stopped. */
  readonly soonest: { readonly noneMore: PlannedStop; readonly allMore: PlannedStop } | null;
}

/**
 * Follows a sample in the order in which its bees were read. Bees after the stop stay on the path and change nothing.
 *
 * @throws DomainError for a sample of no bee
 * @source the plan's own looks
 *
 * @example
 * runningPath(sequentialPlan({ lowPrevalence: 0.05, highPrevalence: 0.15, alpha: 0.1, beta: 0.1, maxBees: 100 }).value, [false, true, false]).soonest.noneMore.bees  // → 31
 */
export function runningPath(plan: SequentialPlan, results: readonly boolean[]): RunningPath {
  ensure(results.length >= 1, "results", results.length, "at least one bee");
  const stopAfter = lookedAt(plan);
  const positives: number[] = [];
  let stop: PlannedStop | null = null;
  for (const infested of results) {
    positives.push((positives.at(-1) ?? 0) + Number(infested));
    stop ??= stopAfter({ examined: positives.length, positive: positives.at(-1) ?? 0 });
  }
  if (stop) return { positives, stop, soonest: null };
  const from = { examined: results.length, positive: positives.at(-1) ?? 0 };
  return {
    positives,
    stop,
    soonest: { noneMore: stopAhead(plan, from, 0), allMore: stopAhead(plan, from, 1) },
  };
}

/**
 * The stop at these counts, whatever the order in which the bees were read; null where the plan would have read on.
 *
 * It does not ask whether the counts can be reached without an earlier stop; `stoppedSampleEstimate` does.
 */
export const plannedStop = (plan: SequentialPlan, counts: Counts): PlannedStop | null => lookedAt(plan)(counts);

function lookedAt(plan: SequentialPlan): (counts: Counts) => PlannedStop | null {
  const looks = new Map(plan.looks.map((look) => [look.bees, look]));
  return ({ examined: bees, positive }) => {
    const look = looks.get(bees);
    if (!look) return null;
    if (look.low !== null && positive <= look.low) return { kind: "low", bees, positive, said: "low" };
    if (look.high !== null && positive >= look.high) return { kind: "high", bees, positive, said: "high" };
    if (bees < plan.design.maxBees) return null;
    return { kind: "end", bees, positive, said: saidAtEnd(plan, positive) };
  };
}

/** The stop met when each further bee adds `more` infested ones. */
function stopAhead(plan: SequentialPlan, { examined, positive }: Counts, more: 0 | 1): PlannedStop {
  const stopAfter = lookedAt(plan);
  for (let bees = examined + 1; bees <= plan.design.maxBees; bees += 1) {
    const stop = stopAfter({ examined: bees, positive: positive + more * (bees - examined) });
    if (stop) return stop;
  }
  throw new Error("a path with no stop so far meets one by the last bee");
}
