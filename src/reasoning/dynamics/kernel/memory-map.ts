/** Where the kernel in WebAssembly finds what it reckons with: constants, places, one colony, days, room to work in. */
import { chanceOfHazard } from "../chance-of-hazard.ts";
import type { DayInRun, Engine } from "../day.ts";
import { at, classes, fullLayout, type Layout } from "../layout.ts";
import type { Noise } from "../particles.ts";
import type { DayRates } from "../rates.ts";

/** Numbers that stay through a run, in this order from byte 0. */
export const constants = [
  ...(["lossInfested", "lossBees", "lossSpread", "lossBase", "lossSmall"] as const),
  ...(["latentAdvance", "careHalf", "eggSurvival", "broodSurvival"] as const),
  ...(["memory", "contactStep", "layingStep"] as const),
] as const;
export type Constant = (typeof constants)[number];

/** Whole numbers, mostly addresses in bytes, in this order from `placesFrom`. */
export const places = [
  ...(["seedLow", "seedHigh", "matureAge", "cohorts", "susceptibility", "summer", "foragers", "summerEnd"] as const),
  ...(["winter", "winterEnd", "days", "youth", "infestation", "seen"] as const),
] as const;
export type Place = (typeof places)[number];
export const placesFrom = 128;

/** What the kernel reads of a day, in this order. */
export const dayFields = [
  ...(["contact", "hiveSurvival", "hiveSurvivalPatent", "foragerSurvival", "foragerSurvivalPatent"] as const),
  ...(["winterSurvival", "winterSurvivalPatent", "freed", "winterShare", "eggs", "cold", "emerging"] as const),
] as const;
export type DayField = (typeof dayFields)[number];

/** The colony's record begins here, after constants and places. */
export const colonyFrom = 256;
/** Numbers noted of a colony each morning: bees, infested share, survival. */
export const seenWidth = 3;
const wordBytes = 8;
export const ageBytes = classes * wordBytes;
/** Brood lies at the same place in every layout. */
const broodFrom = fullLayout.brood;
export const headByte = (place: keyof typeof at): number => colonyFrom + at[place] * wordBytes;
export const broodByte = (day: number): number => colonyFrom + (broodFrom + day) * wordBytes;

/** Addresses for a layout and so many days. */
export function placesOf(layout: Layout, foragingAge: number, days: number) {
  const cell = (word: number) => colonyFrom + word * wordBytes;
  const evenCohorts = layout.cohorts + (layout.cohorts % 2);
  const table = cell(layout.length + (layout.length % 2));
  const youth = table + days * dayFields.length * wordBytes;
  const infestation = youth + evenCohorts * wordBytes;
  const seen = infestation + evenCohorts * wordBytes;
  return {
    cohorts: layout.cohorts,
    susceptibility: cell(layout.susceptibility),
    summer: cell(layout.summer),
    foragers: cell(layout.summer) + Math.min(foragingAge, layout.summerAges) * ageBytes,
    summerEnd: cell(layout.summer) + layout.summerAges * ageBytes,
    winter: cell(layout.winter),
    winterEnd: cell(layout.winter) + layout.winterAges * ageBytes,
    days: table,
    youth,
    infestation,
    seen,
    end: seen + days * seenWidth * wordBytes,
  };
}

/** The days of a run as a table, a row a day: exactly the numbers that `oneDay` reckons with. */
export function dayRows({ parameters, rates, measures }: Engine, days: readonly DayInRun[]): Float64Array {
  const rows = new Float64Array(days.length * dayFields.length);
  for (const [index, { dayOfYear, elapsed }] of days.entries()) {
    const today = rates[dayOfYear] as DayRates;
    const { drivers } = today;
    const { hiveSurvival, hiveSurvivalPatent, foragerSurvival, foragerSurvivalPatent } = today;
    const { winterSurvival, winterSurvivalPatent } = today;
    const row: Readonly<Record<DayField, number>> = {
      ...{ hiveSurvival, hiveSurvivalPatent, foragerSurvival, foragerSurvivalPatent },
      ...{ winterSurvival, winterSurvivalPatent },
      contact: today.contact * (measures.contact[elapsed] as number),
      freed: chanceOfHazard(measures.clearing[elapsed] as number),
      winterShare: drivers.winterShare,
      eggs: parameters.layingMaximum * (measures.laying[elapsed] as number) * drivers.laying,
      cold: drivers.cold,
      emerging: measures.emerging[elapsed] as number,
    };
    dayFields.forEach((field, place) => {
      rows[index * dayFields.length + place] = row[field];
    });
  }
  return rows;
}

/** The constants in their order. */
export function constantsOf({ parameters }: Engine, noise: Noise | null): readonly number[] {
  const { memory, contact, laying } = noise ?? { memory: 0, contact: 0, laying: 0 };
  const fresh = Math.sqrt(1 - memory * memory);
  const all = { ...parameters, memory, contactStep: contact * fresh, layingStep: laying * fresh };
  return constants.map((name) => all[name]);
}
