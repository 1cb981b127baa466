/** What trials say about vapours and heat, kept beside the label and never in its place. */

/** Daily highs, Celsius, at which published work saw a vapour fail or bees suffer. */
export interface VapourLimits {
  /** Below this the vapour is held to be too weak to work, whatever a label allows. */
  readonly tooWeakBelowCelsius?: number;
  /** Below this at least one trial saw no control. */
  readonly doubtfulBelowCelsius?: number;
  /** Above this bees and queens are driven out or brood is lost. */
  readonly harmfulAboveCelsius?: number;
  readonly sources: readonly string[];
}

const limits: Readonly<Record<string, VapourLimits>> = {
  menthol: {
    tooWeakBelowCelsius: 15,
    doubtfulBelowCelsius: 21.1,
    harmfulAboveCelsius: 32.2,
    sources: [
      "Kevan, Nasr & Kevan 1999, abstract: 15 °C or more [seen]",
      "Herbert, Shimanuki & Matthenius 1988: control began when days passed 70 °F [seen]",
      "unattributed extension text: above 90 °F bees and queen are driven out [seen, secondary]",
    ],
  },
  "formic acid": {
    harmfulAboveCelsius: 33,
    sources: [
      "extension and supplier text: 33 °C or more in the first three days costs brood and queens [seen, secondary]",
    ],
  },
};

/** Limits known for an active ingredient; undefined when we know of none. Names as on the label, any case. */
export const vapourLimits = (activeIngredient: string): VapourLimits | undefined =>
  limits[activeIngredient.trim().toLowerCase()];
