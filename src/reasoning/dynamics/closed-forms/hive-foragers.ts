/** Hive bees and foragers alone: when a colony holds, and when its foragers die too fast for it to last. */
import { ensure } from "../../../units/index.ts";

/** Rates per day but for bees. */
export interface HiveForagers {
  /** Most eggs a day. */
  readonly laying: number;
  /** Bees at which half of the eggs become adults. */
  readonly careHalf: number;
  /** Rate at which hive bees become foragers when there are none. */
  readonly recruitment: number;
  /** How strongly foragers hold that back. */
  readonly inhibition: number;
}

/** Values printed with the model. */
export const printedHiveForagers: HiveForagers = { laying: 2000, careHalf: 27000, recruitment: 0.25, inhibition: 0.75 };

/** Steady state at a death rate of foragers; bees negative where no colony can last. */
export interface HiveForagersSteady {
  readonly foragersPerHiveBee: number;
  readonly bees: number;
  readonly hiveBees: number;
  readonly foragers: number;
  /** Age at which foraging begins, days. */
  readonly onsetDays: number;
  /** Adult life, days. */
  readonly lifeDays: number;
}

/**
 * The steady state, in closed form.
 *
 * @throws DomainError unless the death rate is finite and above 0
 * @source Khoury, Myerscough & Barron 2011, PLoS ONE 6(4):e18491, for the equations; closed form derived from them
 * @example
 * hiveForagersSteady(0.24, printedHiveForagers).bees  // → 8457.805
 */
export function hiveForagersSteady(foragerMortality: number, model: HiveForagers): HiveForagersSteady {
  const m = foragerMortality;
  ensure(m > 0 && m < Infinity, "foragerMortality", m, "a finite number above 0");
  const { laying, careHalf, recruitment, inhibition } = model;
  const b = m + inhibition - recruitment;
  const ratio = (Math.sqrt(b * b + 4 * m * recruitment) - b) / (2 * m);
  const rate = m * ratio;
  const bees = (laying * (1 + ratio)) / rate - careHalf;
  const hiveBees = bees / (1 + ratio);
  return {
    foragersPerHiveBee: ratio,
    bees,
    hiveBees,
    foragers: bees - hiveBees,
    onsetDays: 1 / rate,
    lifeDays: 1 / rate + 1 / m,
  };
}

/**
 * The death rate of foragers above which no colony lasts, per day.
 *
 * @source derived from the equations of Khoury, Myerscough & Barron 2011
 * @example
 * criticalForagerMortality(printedHiveForagers)  // → 0.3551966886
 */
export function criticalForagerMortality({ laying, careHalf, recruitment, inhibition }: HiveForagers): number {
  const turnover = laying / careHalf;
  const difference = recruitment - inhibition;
  const root = Math.sqrt(difference * difference + 4 * inhibition * turnover);
  return ((turnover / 2) * (recruitment + inhibition + root)) / (recruitment - turnover);
}

export interface HiveForagersPath {
  readonly foragerMortality: number;
  readonly hiveBees: number;
  readonly foragers: number;
  readonly days: number;
  /** Steps a day. */
  readonly stepsPerDay: number;
}

/** Hive bees and foragers after so many days, by the classical Runge–Kutta method of fourth order. */
export function hiveForagersAfter(path: HiveForagersPath, model: HiveForagers): readonly [number, number] {
  const { foragerMortality, days, stepsPerDay } = path;
  const slope = (hive: number, foragers: number): readonly [number, number] => {
    const bees = hive + foragers;
    const recruits = hive * (model.recruitment - (model.inhibition * foragers) / bees);
    return [(model.laying * bees) / (model.careHalf + bees) - recruits, recruits - foragerMortality * foragers];
  };
  const step = 1 / stepsPerDay;
  let { hiveBees: h, foragers: f } = path;
  for (let each = 0; each < days * stepsPerDay; each++) {
    const [h1, f1] = slope(h, f);
    const [h2, f2] = slope(h + (step / 2) * h1, f + (step / 2) * f1);
    const [h3, f3] = slope(h + (step / 2) * h2, f + (step / 2) * f2);
    const [h4, f4] = slope(h + step * h3, f + step * f3);
    h += (step / 6) * (h1 + 2 * h2 + 2 * h3 + h4);
    f += (step / 6) * (f1 + 2 * f2 + 2 * f3 + f4);
  }
  return [h, f];
}

/** Steady state with brood where food is plenty. */
export interface FoodPlenty {
  readonly hiveBees: number;
  readonly foragers: number;
  readonly brood: number;
}

/**
 * Steady state of the model with food and brood, in the limit of plenty.
 *
 * Equations and values are from memory, not read again: for checks of algebra, never for a figure told to anybody.
 *
 * @source Khoury, Barron & Myerscough 2013, PLoS ONE 8:e59084 [memory]
 * @example
 * foodPlentySteady(0.1, { ...printedHiveForagers, careHalf: 5000 }, 1 / 9).brood  // → 16239.7575
 */
export function foodPlentySteady(foragerMortality: number, model: HiveForagers, eclosion: number): FoodPlenty {
  const { foragersPerHiveBee } = hiveForagersSteady(foragerMortality, model);
  const rate = foragerMortality * foragersPerHiveBee;
  const hiveBees = model.laying / rate - model.careHalf;
  return { hiveBees, foragers: foragersPerHiveBee * hiveBees, brood: (rate * hiveBees) / eclosion };
}
