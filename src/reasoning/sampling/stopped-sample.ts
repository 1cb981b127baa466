/** The share of infested bees when reading stopped because of what was found: limits and estimates that know of it. */
import { binomial, clopperPearsonInterval, root } from "../../numerics/index.ts";
import { answered, blocked, type Estimate, ensure, type Result } from "../../units/index.ts";
import { samplingProblem } from "./problems.ts";
import type { SequentialPlan } from "./sequential-plan.ts";
import { type Stop, stoppingWalk } from "./stopping-walk.ts";

export interface StoppedSample {
  /** Bees read, and how many of them were infested. */
  readonly examined: number;
  readonly positive: number;
  readonly level: number;
}

export interface StoppedEstimate {
  /** Limits under the stage-wise order; the value is the share that puts half the chance on either side. */
  readonly estimate: Estimate;
  /** The estimate that is right on average over all stops of the plan. */
  readonly unbiased: number;
  /** What is right only for a number of bees fixed beforehand, to be shown as such. */
  readonly naive: Estimate;
}

/**
 * Limits for the share of infested bees after a sequential plan stopped at `positive` of `examined`.
 *
 * Stops are put in order of what they tell: low stops by rising number of bees, then the unstopped ends by rising
 * count, then high stops by falling number of bees. The low limit is the share at which this stop or a higher one has
 * chance (1 − level)/2, the high limit that of this stop or a lower one: Clopper and Pearson's construction, so the
 * coverage is never below the level. Bees drawn independently, the bench missing none.
 *
 * @returns estimates, or `not-a-stop-of-the-plan`
 * @throws DomainError for counts that are not whole or a level outside (0, 1)
 * @source stage-wise order: Fairbanks & Madsen 1982, Biometrika 69:69–74; Jennison & Turnbull 1983, Technometrics 25:49–58; unbiased: Girshick, Mosteller & Savage 1946, Annals of Mathematical Statistics 17:13–23 (all from memory)
 *
 * @example
 * stoppedSampleEstimate(sequentialPlan({ lowPrevalence: 0.05, highPrevalence: 0.2, alpha: 0.1, beta: 0.1, maxBees: 50 }).value, { examined: 23, positive: 4, level: 0.95 }).value.estimate.low  // → 0.0363
 */
export function stoppedSampleEstimate(plan: SequentialPlan, sample: StoppedSample): Result<StoppedEstimate> {
  const { examined, positive, level } = sample;
  ensure(Number.isInteger(examined) && examined >= 1, "examined", examined, "a whole number ≥ 1");
  ensure(Number.isInteger(positive) && positive >= 0, "positive", positive, "a whole number ≥ 0");
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const stops = stopsOf(plan);
  const place = stops.findIndex((stop) => stop.bees === examined && stop.positive === positive);
  const stop = stops[place];
  if (!stop) return blocked(samplingProblem("not-a-stop-of-the-plan", "blocked", "positive", { examined, positive }));

  const tails = tailsOf(plan, stop);
  const outside = (1 - level) / 2;
  const solved = (f: (p: number) => number) => root({ f, low: 0, high: 1 });
  const shared = { level, interval: "confidence", n: examined, rule: "SD156" } as const;
  const estimate: Estimate = {
    ...shared,
    value: solved((p) => tails(p).above + tails(p).at / 2 - 0.5),
    low: place === 0 ? 0 : solved((p) => tails(p).above + tails(p).at - outside),
    high: place === stops.length - 1 ? 1 : solved((p) => outside - tails(p).below - tails(p).at),
    method: "stage-wise",
  };
  const naive: Estimate = {
    ...shared,
    value: positive / examined,
    ...clopperPearsonInterval({ x: positive, n: examined, level }),
    method: "clopper-pearson",
  };
  return answered({ estimate, unbiased: unbiasedShare(plan, stop), naive });
}

export interface StoppedCoverage {
  readonly prevalence: number;
  /** Exact chance that the stage-wise limits hold the true share. */
  readonly stageWise: number;
  /** The same for Clopper and Pearson's limits taken as if the number of bees had been fixed. */
  readonly naive: number;
}

/**
 * Exact coverage of both intervals at each prevalence, over every stop of the plan.
 *
 * @throws DomainError for a prevalence outside [0, 1] or a level outside (0, 1)
 * @source exact recursion; a share lies between the limits when neither tail is below (1 − level)/2
 *
 * @example
 * stoppedCoverage(sequentialPlan({ lowPrevalence: 0.05, highPrevalence: 0.2, alpha: 0.1, beta: 0.1, maxBees: 50 }).value, { prevalences: [0.2], level: 0.95 })[0].stageWise >= 0.95  // → true
 */
export function stoppedCoverage(
  plan: SequentialPlan,
  { prevalences, level }: { readonly prevalences: readonly number[]; readonly level: number },
): readonly StoppedCoverage[] {
  ensure(level > 0 && level < 1, "level", level, "in (0, 1)");
  const outside = (1 - level) / 2;
  const walk = stoppingWalk(plan);
  return prevalences.map((prevalence) => {
    ensure(prevalence >= 0 && prevalence <= 1, "prevalence", prevalence, "in [0, 1]");
    const chances: (Stop & { readonly chance: number })[] = [];
    walk(prevalence, (kind, bees, positive, chance) => chances.push({ kind, bees, positive, chance }));
    chances.sort(byOrder);
    const total = chances.reduce((sum, { chance }) => sum + chance, 0);
    let [before, stageWise, naive] = [0, 0, 0];
    for (const { bees, positive, chance } of chances) {
      const upTo = before + chance;
      if (upTo >= outside && total - before >= outside) stageWise += chance;
      const fixed = binomial({ n: bees, p: prevalence });
      if (fixed.cdf(positive) >= outside && fixed.sf(positive - 1) >= outside) naive += chance;
      before = upTo;
    }
    return { prevalence, stageWise, naive };
  });
}

/** Every stop that the plan can reach, from the one that tells of the lowest share to that of the highest. */
function stopsOf(plan: SequentialPlan): readonly Stop[] {
  const stops: Stop[] = [];
  stoppingWalk(plan)(0.5, (kind, bees, positive) => stops.push({ kind, bees, positive }));
  return stops.sort(byOrder);
}

const rank = { low: 0, end: 1, high: 2 } as const;

function byOrder(one: Stop, other: Stop): number {
  if (one.kind !== other.kind) return rank[one.kind] - rank[other.kind];
  const earlier = one.kind === "high" ? other.bees - one.bees : one.bees - other.bees;
  return earlier || one.positive - other.positive;
}

interface Tails {
  readonly below: number;
  readonly at: number;
  readonly above: number;
}

/** Chances of a lower stop, of this one, and of a higher one, at a share of infested bees. */
function tailsOf(plan: SequentialPlan, stop: Stop): (prevalence: number) => Tails {
  const walk = stoppingWalk(plan);
  return (prevalence) => {
    let [below, at, above] = [0, 0, 0];
    walk(prevalence, (kind, bees, positive, chance) => {
      const side = byOrder({ kind, bees, positive }, stop);
      if (side < 0) below += chance;
      else if (side > 0) above += chance;
      else at += chance;
    });
    return { below, at, above };
  };
}

/** Share of the samples ending at this stop whose first bee was infested: right on average, as every first bee is. */
function unbiasedShare(plan: SequentialPlan, stop: Stop): number {
  const walk = stoppingWalk(plan);
  const chanceOf = (firstPositive: boolean): number => {
    let found = 0;
    const see = (kind: Stop["kind"], bees: number, positive: number, chance: number) => {
      if (kind === stop.kind && bees === stop.bees && positive === stop.positive) found = chance;
    };
    // Any share gives the same answer; at the one found the chances are far from underflow.
    walk(stop.positive / stop.bees, see, firstPositive);
    return found;
  };
  return chanceOf(true) / chanceOf(false);
}
