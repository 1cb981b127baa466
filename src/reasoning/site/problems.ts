/** The troubles a site's data can have: code → the slots its sentence needs. */

/** Codes of `Problem`s this folder returns, each with the slots it fills. Numbers unrounded, Celsius. */
export interface SiteProblems {
  /** blocked: neither twelve monthly means nor daily highs were given. */
  readonly "no-temperatures": Record<never, never>;
  /** blocked: both lists were given and only one can be used. */
  readonly "two-temperature-lists": Record<never, never>;
  /** blocked: monthly means are not twelve numbers. */
  readonly "monthly-means-not-twelve": { readonly count: number };
  /** blocked: the high of a day is not a number. */
  readonly "temperature-not-a-number": { readonly date: string };
  /** blocked: the mean of a month is not a number. */
  readonly "month-mean-not-a-number": { readonly month: number };
  /** blocked: the values cannot be Celsius and would be ordinary in Fahrenheit. */
  readonly "temperatures-look-like-fahrenheit": { readonly highest: number; readonly asCelsius: number };
  /** blocked: a temperature no place on earth has. */
  readonly "temperature-beyond-earth": { readonly value: number };
  /** blocked: a date in the list does not exist. */
  readonly "temperature-date-unknown": { readonly date: string };
  /** blocked: one date has two different highs. */
  readonly "temperature-date-twice": { readonly date: string };
  /** blocked: the height of highs above means is negative or beyond 30 degrees. */
  readonly "high-above-mean-out-of-range": { readonly value: number };
  /** warned: warm months lie in the winter of the hemisphere the latitude names. */
  readonly "hemisphere-unlike-temperatures": { readonly latitude: number; readonly warmestMonth: number };
  /** noted: an ordinary year was used; it is no forecast. */
  readonly "ordinary-year": Record<never, never>;
  /** blocked: a vapour was asked for at a temperature its fit was not made for. */
  readonly "outside-vapour-range": {
    readonly substance: string;
    readonly celsius: number;
    readonly fromCelsius: number;
    readonly toCelsius: number;
  };
  /** noted: no height of highs above means was given, so the mean stands in place of the high. */
  readonly "mean-used-as-high": Record<never, never>;
}
