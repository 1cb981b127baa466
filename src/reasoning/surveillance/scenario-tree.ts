/** The sensitivity of a round over strata of different risk: a scenario tree. */
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { surveillanceProblem } from "./problems.ts";

export interface RiskStratum {
  /** Risk of being infested relative to the other strata, > 0. */
  readonly relativeRisk: number;
  /** Share of all clusters (or units) that lie in this stratum, > 0; the shares make 1. */
  readonly share: number;
}

export interface TestedCluster {
  /** Which of the strata, counted from 0. */
  readonly stratum: number;
  /** Units (bees, colonies) tested in it, a whole number ≥ 0; none found. */
  readonly units: number;
  /** Probability that an infested unit is found, 0 < Se ≤ 1. */
  readonly sensitivity: number;
}

export interface ScenarioTree {
  /** Adjusted risks: relative to the average of all clusters. */
  readonly risks: readonly number[];
  /** Probability that a cluster of each stratum is infested when the region is. */
  readonly infestedShares: readonly number[];
  /** Probability of finding at least one in each stratum, and over all, if the region is infested. */
  readonly byStratum: readonly number[];
  readonly sensitivity: number;
}

/**
 * Adjusted risks RR_i/Σ RR·share: the relative risks put so that their average over all clusters is 1.
 *
 * @returns one for each stratum, or `shares-not-whole`
 * @throws DomainError for no stratum, or a risk or share that is not above 0
 * @source Martin, Cameron & Greiner 2007, Preventive Veterinary Medicine 79:71–97
 *
 * @example
 * adjustedRisks([{ relativeRisk: 5, share: 0.1 }, { relativeRisk: 1, share: 0.9 }]).value  // → [3.5714285714, 0.71428571429]
 */
export function adjustedRisks(strata: readonly RiskStratum[]): Result<readonly number[]> {
  ensure(strata.length > 0, "strata", strata.length, "at least one");
  for (const { relativeRisk, share } of strata) {
    ensure(relativeRisk > 0 && relativeRisk < Infinity, "relativeRisk", relativeRisk, "a finite number above 0");
    ensure(share > 0 && share <= 1, "share", share, "in (0, 1]");
  }
  const total = strata.reduce((sum, { share }) => sum + share, 0);
  // Shares typed with a few decimals may miss 1 by their rounding.
  if (Math.abs(total - 1) > 1e-6) {
    return blocked(surveillanceProblem("shares-not-whole", "blocked", "strata", { total }));
  }
  const average = strata.reduce((sum, { relativeRisk, share }) => sum + relativeRisk * share, 0);
  return answered(strata.map(({ relativeRisk }) => relativeRisk / average));
}

/**
 * Sensitivity of a round in which every tested cluster was found without infestation.
 *
 * Model: a cluster of stratum i is infested with probability AR_i·P*; then each of its units is with probability
 * `unitPrevalence` and is found with its sensitivity. Specificity 1; clusters many, and independent given the state:
 * the answer says so.
 *
 * @returns the tree's figures, or `shares-not-whole`, `infested-share-above-one`
 * @throws DomainError for a figure outside its range or a stratum that does not exist
 * @source Martin, Cameron & Greiner 2007, Preventive Veterinary Medicine 79:71–97
 *
 * @example
 * scenarioTree({ clusterPrevalence: 0.02, unitPrevalence: 0.1, strata: [{ relativeRisk: 1, share: 1 }], clusters: [{ stratum: 0, units: 30, sensitivity: 0.9 }] }).value.sensitivity  // → 0.01881894
 */
export function scenarioTree(tree: {
  /** P* of clusters, and of units within an infested cluster; both in (0, 1]. */
  readonly clusterPrevalence: number;
  readonly unitPrevalence: number;
  readonly strata: readonly RiskStratum[];
  readonly clusters: readonly TestedCluster[];
}): Result<ScenarioTree> {
  const { clusterPrevalence, unitPrevalence, strata, clusters } = tree;
  ensure(clusterPrevalence > 0 && clusterPrevalence <= 1, "clusterPrevalence", clusterPrevalence, "in (0, 1]");
  ensure(unitPrevalence > 0 && unitPrevalence <= 1, "unitPrevalence", unitPrevalence, "in (0, 1]");
  const risks = adjustedRisks(strata);
  if (!risks.ok) return risks;
  const infestedShares = risks.value.map((risk) => risk * clusterPrevalence);
  const tooRisky = infestedShares.findIndex((share) => share > 1);
  if (tooRisky >= 0) {
    const slots = { stratum: tooRisky + 1, share: infestedShares[tooRisky] as number };
    return blocked(surveillanceProblem("infested-share-above-one", "blocked", `strata[${tooRisky}]`, slots));
  }
  const logMissed = strata.map(() => 0);
  for (const { stratum, units, sensitivity } of clusters) {
    const infestedShare = infestedShares[stratum];
    ensure(infestedShare !== undefined, "stratum", stratum, "one of the strata, counted from 0");
    ensure(Number.isInteger(units) && units >= 0, "units", units, "a whole number ≥ 0");
    ensure(sensitivity > 0 && sensitivity <= 1, "sensitivity", sensitivity, "in (0, 1]");
    const found = -Math.expm1(units * Math.log1p(-sensitivity * unitPrevalence));
    logMissed[stratum] = (logMissed[stratum] as number) + Math.log1p(-(units === 0 ? 0 : found) * infestedShare);
  }
  const missed = logMissed.reduce((sum, each) => sum + each, 0);
  return answered(
    {
      risks: risks.value,
      infestedShares,
      byStratum: logMissed.map((each) => 0 - Math.expm1(each)),
      sensitivity: 0 - Math.expm1(missed),
    },
    [surveillanceProblem("parts-taken-as-independent", "noted", "clusters", { parts: clusters.length })],
  );
}
