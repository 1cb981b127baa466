/** What can be seen of a colony's record: bees, infested share, brood, and the chance of a count at the bench. */
import { logChoose } from "../../numerics/index.ts";
import { ensure } from "../../units/index.ts";
import { at, broodDays, classes, cleared, type Layout } from "./layout.ts";
import { logRising } from "./log-rising.ts";

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

/** Most bees of one count: those of the largest colony that a run may start with. Judgement. */
export const mostCounted = 100_000;

/** Bees with mites of those read. */
export interface BeesRead {
  readonly infested: number;
  readonly examined: number;
}

/** A count of dissected bees. Bees that could not be read are in none of its numbers. */
export interface BenchCount extends BeesRead {
  /**
   * The rule by which reading ended: at so many infested bees, or at so many read, whichever came first. Left out: the
   * number of bees to read was fixed before.
   */
  readonly stop?: BeesRead;
  /** Further bees of which one trachea alone could be read. */
  readonly oneSided?: BeesRead;
}

/** How a count scatters around the colony's share. All are to be named: none has a published value here. */
export interface CountError {
  readonly sensitivity: number;
  readonly specificity: number;
  /** Correlation of two bees of one sample, from `leastOverdispersion` to below 1. */
  readonly overdispersion: number;
  /** Share of the infested bees, found with both tracheae, that one trachea shows; `oneSidedShare` when left out. */
  readonly oneSided?: number;
}

/** Least correlation of two bees of one sample: bees less alike than that are independent in every printed digit. Judgement. */
export const leastOverdispersion = 1e-9;

/**
 * 0.79: of infested bees 58 in 100 had mites in both tracheae, and in the others either is as likely: 0.58 + 0.42 / 2.
 *
 * @source Tamaulipas 1986, Journal of Entomological Science 24:40; that either side is as likely is assumed
 */
export const oneSidedShare = 0.79;

/**
 * ln of the chance of a count when the colony's share is given.
 *
 * Model: beta-binomial around sensitivity · share + (1 − specificity)(1 − share). A share of exactly 0 or 1 seen
 * without error makes the other outcomes impossible: −Infinity. A count that ended at its k-th infested bee, the x-th
 * read, has k/x of the chance of as many in x bees, since the last was infested and all orders are equally likely: that
 * does not depend on the share. Bees read on one side are taken as a sample of their own, with a sensitivity of their
 * own; that both come from one colony on one day, and are more alike than that, is left out.
 *
 * @throws DomainError for a number outside its range
 * @source Skellam 1948 for the distribution; overdispersion assumed
 * @example
 * Math.exp(logChanceOfCount({ infested: 3, examined: 50 }, 0.1, { sensitivity: 1, specificity: 1, overdispersion: 0.02 }))  // → 0.1362297641
 */
export function logChanceOfCount(count: BenchCount, infestedShare: number, error: CountError): number {
  const { stop, oneSided } = count;
  const whole = logChanceOfReading(count, infestedShare, error);
  const endedEarly = stop !== undefined && count.infested === stop.infested && count.infested > 0;
  const atLast = endedEarly ? Math.log(count.infested / count.examined) : 0;
  if (oneSided === undefined) return whole + atLast;
  return whole + atLast + logChanceOfReading(oneSided, infestedShare, onOneSide(error));
}

/** The error of bees of which one trachea alone was read. */
export const onOneSide = (error: CountError): CountError => ({
  ...error,
  sensitivity: error.sensitivity * (error.oneSided ?? oneSidedShare),
});

function logChanceOfReading({ infested, examined }: BeesRead, infestedShare: number, error: CountError): number {
  const { sensitivity, specificity, overdispersion } = error;
  ensure(infestedShare >= 0 && infestedShare <= 1, "infestedShare", infestedShare, "from 0 to 1");
  ensure(sensitivity >= 0 && sensitivity <= 1, "sensitivity", sensitivity, "from 0 to 1");
  ensure(specificity >= 0 && specificity <= 1, "specificity", specificity, "from 0 to 1");
  ensure(
    overdispersion >= leastOverdispersion && overdispersion < 1,
    "overdispersion",
    overdispersion,
    `from ${leastOverdispersion} to below 1`,
  );
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
