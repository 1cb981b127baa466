/** A bootstrap particle filter over any model: propagate, weigh, resample; the log-likelihood on the way. */
import { ensure } from "../../../units/index.ts";
import { effectiveParticles, systematic } from "./resample.ts";

/** A model of many particles, as the filter sees it. */
export interface FilterModel {
  readonly particles: number;
  /** Moves every particle on to the next observation. */
  readonly propagate: () => void;
  /** ln of the chance of the observation under each particle. */
  readonly logChances: () => Float64Array;
  /** Puts each particle in the place of its ancestor. */
  readonly take: (ancestors: Int32Array) => void;
  /** Where the comb of the resampling begins, 0 ≤ u < 1. */
  readonly uniform: () => number;
}

/** What one observation did. */
export interface Assimilated {
  /** ln of the mean chance of the observation: what it adds to the log-likelihood. */
  readonly logLikelihood: number;
  /** Particles that the weights were worth before resampling. */
  readonly effective: number;
}

/**
 * Takes one observation in. Null when every particle holds it impossible: nothing is resampled then.
 *
 * @throws DomainError when the model gives another number of chances than it has particles
 * @source Gordon, Salmond & Smith 1993
 */
export function assimilate(model: FilterModel): Assimilated | null {
  model.propagate();
  const logs = model.logChances();
  ensure(logs.length === model.particles, "logChances", logs.length, `${model.particles} numbers`);
  const highest = logs.reduce((most, each) => Math.max(most, each), -Infinity);
  if (highest === -Infinity) return null;
  const weights = logs.map((each) => Math.exp(each - highest));
  const mean = weights.reduce((sum, each) => sum + each, 0) / weights.length;
  model.take(systematic(weights, model.uniform()));
  return { logLikelihood: highest + Math.log(mean), effective: effectiveParticles(weights) };
}
