/** Conversions between the units of the trade. Inside: Celsius and grams; the other units only at the edge. */

/** Degrees Fahrenheit of a temperature in Celsius; exact by definition. */
export const fahrenheit = (celsius: number): number => celsius * 1.8 + 32;

/** Celsius of a temperature in degrees Fahrenheit; exact by definition. */
export const celsius = (fahrenheitDegrees: number): number => (fahrenheitDegrees - 32) / 1.8;

/** Grams in an avoirdupois ounce; exact by international agreement (1959). */
export const gramsPerOunce = 28.349523125;

/** Ounces (weight, never fluid) of a mass in grams. */
export const ounces = (grams: number): number => grams / gramsPerOunce;

/** Grams of a mass in ounces (weight). */
export const gramsFromOunces = (weightOunces: number): number => weightOunces * gramsPerOunce;

/** Per cent of a proportion. */
export const percent = (proportion: number): number => 100 * proportion;

/** Proportion of a figure in per cent. */
export const fromPercent = (perCent: number): number => perCent / 100;
