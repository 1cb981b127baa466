/** From mites per bee to the share of infested bees, and back, for a known aggregation. */
import { ensure } from "../../units/index.ts";

export interface PrevalenceOfAbundance {
  /** Share of infested bees. */
  readonly prevalence: number;
  /** Mites per infested bee. */
  readonly intensity: number;
  /** Share of infested bees if mites sat on bees at random: the most that the mean allows. */
  readonly prevalenceAtRandom: number;
}

/**
 * Share of infested bees 1 − (1 + m/k)^−k; at random (k null) 1 − e^−m.
 *
 * The more mites crowd on few bees (small k), the fewer bees are infested at the same mean.
 *
 * @throws DomainError unless the mean is above 0, and k above 0 or null
 * @source negative binomial law; Bliss & Fisher 1953
 *
 * @example
 * prevalenceOfAbundance({ mean: 0.5, k: 0.3 }).prevalence  // → 0.25490889233
 */
export function prevalenceOfAbundance(mites: {
  /** Mites per bee. */
  readonly mean: number;
  /** Aggregation; null for mites that sit at random. */
  readonly k: number | null;
}): PrevalenceOfAbundance {
  const { mean, k } = mites;
  ensure(mean > 0 && Number.isFinite(mean), "mean", mean, "above 0");
  ensure(k === null || (k > 0 && Number.isFinite(k)), "k", k, "above 0, or null");
  const prevalenceAtRandom = -Math.expm1(-mean);
  const prevalence = k === null ? prevalenceAtRandom : -Math.expm1(-k * Math.log1p(mean / k));
  return { prevalence, intensity: mean / prevalence, prevalenceAtRandom };
}

/**
 * Mites per bee that a share of infested bees stands for: k((1 − P)^(−1/k) − 1); at random (k null) −ln(1 − P).
 *
 * @returns mites per bee
 * @throws DomainError unless 0 ≤ prevalence < 1, and k above 0 or null
 * @source negative binomial law
 *
 * @example
 * abundanceOfPrevalence({ prevalence: 0.3, k: 0.5 })  // → 0.52040816327
 */
export function abundanceOfPrevalence(infested: { readonly prevalence: number; readonly k: number | null }): number {
  const { prevalence, k } = infested;
  ensure(prevalence >= 0 && prevalence < 1, "prevalence", prevalence, "in [0, 1)");
  ensure(k === null || (k > 0 && Number.isFinite(k)), "k", k, "above 0, or null");
  const log = -Math.log1p(-prevalence);
  const mean = k === null ? log : k * Math.expm1(log / k);
  ensure(mean < Infinity, "k", k, "large enough for a finite number of mites");
  return mean;
}
