/** Testing bees in pools: how many pools detect, which size saves tests, and what a thinned signal costs. */
import { answered, ensure, type Result } from "../../units/index.ts";
import { detectionProbability, detectionSampleSize } from "./detection-sample-size.ts";
import { samplingProblem } from "./problems.ts";

export interface PoolDetection {
  readonly pools: number;
  /** Chance of at least one positive pool with that many. */
  readonly reached: number;
}

/**
 * Pools to test so that an infestation is not missed, pools of `size` bees drawn at random from a large colony.
 *
 * A pool holds an infested bee with 1 − (1 − p)^size and is found then with the sensitivity of the pool test, taken
 * as the same however many infested bees it holds.
 *
 * @throws DomainError for numbers outside their range
 * @source Christensen & Gardner 2000, Preventive Veterinary Medicine 45:83–106 (herd sensitivity of pools)
 *
 * @example
 * poolsToDetect({ size: 5, prevalence: 0.01, sensitivity: 0.9, confidence: 0.95 }).pools  // → 67
 */
export function poolsToDetect(wanted: {
  readonly size: number;
  readonly prevalence: number;
  readonly sensitivity: number;
  readonly confidence: number;
}): PoolDetection {
  const { size, prevalence, sensitivity, confidence } = wanted;
  checkSize("size", size);
  ensure(prevalence > 0 && prevalence <= 1, "prevalence", prevalence, "in (0, 1]");
  const designPrevalence = someInfested(prevalence, size);
  const pools = detectionSampleSize({ designPrevalence, confidence, sensitivity });
  return { pools, reached: detectionProbability({ bees: pools, designPrevalence, sensitivity }) };
}

export interface PoolSaving {
  readonly size: number;
  /** Tests per bee on average, pools first and every bee of a positive pool after. */
  readonly pooledTestsPerBee: number;
  /** The same, or 1 where testing each bee by itself is no dearer. */
  readonly testsPerBee: number;
}

/**
 * The pool size that needs the fewest tests to tell every bee: 1/k + 1 − (1 − p)^k at its smallest, k from 2.
 *
 * @returns PoolSaving, with the note `pooling-saves-nothing` where single tests are no more
 * @throws DomainError for numbers outside their range
 * @source Dorfman 1943, Annals of Mathematical Statistics 14:436–440
 *
 * @example
 * dorfmanPools({ prevalence: 0.01 }).value.size  // → 11
 */
export function dorfmanPools(wanted: {
  readonly prevalence: number;
  /** Largest size to consider; 200 when not given. */
  readonly largest?: number;
}): Result<PoolSaving> {
  const { prevalence, largest = 200 } = wanted;
  ensure(prevalence > 0 && prevalence < 1, "prevalence", prevalence, "in (0, 1)");
  ensure(Number.isInteger(largest) && largest >= 2, "largest", largest, "a whole number ≥ 2");
  let [size, fewest] = [2, Infinity];
  for (let each = 2; each <= largest; each += 1) {
    const tests = dorfmanTests({ prevalence, size: each });
    if (tests < fewest) [size, fewest] = [each, tests];
  }
  const saving = { size, pooledTestsPerBee: fewest, testsPerBee: Math.min(1, fewest) };
  if (fewest < 1) return answered(saving);
  return answered(saving, [samplingProblem("pooling-saves-nothing", "noted", "prevalence", { prevalence })]);
}

/**
 * Tests per bee on average with pools of `size`, every bee of a positive pool tested after: 1/k + 1 − (1 − p)^k.
 *
 * @throws DomainError for numbers outside their range
 * @source Dorfman 1943, Annals of Mathematical Statistics 14:436–440
 *
 * @example
 * dorfmanTests({ prevalence: 0.05, size: 5 })  // → 0.4262190625
 */
export function dorfmanTests({ prevalence, size }: { readonly prevalence: number; readonly size: number }): number {
  ensure(prevalence > 0 && prevalence < 1, "prevalence", prevalence, "in (0, 1)");
  ensure(Number.isInteger(size) && size >= 2, "size", size, "a whole number ≥ 2");
  return 1 / size + someInfested(prevalence, size);
}

export interface DilutedPool {
  readonly size: number;
  /** Chance that a pool of this size reacts. */
  readonly reacts: number;
  readonly pools: number;
  readonly cost: number;
}

export interface DilutionDesign {
  readonly best: DilutedPool;
  /** Chance that an endlessly large pool reacts: what no size exceeds. */
  readonly limit: number;
  /** Every size looked at, from 1. */
  readonly sizes: readonly DilutedPool[];
}

/**
 * The cheapest pool size when a bigger pool thins the signal.
 *
 * Model, our own and not checked against a bench: a pool of k with j infested bees reacts with 1 − exp(−signal·j/k), so
 * that one bee among k gives a k-th of its signal. A pool then reacts with 1 − (1 − p + p·exp(−signal/k))^k, which grows
 * with k to 1 − exp(−signal·p): bigger pools never lose, per pool, and cost decides. Equal costs (to nine decimals) go
 * to the smaller size.
 *
 * @throws DomainError for numbers outside their range
 * @source own model; no published figure
 *
 * @example
 * poolDilution({ prevalence: 0.02, signal: 20, confidence: 0.95, costPerPool: 12, costPerBee: 0.25 }).best.size  // → 24
 */
export function poolDilution(wanted: {
  readonly prevalence: number;
  /** How strongly a pool of infested bees alone reacts: the mean number of copies seen. Above 0. */
  readonly signal: number;
  readonly confidence: number;
  readonly costPerPool: number;
  readonly costPerBee: number;
  /** Largest size to consider; 100 when not given. */
  readonly largest?: number;
}): DilutionDesign {
  const { prevalence, signal, confidence, costPerPool, costPerBee, largest = 100 } = wanted;
  ensure(prevalence > 0 && prevalence <= 1, "prevalence", prevalence, "in (0, 1]");
  ensure(signal > 0 && signal < Infinity, "signal", signal, "above 0");
  ensure(costPerPool >= 0 && costPerPool < Infinity, "costPerPool", costPerPool, "0 or more");
  ensure(costPerBee >= 0 && costPerBee < Infinity, "costPerBee", costPerBee, "0 or more");
  checkSize("largest", largest);
  const sizes = Array.from({ length: largest }, (_, i) => {
    const size = i + 1;
    const reacts = -Math.expm1(size * Math.log1p(prevalence * Math.expm1(-signal / size)));
    const pools = detectionSampleSize({ designPrevalence: reacts, confidence, sensitivity: 1 });
    return { size, reacts, pools, cost: pools * (costPerPool + size * costPerBee) };
  });
  const round = (cost: number) => Math.round(cost * 1e9) / 1e9;
  const best = sizes.reduce((cheapest, each) => (round(each.cost) < round(cheapest.cost) ? each : cheapest));
  return { best, limit: -Math.expm1(-signal * prevalence), sizes };
}

/** Chance that at least one of `size` is infested. */
const someInfested = (prevalence: number, size: number): number => -Math.expm1(size * Math.log1p(-prevalence));

const checkSize = (name: string, size: number): void =>
  ensure(Number.isInteger(size) && size >= 1, name, size, "a whole number ≥ 1");
