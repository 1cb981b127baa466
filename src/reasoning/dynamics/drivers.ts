/** What the season does to a colony on each day of the year: warmth, flight, laying, winter bees, cold, nectar. */
import type { DynamicsParameters } from "./parameters.ts";

/** A nectar flow as a bell over the days of the year. */
export interface Flow {
  /** Day of the year of its height, 1–365, of the site's own calendar. */
  readonly day: number;
  /** Standard deviation, days. */
  readonly spreadDays: number;
  /** Height, 0–1. */
  readonly strength: number;
}

/** Flows of the invented cool-temperate site, northern calendar. No source. */
export const syntheticFlows: readonly Flow[] = [
  { day: 125, spreadDays: 18, strength: 0.8 },
  { day: 185, spreadDays: 20, strength: 1 },
  { day: 250, spreadDays: 12, strength: 0.5 },
];

/** The drivers of one day. Shares 0–1 but for Celsius and mortality per day. */
export interface Drivers {
  readonly celsius: number;
  readonly flight: number;
  readonly laying: number;
  readonly winterShare: number;
  readonly winterMortality: number;
  readonly cold: number;
  readonly flow: number;
}

/** A place as the model needs it. What is left out is that of the invented site. */
export interface DynamicsSite {
  /** Mean temperature by day of the year, 365 numbers, 1 January first. */
  readonly dailyMeanCelsius?: readonly number[];
  readonly flows?: readonly Flow[];
  /** South of the equator the bees' year is shifted by half a year. */
  readonly southern?: boolean;
}

const yearLength = 365;
/** Days by which the southern year is shifted: half a year, rounded down. */
const halfYear = 182;

/** Day of the bees' year (northern) that a day of the calendar stands for. */
export const dayOfBeeYear = (day: number, southern: boolean): number =>
  southern ? ((day - 1 + halfYear) % yearLength) + 1 : day;

/**
 * Drivers of a day of the year, 1–365.
 *
 * Laying and the switch to winter bees follow the calendar of the parameters, shifted by half a year in the south;
 * they are those of a cool-temperate site and must be moved for another climate. The flows fade the shorter way round
 * the year.
 *
 * @source own: logistic curves tuned by hand; no published curve of laying by day was found
 * @example
 * driversOn(105, specified).flight  // → 0.450666
 */
export function driversOn(day: number, p: DynamicsParameters, site: DynamicsSite = {}): Drivers {
  const southern = site.southern ?? false;
  const beeDay = dayOfBeeYear(day, southern);
  const celsius = site.dailyMeanCelsius?.[day - 1] ?? waveCelsius(beeDay, p);
  const flight = logistic((celsius - p.flightCelsius) / p.flightSpread);
  return {
    celsius,
    flight,
    laying:
      logistic((beeDay - p.layingRiseDay) / p.layingRiseSpread) *
      logistic((p.layingFallDay - beeDay) / p.layingFallSpread),
    winterShare: beeDay < p.winterBeesFromDay ? 0 : logistic((beeDay - p.winterBeesDay) / p.winterBeesSpread),
    winterMortality: p.winterMortality + (beeDay <= p.springEndDay ? p.springMortality * flight : 0),
    cold: logistic((p.coldCelsius - celsius) / p.coldSpread),
    flow: site.flows === undefined ? flowOn(beeDay, syntheticFlows) : flowOn(day, site.flows),
  };
}

const logistic = (x: number): number => 1 / (1 + Math.exp(-x));

const waveCelsius = (day: number, p: DynamicsParameters): number =>
  p.meanCelsius - p.swingCelsius * Math.cos((2 * Math.PI * (day - p.coldestDay)) / yearLength);

function flowOn(day: number, flows: readonly Flow[]): number {
  let total = 0;
  for (const flow of flows) {
    const direct = Math.abs(day - flow.day);
    const apart = Math.min(direct, yearLength - direct) / flow.spreadDays;
    total += flow.strength * Math.exp(-0.5 * apart * apart);
  }
  return Math.min(1, total);
}
