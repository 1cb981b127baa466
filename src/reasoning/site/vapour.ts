/** How strongly a treatment's vapour leaves at a temperature, with the limits inside which each fit may be used. */
import { type Antoine, type SourceKey, vapourFacts } from "../../knowledge/index.ts";
import { answered, blocked, ensure, type Result } from "../../units/index.ts";
import { siteProblem } from "./site-problem.ts";

/** Constants of one fit and the temperatures it was made for. */
interface Fit {
  /** Grams per mole. */
  readonly molarMass: number;
  readonly fromKelvin: number;
  readonly toKelvin: number;
  /** Natural logarithm of the pressure in pascals at a temperature in kelvin. */
  readonly lnPascals: (kelvin: number) => number;
  readonly sources: readonly SourceKey[];
  /** measured-fit: within a few per cent. estimate: absolute figures hold to a factor of about 1.5 only; use ratios. */
  readonly trust: "measured-fit" | "estimate";
}

const { menthol, thymol, formicAcid } = vapourFacts;
const gasConstant = vapourFacts.gasConstant.value;

const antoineFit = (molarMass: number, { a, b, c, fromKelvin, toKelvin, citation }: Antoine): Fit => ({
  molarMass,
  fromKelvin,
  toKelvin,
  lnPascals: (kelvin) => a - b / (kelvin + c),
  sources: citation.source === null ? [] : [citation.source],
  trust: "measured-fit",
});

/** The pressure of crystals: measured on undercooled liquid (DL form), times the share that dissolves of the solid. */
function lnMentholCrystal(kelvin: number): number {
  const liquid = Math.log(menthol.liquidAt298Middle.value);
  const vaporisation = (menthol.vaporisationEnthalpy.value * 1000) / gasConstant;
  const { intercept, slopeKelvin } = menthol.solubilityLine;
  return liquid - vaporisation * (1 / kelvin - 1 / 298.15) + intercept - slopeKelvin / kelvin;
}

function lnSecondFormic(kelvin: number): number {
  const { c1, c2, c3, c4 } = formicAcid.perry;
  return c1 + c2 / kelvin + c3 * Math.log(kelvin) + c4 * kelvin * kelvin;
}

/**
 * `menthol` is the crystal that lies in a hive. `menthol-melt` is the published fit for hot liquid menthol; at hive
 * temperature it would give twice the truth and is refused there.
 */
const fits = {
  menthol: {
    molarMass: menthol.molarMass.value,
    fromKelvin: menthol.solubilityLine.fromKelvin,
    toKelvin: 309.15, // melts from 36 °C on; the solubility line was measured to 300 K and carried on to here
    lnPascals: lnMentholCrystal,
    sources: ["keating-2017", "alves-2019"],
    trust: "estimate",
  },
  "menthol-melt": antoineFit(menthol.molarMass.value, menthol.liquid),
  thymol: antoineFit(thymol.molarMass.value, thymol.solid),
  formic: antoineFit(formicAcid.molarMass.value, formicAcid.liquid),
  "formic-second-fit": {
    molarMass: formicAcid.molarMass.value,
    fromKelvin: formicAcid.perry.fromKelvin,
    toKelvin: formicAcid.perry.toKelvin,
    lnPascals: lnSecondFormic,
    sources: ["perry-8"],
    trust: "measured-fit",
  },
} as const satisfies Record<string, Fit>;

export type VapourSubstance = keyof typeof fits;

export interface VapourPressure {
  readonly pascals: number;
  /** Milligrams in a litre of saturated air. */
  readonly milligramsPerLitre: number;
  readonly trust: Fit["trust"];
  readonly sources: readonly SourceKey[];
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
 * @source as named in the answer's `sources`
 */
export function vapourPressure(substance: VapourSubstance, celsius: number): Result<VapourPressure> {
  ensure(Number.isFinite(celsius), "celsius", celsius, "a finite number");
  const fit: Fit = fits[substance];
  const kelvin = celsius + 273.15;
  if (kelvin < fit.fromKelvin || kelvin > fit.toKelvin)
    return blocked(
      siteProblem(
        "outside-vapour-range",
        "celsius",
        { substance, celsius, fromCelsius: fit.fromKelvin - 273.15, toCelsius: fit.toKelvin - 273.15 },
        { given: celsius },
      ),
    );
  const pascals = Math.exp(fit.lnPascals(kelvin));
  return answered({
    pascals,
    milligramsPerLitre: (pascals * fit.molarMass) / (gasConstant * kelvin),
    trust: fit.trust,
    sources: fit.sources,
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
