/** What can be seen of a colony's record: bees, infested share, brood, and the chance of a count at the bench. */
import { logChoose } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";
import { at, broodDays, classes, cleared, type Layout } from "./layout.ts";

/** A colony on one morning. Expected numbers of bees. */
export interface ColonySeen {
  readonly bees: number;
  /** Share of adult bees with living mites, latent or patent, 0–1; 0 for no bees. */
  readonly infestedShare: number;
  /** Share of adult bees with only dead mites left in the tracheae, 0–1. */
  readonly clearedShare: number;
  /** Eggs, larvae and sealed brood. */
  readonly brood: number;
  /** Chance that the colony has not been lost to cold since the start of the run, 0–1. */
  readonly survival: number;
}

/** Looks at the colony whose record begins at `start`. */
export function seeColony(state: Float64Array, start: number, layout: Layout): ColonySeen {
  const bees = state[start + at.bees] as number;
  let dead = 0;
  for (let cell = start + layout.summer; cell < start + layout.length; cell += classes)
    dead += state[cell + cleared] as number;
  let brood = 0;
  for (let day = 0; day < broodDays; day++) brood += state[start + layout.brood + day] as number;
  return {
    bees,
    infestedShare: bees > 0 ? (state[start + at.infested] as number) / bees : 0,
    clearedShare: bees > 0 ? dead / bees : 0,
    brood,
    survival: Math.exp(-(state[start + at.hazard] as number)),
  };
}

/** A count of dissected bees. */
export interface BenchCount {
  readonly infested: number;
  readonly examined: number;
}

/** How a count scatters around the colony's share. All four are to be named: none has a published value here. */
export interface CountError {
  readonly sensitivity: number;
  readonly specificity: number;
  /** Correlation of two bees of one sample, 0 < ρ < 1. */
  readonly overdispersion: number;
}

/**
 * ln of the chance of a count when the colony's share is given.
 *
 * Model: beta-binomial around sensitivity · share + (1 − specificity)(1 − share). A share of exactly 0 or 1 seen
 * without error makes the other outcomes impossible: −Infinity.
 *
 * @throws DomainError for a number outside its range
 * @source Skellam 1948 for the distribution; overdispersion assumed
 * @example
 * Math.exp(logChanceOfCount({ infested: 3, examined: 50 }, 0.1, { sensitivity: 1, specificity: 1, overdispersion: 0.02 }))  // → 0.1362297641
 */
export function logChanceOfCount(count: BenchCount, infestedShare: number, error: CountError): number {
  const { sensitivity, specificity, overdispersion } = error;
  ensure(infestedShare >= 0 && infestedShare <= 1, "infestedShare", infestedShare, "from 0 to 1");
  ensure(sensitivity >= 0 && sensitivity <= 1, "sensitivity", sensitivity, "from 0 to 1");
  ensure(specificity >= 0 && specificity <= 1, "specificity", specificity, "from 0 to 1");
  ensure(overdispersion > 0 && overdispersion < 1, "overdispersion", overdispersion, "above 0 and below 1");
  const { infested, examined } = count;
  ensure(Number.isInteger(examined) && examined >= 0, "examined", examined, "a whole number of 0 or more");
  ensure(
    Number.isInteger(infested) && infested >= 0 && infested <= examined,
    "infested",
    infested,
    "a whole number from 0 to the bees examined",
  );
  // Each share by its own sum: 1 − mean would lose the digits of a share near 1.
  const positive = sensitivity * infestedShare + (1 - specificity) * (1 - infestedShare);
  const negative = (1 - sensitivity) * infestedShare + specificity * (1 - infestedShare);
  if (positive <= 0) return infested === 0 ? 0 : -Infinity;
  if (negative <= 0) return infested === examined ? 0 : -Infinity;
  const size = (1 - overdispersion) / overdispersion;
  return (
    logChoose(examined, infested) +
    logRising(positive * size, infested) +
    logRising(negative * size, examined - infested) -
    logRising(size, examined)
  );
}

/** ln of a(a + 1)…(a + n − 1). Term by term: a ratio of gamma functions loses digits for shapes near 0, met in clean colonies. */
function logRising(a: number, n: number): number {
  let total = 0;
  for (let i = 0; i < n; i++) total += Math.log(a + i);
  return total;
}
