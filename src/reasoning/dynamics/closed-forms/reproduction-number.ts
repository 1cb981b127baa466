/** Whether mites can spread among summer bees: how many bees one infested bee infests, under steady drivers. */
import { latentStages } from "../layout.ts";
import type { DynamicsParameters } from "../parameters.ts";

export interface SteadySummer {
  /** Flight, 0–1. */
  readonly flight: number;
  /** Nectar flow, 0–1. */
  readonly flow: number;
}

/** How often mites multiply in a generation, and the bees there are for each that emerges a day. */
export interface Reproduction {
  /** Above 1 mites spread in a colony with few of them; below 1 they die out. */
  readonly number: number;
  readonly beesPerDailyEmergence: number;
}

/** Ages followed one by one; the last holds all older bees. */
const ages = 64;

/**
 * Bees infested, in a colony without mites that emerges steadily, by one newly infested bee until its death.
 *
 * Model: the next-generation number of the daily model has rank one, since the age of the bee that gives mites off does
 * not matter: a sum over the age at which a bee is infested, its chance to be there times its expected days as a giver.
 * Summer bees only; a threshold for few mites, no forecast. That a flow stops the spread follows from a contact
 * reduction tuned by hand: it agrees with Bailey 1958 and is no evidence for it.
 *
 * @source derived from the equations of the daily model
 * @example
 * reproductionNumber(specified, { flight: 1, flow: 1 }).number  // → 0.6017627636
 */
export function reproductionNumber(p: DynamicsParameters, { flight, flow }: SteadySummer): Reproduction {
  const hazard = (age: number) => p.hiveMortality + (age >= p.foragingAge ? p.foragingMortality * flight : 0);
  const survival = Float64Array.from({ length: ages }, (_, age) => Math.exp(-hazard(age)));
  const survivalPatent = Float64Array.from({ length: ages }, (_, age) => Math.exp(-hazard(age) * (1 + p.summerHarm)));
  const present = agesPresent(survival);
  const bees = present.reduce((sum, each) => sum + each, 0);
  const giving = daysGiving(survival, survivalPatent, p.latentAdvance);
  const contact = p.contactRate * (1 - p.flowReduction * flow) * (1 - p.flightReduction * flight);
  let infested = 0;
  for (let age = 0; age < ages; age++) {
    const youth = Math.max(p.oldSusceptibility, Math.exp(-age / p.youthDays));
    infested += of(survival, age) * of(present, age) * youth * of(giving, Math.min(age + 1, ages - 1));
  }
  return { number: (contact / bees) * infested, beesPerDailyEmergence: bees };
}

/** Bees of each age for each bee that emerges a day. */
function agesPresent(survival: Float64Array): Float64Array {
  const present = new Float64Array(ages);
  present[0] = 1;
  for (let age = 1; age < ages; age++) present[age] = of(present, age - 1) * of(survival, age - 1);
  present[ages - 1] = of(present, ages - 1) / (1 - of(survival, ages - 1));
  return present;
}

/** Expected days as a giver of a bee in the first latent stage, by age: backwards from the patent state. */
function daysGiving(survival: Float64Array, survivalPatent: Float64Array, advance: number): Float64Array {
  const last = ages - 1;
  let next = new Float64Array(ages);
  next[last] = 1 / (1 - of(survivalPatent, last));
  for (let age = last - 1; age >= 0; age--) next[age] = 1 + of(survivalPatent, age) * of(next, age + 1);
  for (let stage = latentStages; stage >= 1; stage--) {
    const days = new Float64Array(ages);
    const oldest = of(survival, last);
    days[last] = (oldest * advance * of(next, last)) / (1 - oldest * (1 - advance));
    for (let age = last - 1; age >= 0; age--)
      days[age] = of(survival, age) * ((1 - advance) * of(days, age + 1) + advance * of(next, age + 1));
    next = days;
  }
  return next;
}

const of = (list: Float64Array, index: number): number => list[index] as number;
