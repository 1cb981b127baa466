/** Every figure of the colony model with its unit, where it comes from and how far to trust it. */
import { formicWindow } from "./interventions/formic.ts";

/**
 * seen: read in the cited text. seen-second: read in a work that repeats it. calibrated: tuned by hand to shapes, not
 * unique. assumed: chosen without a source. common-practice: every handbook of the trade, no source. synthetic: an
 * invented site.
 */
export type Mark = "seen" | "seen-second" | "calibrated" | "assumed" | "common-practice" | "synthetic";

/** One parameter: the value of the specified variant and what stands behind it. */
export interface ParameterFact {
  readonly value: number;
  /** Plausible range; null where none is known. */
  readonly low: number | null;
  readonly high: number | null;
  readonly unit: string;
  readonly means: string;
  readonly mark: Mark;
  /** Where the value, or the sign of it, comes from; null where it has no source. */
  readonly source: string | null;
}

const fact = (
  value: number,
  range: readonly [number, number] | null,
  unit: string,
  means: string,
  mark: Mark,
  source: string | null = null,
): ParameterFact => ({ value, low: range?.[0] ?? null, high: range?.[1] ?? null, unit, means, mark, source });

const khoury = "Khoury, Myerscough & Barron 2011, PLoS ONE 6(4):e18491";
const fukuda = "Fukuda & Sakagami 1968, one set of data from the middle of the comb";
const bailey = "Bailey 1958, Parasitology 48:493–506: the sign only";
const targets = "winter losses of clean colonies near 11 %: Frazier 1994, from an extension page; the rest chosen";

/** All parameters by name. `specified` below takes each at its value. */
export const parameterFacts = {
  layingMaximum: fact(2000, [1200, 2500], "eggs/day", "most eggs a queen lays in a day", "seen-second", khoury),
  careHalf: fact(6000, [3000, 15000], "bees", "bees at which half of the eggs are cared for", "calibrated"),
  layingRiseDay: fact(80, [60, 100], "day of year", "laying is half risen", "calibrated"),
  layingRiseSpread: fact(12, null, "days", "how gently laying rises", "calibrated"),
  layingFallDay: fact(238, [218, 258], "day of year", "laying is half fallen", "calibrated"),
  layingFallSpread: fact(13, null, "days", "how gently laying falls", "calibrated"),
  eggSurvival: fact(0.942, [0.85, 1], "share", "eggs that become larvae", "seen-second", fukuda),
  broodSurvival: fact(0.9034, [0.85, 1], "share", "larvae that become adults", "seen-second", fukuda),
  hiveMortality: fact(0.008, [0.003, 0.02], "per day", "hazard of summer bees in the hive", "calibrated"),
  foragingAge: fact(
    18,
    [14, 25],
    "days",
    "age at first foraging",
    "seen",
    "17.6 days uninfested: Insectes Sociaux 47:171–176 (2000)",
  ),
  foragingMortality: fact(0.085, [0.05, 0.2], "per day", "further hazard of foragers at full flight", "calibrated"),
  winterMortality: fact(0.0045, [0.003, 0.008], "per day", "hazard of winter bees at rest", "calibrated"),
  springMortality: fact(0.05, [0.02, 0.1], "per day", "further hazard of winter bees at full flight", "calibrated"),
  springEndDay: fact(212, null, "day of year", "last day on which old winter bees wear out by flying", "assumed"),
  flightCelsius: fact(8, [5, 12], "°C, daily mean", "half of full flight", "calibrated"),
  flightSpread: fact(2, null, "°C", "how gently flight rises with warmth", "calibrated"),
  winterBeesDay: fact(244, [220, 270], "day of year", "half of the emerging bees are winter bees", "calibrated"),
  winterBeesSpread: fact(8, null, "days", "how gently winter bees take over", "calibrated"),
  winterBeesFromDay: fact(180, null, "day of year", "no winter bees emerge before", "assumed"),
  meanCelsius: fact(9, null, "°C", "mean of the year", "synthetic"),
  swingCelsius: fact(13, null, "°C", "half of the swing between winter and summer", "synthetic"),
  coldestDay: fact(20, null, "day of year", "coldest day", "synthetic"),
  highAboveMeanCelsius: fact(6, null, "°C", "high of a day above its mean, in the invented site", "assumed"),
  contactRate: fact(1.7, [1.2, 2.7], "per day", "infestation of a newly emerged bee among patent bees", "calibrated"),
  youthDays: fact(
    1.5,
    [1, 3],
    "days",
    "decay of susceptibility with age of the bee",
    "calibrated",
    "shape of Villa 2007",
  ),
  oldSusceptibility: fact(
    0.008,
    [0.004, 0.015],
    "share",
    "susceptibility of old bees",
    "calibrated",
    "winter rise of Otis, Bath, Randall & Grant 1988",
  ),
  latentAdvance: fact(
    0.5,
    null,
    "per day",
    "chance to move on one of the seven latent stages: mean 14 days",
    "seen",
    "female development 14–15 days: Pettis & Wilson 1996, in BEEBOOK II 2.2.4; the spread is assumed",
  ),
  flowReduction: fact(0.5, [0.2, 0.8], "share", "contact lost in a full nectar flow", "calibrated", bailey),
  flightReduction: fact(0.2, [0, 0.6], "share", "contact lost at full flight", "calibrated", bailey),
  summerHarm: fact(
    0.05,
    [0, 0.3],
    "share",
    "further hazard of patent summer bees",
    "calibrated",
    "Bailey 1958; Villa 2006: slight",
  ),
  winterHarm: fact(
    0.5,
    [0, 1.5],
    "share",
    "further hazard of patent winter bees",
    "calibrated",
    "Bailey 1958: after hardship",
  ),
  lossBase: fact(8e-4, null, "per day", "hazard of losing a large colony in the cold", "calibrated", targets),
  lossSmall: fact(0.03, null, "per day", "further hazard of losing a small colony in the cold", "calibrated", targets),
  lossBees: fact(5500, null, "effective bees", "colony at half of the further hazard", "calibrated", targets),
  lossSpread: fact(1300, null, "bees", "how gently that hazard rises", "calibrated", targets),
  lossInfested: fact(0.7, null, "share", "how much of an infested bee is lost to the cluster", "calibrated", targets),
  coldCelsius: fact(5, null, "°C", "half of full cold", "assumed"),
  formicLeastCelsius: fact(
    -273.15,
    null,
    "°C, high of the day",
    "formic acid does nothing on days with a lower high; as specified it acts at any",
    "assumed",
  ),
  coldSpread: fact(2, null, "°C", "how gently cold sets in", "assumed"),
} as const satisfies Readonly<Record<string, ParameterFact>>;

/** The numbers the model reckons with, one a name of `parameterFacts`. */
export type DynamicsParameters = Readonly<Record<keyof typeof parameterFacts, number>>;

/** The variant as specified: each parameter at its tabled value. Tuned by hand; not validated in the field. */
export const specified: DynamicsParameters = Object.fromEntries(
  Object.entries(parameterFacts).map(([name, { value }]) => [name, value]),
) as DynamicsParameters;

/**
 * The variant that answers reckon with: as specified, but for the loss of small colonies. With the specified 5,500 bees
 * at half of the hazard, clean colonies of 3 to 7 frames lose 61 in 100; in Ontario 77 of 199 with 7 frames or fewer
 * died in a winter of all causes together, 38.7 in 100. With 3,500 it is 37.9. Three to seven frames equally often and
 * 2,000 bees a frame: assumed, common practice without a source. Bees, mites and shares are the same in both, but for
 * formic acid: it does nothing on days with a high under its window, where the specified variant lets it act at any.
 *
 * @source Guzmán-Novoa and others 2010, table III; formic-notes-2022 for the window
 */
export const inUse: DynamicsParameters = { ...specified, lossBees: 3500, formicLeastCelsius: formicWindow.least };
