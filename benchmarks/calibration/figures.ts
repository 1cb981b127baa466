/** What simulated cases tell of the ranges and of the stated probabilities. */
import type { Saying } from "./simulated.ts";

/** How many ranges hold the posterior under the drawn grades, and on which side the others lie. */
export interface Coverage {
  readonly n: number;
  readonly covered: number;
  readonly below: number;
  readonly above: number;
}

/** Stated against what held, in ten bins of equal width. */
export interface Reliability {
  readonly n: number;
  /** Mean distance of bins, each by its sayings, to the posterior under the drawn grades. */
  readonly error: number;
  /** The same to the share that held: chance is in it too. */
  readonly errorToOutcomes: number;
  readonly bins: readonly {
    readonly n: number;
    readonly stated: number;
    readonly underDrawn: number;
    readonly held: number;
  }[];
}

/** Sayings at or above this are looked at by themselves: below it hardly anything could go wrong. */
export const worthSaying = 0.05;

const meanOf = <T>(all: readonly T[], of: (each: T) => number): number =>
  all.length === 0 ? 0 : all.reduce((sum, each) => sum + of(each), 0) / all.length;

/** Shares of the ranges that hold the posterior under the drawn grades. */
export function coverageOf(sayings: readonly Saying[]): Coverage {
  const below = meanOf(sayings, ({ low, underDrawn }) => Number(underDrawn < low));
  const above = meanOf(sayings, ({ high, underDrawn }) => Number(underDrawn > high));
  return { n: sayings.length, covered: 1 - below - above, below, above };
}

/**
 * Reliability of what was stated. The posterior under the drawn grades is the mean of what holds in cases that look
 * like this one: it says the same as the outcomes with less chance in it.
 */
export function reliabilityOf(sayings: readonly Saying[]): Reliability {
  const groups = Array.from({ length: 10 }, (_, bin) =>
    sayings.filter(({ stated }) => Math.min(9, Math.floor(stated * 10)) === bin),
  );
  const bins = groups.map((bin) => ({
    n: bin.length,
    stated: meanOf(bin, ({ stated }) => stated),
    underDrawn: meanOf(bin, ({ underDrawn }) => underDrawn),
    held: meanOf(bin, ({ held }) => Number(held)),
  }));
  const error = (key: "underDrawn" | "held") =>
    bins.reduce((sum, bin) => sum + (bin.n / Math.max(1, sayings.length)) * Math.abs(bin[key] - bin.stated), 0);
  return { n: sayings.length, error: error("underDrawn"), errorToOutcomes: error("held"), bins };
}
