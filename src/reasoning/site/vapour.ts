/** How strongly a treatment's vapour leaves at a temperature, with the limits inside which each fit may be used. */
import { answered, blocked, ensure, problem, type Result } from "../../units/index.ts";

/** Constants of one fit and the temperatures it was made for. */
interface Fit {
  /** Grams per mole. */
  readonly molarMass: number;
  readonly fromKelvin: number;
  readonly toKelvin: number;
  /** Natural logarithm of the pressure in pascals at a temperature in kelvin. */
  readonly lnPascals: (kelvin: number) => number;
  readonly source: string;
  /** measured-fit: within a few per cent. estimate: absolute figures hold to a factor of about 1.5 only; use ratios. */
  readonly trust: "measured-fit" | "estimate";
}

const gasConstant = 8.314463; // J/(mol K)
const antoine =
  (a: number, b: number, c: number) =>
  (kelvin: number): number =>
    a - b / (kelvin + c);

/**
 * `menthol` is the crystal that lies in a hive: a liquid pressure of 4.5 Pa at 298.15 K (measured on the DL form)
 * carried along 74.2 kJ/mol, times the fraction that dissolves of the solid, exp(3.98 − 1249.65/T).
 * `menthol-melt` is the published fit for hot liquid menthol; at hive temperature it would give twice the truth
 * and is refused there.
 */
const fits = {
  menthol: {
    molarMass: 156.27,
    fromKelvin: 271,
    toKelvin: 309.15, // melts from 36 °C on
    lnPascals: (kelvin) => Math.log(4.5) - (74200 / gasConstant) * (1 / kelvin - 1 / 298.15) + 3.98 - 1249.65 / kelvin,
    source: "Keating et al. 2017, J. Chem. Thermodyn. 107:18; solubility line of Alves et al. 2019; joined here",
    trust: "estimate",
  },
  "menthol-melt": {
    molarMass: 156.27,
    fromKelvin: 372,
    toKelvin: 487.15,
    lnPascals: antoine(21.416966, 3893.4941, -94.49),
    source: "Landolt-Börnstein IV/20",
    trust: "measured-fit",
  },
  thymol: {
    molarMass: 150.22,
    fromKelvin: 273,
    toKelvin: 323,
    lnPascals: antoine(27.321899, 5593.3891, -87.27),
    source: "Landolt-Börnstein IV/20, solid",
    trust: "measured-fit",
  },
  formic: {
    molarMass: 46.03,
    fromKelvin: 278,
    toKelvin: 398,
    lnPascals: antoine(21.838546, 3572.1845, -27.44),
    source: "Landolt-Börnstein IV/20, pure liquid acid",
    trust: "measured-fit",
  },
  "formic-second-fit": {
    molarMass: 46.03,
    fromKelvin: 281,
    toKelvin: 588,
    lnPascals: (kelvin) => 50.323 - 5378.2 / kelvin - 4.203 * Math.log(kelvin) + 3.4697e-6 * kelvin * kelvin,
    source: "Perry's Chemical Engineers' Handbook, 8th ed., table 2-8",
    trust: "measured-fit",
  },
} as const satisfies Record<string, Fit>;

export type VapourSubstance = keyof typeof fits;

export interface VapourPressure {
  readonly pascals: number;
  /** Milligrams in a litre of saturated air. */
  readonly milligramsPerLitre: number;
  readonly trust: Fit["trust"];
  readonly source: string;
}

/** The temperature ratios are told against: 70 °F, the lower limit Herbert et al. 1988 found for menthol, as 21.1 °C. */
export const referenceCelsius = 21.1;

/**
 * Pressure of the saturated vapour, with the amount in a litre of air.
 *
 * Blocked with `outside-vapour-range` where the fit was not made for the temperature: nothing is extrapolated.
 * Formic figures are for pure acid; 65 % acid gives less. Menthol crystal is an estimate (see `trust`): say it
 * as a ratio by `vapourRatio`.
 *
 * @throws DomainError for a temperature that is not a number
 * @source as named in the answer's `source`
 */
export function vapourPressure(substance: VapourSubstance, celsius: number): Result<VapourPressure> {
  ensure(Number.isFinite(celsius), "celsius", celsius, "a finite number");
  const fit: Fit = fits[substance];
  const kelvin = celsius + 273.15;
  if (kelvin < fit.fromKelvin || kelvin > fit.toKelvin)
    return blocked(
      problem("outside-vapour-range", "blocked", "celsius", {
        given: celsius,
        slots: {
          substance,
          celsius,
          fromCelsius: fit.fromKelvin - 273.15,
          toCelsius: fit.toKelvin - 273.15,
        },
      }),
    );
  const pascals = Math.exp(fit.lnPascals(kelvin));
  return answered({
    pascals,
    milligramsPerLitre: (pascals * fit.molarMass) / (gasConstant * kelvin),
    trust: fit.trust,
    source: fit.source,
  });
}

export interface VapourRatioQuestion {
  readonly substance: VapourSubstance;
  readonly celsius: number;
  /** Temperature the vapour is compared with. */
  readonly againstCelsius: number;
}

/**
 * How many times as strong the vapour is as at another temperature. Errors of the estimate's anchor cancel.
 *
 * @throws DomainError for a temperature that is not a number
 *
 * @example
 * vapourRatio({ substance: "menthol", celsius: 21.1, againstCelsius: 21.1 }).value  // → 1
 */
export function vapourRatio({ substance, celsius, againstCelsius }: VapourRatioQuestion): Result<number> {
  const [here, there] = [vapourPressure(substance, celsius), vapourPressure(substance, againstCelsius)];
  if (!here.ok) return here;
  if (!there.ok) return there;
  return answered(here.value.pascals / there.value.pascals);
}
