/** Menthol crystals on the top bars: they leave as the days are warm, and kill mites while they do. */
import type { Measures } from "../measures.ts";

/**
 * Figures of the menthol hazard. The most, 0.2 a day, is calibrated (0.10–0.63; the upper end from a hot site would
 * leave fewer mites than any field result); half of it and the slope are calibrated to "works from a high of 21 °C"
 * (Herbert, Shimanuki & Matthenius 1988). Heat of sublimation 87 kJ/mol: vaporisation 74.2 (Keating and others 2017)
 * and fusion 13 (memory). Top bars 0.4 of 34 °C and 0.6 of the day's high: assumed. 2.86 g a day at 33 °C so that 50 g
 * last two to three weeks (Weslaco, newsletter of 1988). No dose to use: the label says what is lawful. Bees driven
 * out by heat are left out.
 */
export const mentholFigures = {
  grams: 50,
  days: 28,
  mostPerDay: 0.2,
  halfAtRate: 0.46,
  slope: 8,
  gramsPerDayAt33: 2.86,
  clusterShare: 0.4,
  clusterCelsius: 34,
  joulesPerMole: 87000,
  gasConstant: 8.314,
  referenceKelvin: 306.15,
} as const;

/**
 * How fast crystals at a temperature leave, beside those at 33 °C.
 *
 * @example
 * mentholRate(25)  // → 0.400
 */
export function mentholRate(celsius: number): number {
  const { joulesPerMole, gasConstant, referenceKelvin } = mentholFigures;
  return Math.exp((-joulesPerMole / gasConstant) * (1 / (273.15 + celsius) - 1 / referenceKelvin));
}

/** Temperature at the top bars on a day with the given high; assumed. */
export const topBarCelsius = (highCelsius: number): number =>
  mentholFigures.clusterShare * mentholFigures.clusterCelsius + (1 - mentholFigures.clusterShare) * highCelsius;

/**
 * Hazard of the mites on a day with the given high, per day.
 *
 * @example
 * mentholHazard(21)  // → 0.1
 */
export function mentholHazard(highCelsius: number): number {
  const { mostPerDay, halfAtRate, slope } = mentholFigures;
  const ratio = (halfAtRate / mentholRate(topBarCelsius(highCelsius))) ** slope;
  return mostPerDay / (1 + ratio);
}

/** Writes a course from day `from` of the run; `highOn` tells the high of a day of the run. */
export function menthol(measures: Measures, from: number, highOn: (elapsed: number) => number): void {
  const { grams, days, gramsPerDayAt33 } = mentholFigures;
  let left: number = grams;
  for (let day = from; day < Math.min(from + days, measures.clearing.length) && left > 0; day++) {
    const high = highOn(day);
    left -= gramsPerDayAt33 * mentholRate(topBarCelsius(high));
    measures.clearing[day] = mentholHazard(high);
  }
}
