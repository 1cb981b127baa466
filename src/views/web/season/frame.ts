/** Where the days of a season's picture lie, and where its rows begin. */
import { type Day, daysBetween } from "../../../units/index.ts";
import type { SeasonFlag } from "../../model/index.ts";

/** Top of the plot, and side of a flag: what a finger can hold. */
export const [fanTop, flagSide] = [16, 44];
/** From one row of flags to the next. */
export const flagStep = flagSide + 6;
/** Narrower pictures write the names of the rows above them. */
const narrow = 560;
const plot = { whole: 300, small: 170 };
const yearHeight = { wide: 122, narrow: 150 };

export interface FanFrame {
  readonly width: number;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly flagsTop: number;
  readonly height: number;
  readonly isNarrow: boolean;
  readonly x: (day: Day) => number;
}

/** A flag with the row it stands in: the second where flags would lie on each other. */
export interface PlacedFlag extends SeasonFlag {
  readonly key: string;
  readonly isDone: boolean;
  readonly row: number;
}

/** The frame for a width; a small one has no year beneath. */
export function fanFrame(
  { from, to }: { readonly from: Day; readonly to: Day },
  width: number,
  { isSmall, flagRows }: { readonly isSmall: boolean; readonly flagRows: number },
): FanFrame {
  const isNarrow = width < narrow;
  const [left, right] = isNarrow || isSmall ? [30, width - 6] : [74, width - 12];
  const all = Math.max(1, daysBetween(from, to));
  const bottom = fanTop + (isSmall ? plot.small : plot.whole);
  const beneath = isSmall ? 0 : isNarrow ? yearHeight.narrow : yearHeight.wide;
  const flagsTop = bottom + 34 + beneath;
  return {
    ...{ width, left, right, bottom, flagsTop, isNarrow },
    height: flagsTop + flagRows * flagStep,
    x: (day) => left + (Math.min(Math.max(daysBetween(from, day), 0), all) / all) * (right - left),
  };
}

/** A place in a path. */
export const point = (x: number, y: number): string => `${x.toFixed(1)} ${y.toFixed(1)}`;
