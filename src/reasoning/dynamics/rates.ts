/** The drivers of a whole year turned into the rates a day of the model needs, reckoned once for all colonies. */
import { type Drivers, type DynamicsSite, driversOn } from "./drivers.ts";
import type { DynamicsParameters } from "./parameters.ts";

/** What a day of the year does to any colony. Survivals are shares that live through the day. */
export interface DayRates {
  readonly drivers: Drivers;
  /** Factor on contact between bees. */
  readonly contact: number;
  readonly hiveSurvival: number;
  readonly hiveSurvivalPatent: number;
  readonly foragerSurvival: number;
  readonly foragerSurvivalPatent: number;
  readonly winterSurvival: number;
  readonly winterSurvivalPatent: number;
  /** The six survivals in this order: `ageBees` takes them by place. */
  readonly survivals: Float64Array;
}

/** Rates for the days 1–365 of a place's year; the day is the index, and place 0 repeats day 365. */
export type RateYear = readonly DayRates[];

/**
 * Rates of every day of a place's year.
 *
 * @example
 * rateYear(specified)[152].hiveSurvival  // → 0.992032
 */
export function rateYear(parameters: DynamicsParameters, site: DynamicsSite = {}): RateYear {
  return Array.from({ length: 366 }, (_, day) =>
    ratesUnder(driversOn(day === 0 ? 365 : day, parameters, site), parameters),
  );
}

/** Rates under drivers that never change: for closed forms. */
export const steadyYear = (parameters: DynamicsParameters, drivers: Drivers): RateYear =>
  new Array<DayRates>(366).fill(ratesUnder(drivers, parameters));

function ratesUnder(drivers: Drivers, p: DynamicsParameters): DayRates {
  const foraging = p.hiveMortality + p.foragingMortality * drivers.flight;
  const rates = {
    drivers,
    contact: (1 - p.flowReduction * drivers.flow) * (1 - p.flightReduction * drivers.flight),
    hiveSurvival: Math.exp(-p.hiveMortality),
    hiveSurvivalPatent: Math.exp(-p.hiveMortality * (1 + p.summerHarm)),
    foragerSurvival: Math.exp(-foraging),
    foragerSurvivalPatent: Math.exp(-foraging * (1 + p.summerHarm)),
    winterSurvival: Math.exp(-drivers.winterMortality),
    winterSurvivalPatent: Math.exp(-drivers.winterMortality * (1 + p.winterHarm)),
  };
  const { hiveSurvival, hiveSurvivalPatent, foragerSurvival, foragerSurvivalPatent } = rates;
  const { winterSurvival, winterSurvivalPatent } = rates;
  return {
    ...rates,
    survivals: Float64Array.of(
      ...[hiveSurvival, hiveSurvivalPatent, foragerSurvival, foragerSurvivalPatent],
      ...[winterSurvival, winterSurvivalPatent],
    ),
  };
}
