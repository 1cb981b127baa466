/** Whether a forecast's ranges can be taken at their word, on colonies drawn from the model itself: measured figures. */

/** One row of the measurement: colonies counted twice, the share on 1 March against what became of them. */
export interface CalibrationFigures {
  /** Bees in each of the two counts; 0 for none. */
  readonly bees: number;
  /** χ² of the ranks over 20 bins, and its chance. */
  readonly chiSquare: number;
  readonly chance: number;
  /** Colonies of 100 whose share the range held. */
  readonly within90: number;
  readonly within50: number;
  readonly width90: number;
  /** Mean continuous ranked probability score; smaller is better. */
  readonly crps: number;
  /** Mean distance of the middle, and of the last count itself, from what became of the colony; without a count that of the start's guess. */
  readonly middleOff: number;
  readonly lastCountOff: number;
}

/**
 * Measured by `npm run bench -- --forecast`: 1,000 colonies, 800 particles each, counts on 1 September and 15 October.
 * They say how nearly the filter keeps the model's own promises, and nothing of the field.
 */
export const calibrationFigures: readonly CalibrationFigures[] = [
  {
    ...{ bees: 0, chiSquare: 19.6, chance: 0.421, within90: 90, within50: 48.6, width90: 0.696 },
    ...{ crps: 0.1235, middleOff: 0.18, lastCountOff: 0.298 },
  },
  {
    ...{ bees: 50, chiSquare: 27.5, chance: 0.093, within90: 88.9, within50: 47.6, width90: 0.39 },
    ...{ crps: 0.0709, middleOff: 0.101, lastCountOff: 0.243 },
  },
  {
    ...{ bees: 200, chiSquare: 26.1, chance: 0.128, within90: 89.3, within50: 45.6, width90: 0.346 },
    ...{ crps: 0.0643, middleOff: 0.092, lastCountOff: 0.241 },
  },
];

/** Infested share at the start of each colony, which stands in for a last count where there is none. */
export const calibrationGuess = 0.08;
/** Colonies behind each row. */
export const calibrationColonies = 1000;
