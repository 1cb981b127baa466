/** Shares that differ between colonies: the names of the reference cases on ours. */
import { bench, sampling } from "../../../src/reasoning/index.ts";
import { given } from "../given.ts";

interface Counts {
  readonly x: readonly number[];
  readonly n: readonly number[];
  readonly conf?: number;
}

const colonies = ({ x, n }: Counts): readonly bench.ColonyCount[] =>
  x.map((positive, i) => ({ positive, examined: n[i] as number }));

export const methods = {
  betabinomial_fit: (input: Counts) =>
    given(bench.betaBinomialFit(colonies(input), { level: input.conf ?? 0.95 }), (fit) =>
      fit.kind === "no-spread"
        ? fit
        : {
            mu: fit.mean.value,
            rho: fit.intraclass,
            alpha: fit.a,
            beta: fit.b,
            loglik: fit.logLikelihood,
            loglik_binomial: fit.logLikelihoodBinomial,
            logit_mu: fit.logitMean,
            se_logit_mu: fit.seLogitMean,
            logit_rho: fit.logitIntraclass,
            se_logit_rho: fit.seLogitIntraclass,
            mu_wald_logit_lo: fit.meanByLogit.low,
            mu_wald_logit_hi: fit.meanByLogit.high,
            mu_profile_lo: fit.mean.low,
            mu_profile_hi: fit.mean.high,
            lr_overdispersion: fit.likelihoodRatio,
            p_half_chi2: fit.pValue,
          },
    ),
  icc_anova: (input: Counts) =>
    given(bench.intraclassCorrelation(colonies(input)), (icc) => ({
      p: icc.share,
      msb: icc.meanSquareBetween,
      msw: icc.meanSquareWithin,
      n0: icc.typicalBees,
      icc_anova: icc.byVariance,
      icc_fleiss_cuzick: icc.byFleissCuzick,
      pearson_chi2: icc.pearsonChiSquare,
      df: icc.degrees,
      heterogeneity_factor: icc.heterogeneity,
      deff_mean: icc.designEffect,
      deff_weighted: icc.designEffectWeighted,
      n_eff: given(icc.effectiveBees, (bees) => bees),
    })),
  cluster_prevalence_ci: (input: Counts) =>
    given(bench.clusterPrevalence(colonies(input), { level: input.conf ?? 0.95 }), (found) =>
      found.kind !== "estimated"
        ? found
        : {
            p: found.byShare.value,
            se_ratio: found.standardError,
            deff: found.designEffect,
            wald_t_lo: found.byShare.low,
            wald_t_hi: found.byShare.high,
            logit_t_lo: found.byLogit.low,
            logit_t_hi: found.byLogit.high,
            wilson_neff_lo: found.byWilson.low,
            wilson_neff_hi: found.byWilson.high,
            korn_graubard_neff: found.kornGraubardBees,
            korn_graubard_lo: found.byKornGraubard.low,
            korn_graubard_hi: found.byKornGraubard.high,
            colony_mean: found.meanColony.value,
            colony_mean_t_lo: found.meanColony.low,
            colony_mean_t_hi: found.meanColony.high,
          },
    ),
  n_clusters_for_precision: (input: {
    readonly p: number;
    readonly half_width: number;
    readonly icc: number;
    readonly m: number;
    readonly conf?: number;
  }) => {
    const { simpleBees, designEffect, bees, colonies } = sampling.coloniesForPrecision({
      expectedPrevalence: input.p,
      margin: input.half_width,
      intraclass: input.icc,
      beesPerColony: input.m,
      level: input.conf ?? 0.95,
    });
    return { n_srs: simpleBees, deff: designEffect, n_total: bees, clusters: colonies };
  },
};
