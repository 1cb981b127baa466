/** Two stages: how many colonies, and how many bees from each, so that an infested yard is not missed. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { detectionProbability, detectionSampleSize } from "./detection-sample-size.ts";
import { finiteDetectionSampleSize } from "./finite-population.ts";
import { samplingProblem } from "./problems.ts";

export interface TwoStages {
  /** Colonies there are; null when so many that drawing some changes nothing. */
  readonly colonies: number | null;
  /** Smallest share of infested colonies that must not be missed, 0 < p ≤ 1. */
  readonly colonyPrevalence: number;
  /** Smallest share of infested bees in such a colony, 0 < p ≤ 1. */
  readonly beePrevalence: number;
  /** Probability that an infested bee is found, 0 < Se ≤ 1. */
  readonly sensitivity: number;
  /** Wanted probability of at least one positive bee, in (0, 1). */
  readonly confidence: number;
}

export interface TwoStageDesign {
  readonly beesPerColony: number;
  /** Chance that an infested colony gives at least one positive bee: the one these bees attain, not a wanted one. */
  readonly colonySensitivity: number;
  /** Colonies to take when there are very many. */
  readonly ofMany: number;
  /** When the colonies are counted: how many infested the design supposes, and how many to take by the exact law. */
  readonly ofCounted: { readonly infested: number; readonly colonies: Result<number> } | null;
}

/**
 * Colonies to take when `beesPerColony` are taken from each.
 *
 * A colony is found with 1 − (1 − p·Se)^m, bees drawn from a large colony; colonies then are examined with a test of
 * that sensitivity. Tables that enter the wanted sensitivity of a colony (0.95) instead of the attained one can ask
 * for one colony more. Of N colonies, N·p are supposed infested, rounded to the nearest whole, halves to the even one,
 * at least 1.
 *
 * @throws DomainError for numbers outside their range
 * @source Cameron & Baldock 1998, Preventive Veterinary Medicine 34:19–30
 *
 * @example
 * twoStageDesign({ colonies: null, colonyPrevalence: 0.01, beePrevalence: 0.1, sensitivity: 0.95, confidence: 0.95, beesPerColony: 31 }).ofMany  // → 313
 */
export function twoStageDesign(wanted: TwoStages & { readonly beesPerColony: number }): TwoStageDesign {
  const { colonies, colonyPrevalence, beePrevalence, sensitivity, confidence, beesPerColony } = wanted;
  check(wanted);
  ensure(Number.isInteger(beesPerColony) && beesPerColony >= 1, "beesPerColony", beesPerColony, "a whole number ≥ 1");
  const colonySensitivity = detectionProbability({ bees: beesPerColony, designPrevalence: beePrevalence, sensitivity });
  const ofMany = detectionSampleSize({
    designPrevalence: colonyPrevalence,
    confidence,
    sensitivity: colonySensitivity,
  });
  if (colonies === null) return { beesPerColony, colonySensitivity, ofMany, ofCounted: null };
  const infested = Math.max(1, nearest(colonies * colonyPrevalence));
  const taken = finiteDetectionSampleSize({
    population: colonies,
    infested,
    confidence,
    sensitivity: colonySensitivity,
  });
  return { beesPerColony, colonySensitivity, ofMany, ofCounted: { infested, colonies: taken } };
}

export interface CostedDesign {
  readonly beesPerColony: number;
  readonly colonies: number;
  readonly cost: number;
  readonly colonySensitivity: number;
}

export interface CostedStages extends TwoStages {
  readonly costPerColony: number;
  readonly costPerBee: number;
  /** Bees per colony up to which designs are looked at. */
  readonly mostBees: number;
}

export interface CheapestDesign extends CostedDesign {
  /** Every design within two bees per colony of the cheapest, itself among them, by bees. */
  readonly near: readonly CostedDesign[];
}

/**
 * The cheapest two-stage design: over every number of bees per colony, colonies × (cost of a colony + bees × cost of a
 * bee). Equal costs (within 1e-9) go to fewer bees.
 *
 * @returns CheapestDesign; or `no-design-reaches` when no number of bees up to `mostBees` reaches the confidence
 * @throws DomainError for numbers outside their range
 * @source search over the designs of Cameron & Baldock 1998, Preventive Veterinary Medicine 34:19–30
 *
 * @example
 * cheapestTwoStage({ colonies: 400, colonyPrevalence: 0.03, beePrevalence: 0.08, sensitivity: 0.9, confidence: 0.95, costPerColony: 40, costPerBee: 1.2, mostBees: 150 }).value.beesPerColony  // → 24
 */
export function cheapestTwoStage(wanted: CostedStages): Result<CheapestDesign> {
  const designs = costedTwoStages(wanted);
  const [first, ...others] = designs;
  if (!first) {
    return blocked(samplingProblem("no-design-reaches", "blocked", "confidence", { mostBees: wanted.mostBees }));
  }
  const best = others.reduce((cheapest, each) => (each.cost < cheapest.cost - 1e-9 ? each : cheapest), first);
  const near = designs.filter((each) => Math.abs(each.beesPerColony - best.beesPerColony) <= 2);
  return answered({ ...best, near });
}

/**
 * Every two-stage design that reaches the confidence, by bees per colony up to `mostBees`, with its cost; empty when
 * none does.
 *
 * @throws DomainError for numbers outside their range
 * @source designs of Cameron & Baldock 1998, Preventive Veterinary Medicine 34:19–30
 *
 * @example
 * costedTwoStages({ colonies: 400, colonyPrevalence: 0.03, beePrevalence: 0.08, sensitivity: 0.9, confidence: 0.95, costPerColony: 40, costPerBee: 1.2, mostBees: 24 }).at(-1).cost  // → 7224
 */
export function costedTwoStages(wanted: CostedStages): readonly CostedDesign[] {
  const { costPerColony, costPerBee, mostBees, ...stages } = wanted;
  check(stages);
  ensure(costPerColony >= 0 && costPerColony < Infinity, "costPerColony", costPerColony, "0 or more");
  ensure(costPerBee >= 0 && costPerBee < Infinity, "costPerBee", costPerBee, "0 or more");
  ensure(Number.isInteger(mostBees) && mostBees >= 1, "mostBees", mostBees, "a whole number ≥ 1");
  const designs: CostedDesign[] = [];
  for (let beesPerColony = 1; beesPerColony <= mostBees; beesPerColony += 1) {
    const { colonySensitivity, ofMany, ofCounted } = twoStageDesign({ ...stages, beesPerColony });
    const taken = ofCounted === null ? answered(ofMany) : ofCounted.colonies;
    if (!taken.ok) continue;
    const cost = taken.value * (costPerColony + beesPerColony * costPerBee);
    designs.push({ beesPerColony, colonies: taken.value, cost, colonySensitivity });
  }
  return designs;
}

/** To the nearest whole number, halves to the even one. */
function nearest(value: number): number {
  const below = Math.floor(value);
  if (value - below !== 0.5) return Math.round(value);
  return below % 2 === 0 ? below : below + 1;
}

function check(stages: TwoStages): void {
  const { colonies, colonyPrevalence, beePrevalence, sensitivity, confidence } = stages;
  if (colonies !== null)
    ensure(Number.isInteger(colonies) && colonies >= 1, "colonies", colonies, "a whole number ≥ 1");
  for (const [name, share] of Object.entries({ colonyPrevalence, beePrevalence, sensitivity })) {
    ensure(share > 0 && share <= 1, name, share, "in (0, 1]");
  }
  ensure(confidence > 0 && confidence < 1, "confidence", confidence, "in (0, 1)");
}
