/** Vapour pressures of menthol, thymol and formic acid: constants with their ranges and marks. */
import { computed, seen } from "./cite.ts";
import type { Citation } from "./fact.ts";
import { figure, span } from "./figure.ts";

/** ln p = a − b / (T + c), p in Pa, T in K, valid only between the two temperatures. */
export interface Antoine {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly fromKelvin: number;
  readonly toKelvin: number;
  readonly phase: "solid" | "liquid";
  readonly citation: Citation;
}

const landolt = seen("landolt-boernstein", "IV/20");

/** The vapours. Never extrapolate a fit beyond its range: the liquid fit of menthol gives double at hive warmth. */
export const vapourFacts = {
  menthol: {
    casNumber: "2216-51-5",
    molarMass: figure(156.27, "g/mol", computed("atomic weights")),
    meltingKelvin: span([315.25, 316.15], "K", seen("crc-handbook", "CRC 315.25; an open set 316.15")),
    boilingKelvin: figure(487.15, "K", seen("crc-handbook", "table")),
    density: figure(903, "kg/m³", seen("crc-handbook", "table")),
    liquid: {
      a: 21.416966,
      b: 3893.4941,
      c: -94.49,
      fromKelvin: 372,
      toKelvin: 487,
      phase: "liquid",
      citation: landolt,
    },
    solid: null,
    /** The best primary data are known and were not read. */
    solidMissing: seen("stejfa-2019", "abstract only: static vapour pressures 274–363 K, numbers not read"),
    otherForms: seen("menthol-forms-2023", "l- 36–38 °C, dl- alpha 42–43 °C; disagrees with CRC"),
    liquidAt298: span([4.06, 4.94], "Pa", seen("keating-2017", "4.5 ± 0.44, dl-, undercooled")),
    liquidAt298Middle: figure(4.5, "Pa", seen("keating-2017", "dl-, undercooled")),
    vaporisationEnthalpy: figure(74.2, "kJ/mol", seen("keating-2017", "74.2 ± 2.8 at 298 K, dl-")),
    sublimationEnthalpy: figure(84.6, "kJ/mol", computed("vaporisation + fusion estimate")),
    fusionEnthalpy: figure(10.4, "kJ/mol", computed("slope of the solubility fit", "alves-2019")),
    /** ln x = intercept − slope / T, 271–300 K; x mole fraction in mint oil. */
    solubilityLine: {
      intercept: 3.98,
      slopeKelvin: 1249.65,
      fromKelvin: 271,
      toKelvin: 300,
      citation: seen("alves-2019", "data set"),
    },
    /** p crystal = 4.5 exp(−74200/R (1/T − 1/298.15)) · exp(3.98 − 1249.65/T). */
    crystalEstimate: computed("trust absolute values to a factor of about 1.5 only; prefer ratios", "keating-2017"),
  },
  thymol: {
    casNumber: "89-83-8",
    molarMass: figure(150.22, "g/mol", computed("atomic weights")),
    meltingKelvin: figure(322.75, "K", seen("crc-handbook", "table")),
    boilingKelvin: figure(506.15, "K", seen("crc-handbook", "table")),
    density: figure(970, "kg/m³", seen("crc-handbook", "table")),
    liquid: {
      a: 22.811111,
      b: 5029.0254,
      c: -58.598,
      fromKelvin: 339,
      toKelvin: 514,
      phase: "liquid",
      citation: landolt,
    },
    solid: {
      a: 27.321899,
      b: 5593.3891,
      c: -87.27,
      fromKelvin: 273,
      toKelvin: 323,
      phase: "solid",
      citation: landolt,
    },
    sublimationEnthalpy: figure(91.5, "kJ/mol", seen("ghazerati", "list")),
    vaporisationEnthalpy: figure(70, "kJ/mol", seen("ghazerati", "list")),
    fusionEnthalpy: figure(21.3, "kJ/mol", seen("crc-handbook", "table")),
  },
  formicAcid: {
    casNumber: "64-18-6",
    molarMass: figure(46.03, "g/mol", computed("atomic weights")),
    meltingKelvin: figure(281.45, "K", seen("crc-handbook", "table")),
    boilingKelvin: figure(374.15, "K", seen("crc-handbook", "table")),
    density: figure(1220, "kg/m³", seen("crc-handbook", "table")),
    liquid: {
      a: 21.838546,
      b: 3572.1845,
      c: -27.44,
      fromKelvin: 278,
      toKelvin: 398,
      phase: "liquid",
      citation: landolt,
    },
    solid: {
      a: 32.089747,
      b: 6445.1659,
      c: -16.35,
      fromKelvin: 236,
      toKelvin: 276,
      phase: "solid",
      citation: landolt,
    },
    /** ln p = c1 + c2/T + c3 ln T + c4 T². */
    perry: {
      c1: 50.323,
      c2: -5378.2,
      c3: -4.203,
      c4: 3.4697e-6,
      fromKelvin: 281,
      toKelvin: 588,
      citation: seen("perry-8", "table 2-8"),
    },
    vaporisationEnthalpy: figure(20.1, "kJ/mol", seen("crc-handbook", "298 K; 22.7 at the boiling point")),
    fusionEnthalpy: figure(12.68, "kJ/mol", seen("crc-handbook", "table")),
    /** Figures are for pure acid; 65 % is lower and no activity data were found. */
    pureOnly: computed("65 % acid gives less; activity data not found"),
  },
  /** Gas constant. */
  gasConstant: figure(8.314463, "J/(mol K)", seen("crc-handbook", "constants")),
} as const;
