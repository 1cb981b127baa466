/** Mites per bee: the names of the reference cases on ours. */
import { bench } from "../../../src/reasoning/index.ts";
import type { Result } from "../../../src/units/index.ts";

const part = <T, U>(result: Result<T>, of: (value: T) => U) => (result.ok ? of(result.value) : result);

export const methods = {
  negbin_fit: ({ counts, freq }: { readonly counts: readonly number[]; readonly freq?: readonly number[] | null }) =>
    part(bench.fitCounts({ counts, ...(freq ? { bees: freq } : {}) }), (found) => ({
      n: found.n,
      mean: found.mean,
      var: found.variance,
      k_moment: part(found.kByMoments, (k) => k),
      index_dispersion: found.dispersion.statistic,
      p_dispersion: found.dispersion.pValue,
      k_ml: part(found.fit, ({ k }) => k),
      se_k: part(found.fit, ({ standardErrorOfK }) => standardErrorOfK),
      loglik: part(found.fit, ({ logLikelihood }) => logLikelihood),
      loglik_poisson: found.logLikelihoodPoisson,
      se_mean: part(found.fit, ({ standardErrorOfMean }) => standardErrorOfMean),
      prop_zero: found.shareWithout,
      k_zero_term: part(found.kByZeros, (k) => k),
      prevalence_obs: found.prevalence,
      prevalence_from_mean_k: part(found.fit, ({ prevalence }) => prevalence),
      mean_intensity: found.intensity,
    })),

  prevalence_abundance: ({ mean, k }: { readonly mean: number; readonly k: number | null }) => {
    const found = bench.prevalenceOfAbundance({ mean, k });
    return {
      prevalence: found.prevalence,
      intensity: found.intensity,
      poisson_prevalence: found.prevalenceAtRandom,
    };
  },

  abundance_from_prevalence: ({ P, k }: { readonly P: number; readonly k: number | null }) => ({
    mean: bench.abundanceOfPrevalence({ prevalence: P, k }),
  }),

  negbin_glm: ({
    y,
    X,
    offset,
  }: {
    readonly y: readonly number[];
    readonly X: readonly (readonly number[])[];
    readonly offset?: readonly number[] | null;
  }) =>
    part(bench.fitCountRegression({ counts: y, design: X, ...(offset ? { offset } : {}) }), (fit) => ({
      beta: fit.coefficients,
      se: fit.standardErrors,
      theta: fit.theta,
      loglik: fit.logLikelihood,
    })),
};
