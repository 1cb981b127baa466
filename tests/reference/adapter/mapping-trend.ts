/** Rates over areas and shares over time: the names of the reference cases on ours. */
import { surveillance } from "../../../src/reasoning/index.ts";
import { given } from "../given.ts";

interface Areas {
  readonly y: readonly number[];
  readonly n: readonly number[];
}

const areas = ({ y, n }: Areas): readonly surveillance.AreaCount[] =>
  y.map((cases, i) => ({ cases, population: n[i] as number }));

export const methods = {
  eb_marshall_global: (input: Areas) =>
    given(surveillance.marshallGlobal(areas(input)), ({ mean, variance, excessVariance, rates, smoothed }) => ({
      m: mean,
      s2: variance,
      A: excessVariance,
      rate: rates,
      eb: smoothed,
    })),
  eb_marshall_local: (input: Areas & { readonly nb: readonly (readonly number[])[] }) =>
    given(
      surveillance.marshallLocal(
        areas(input).map((area, i) => ({ ...area, neighbours: input.nb[i] as readonly number[] })),
      ),
      ({ means, byFocalMean, byOwnMeans }) => ({
        local_mean: means,
        eb_focal_mean: byFocalMean,
        eb_own_mean: byOwnMeans,
      }),
    ),
  eb_clayton_kaldor: ({ y, e }: { readonly y: readonly number[]; readonly e: readonly number[] }) =>
    given(
      surveillance.claytonKaldor(y.map((cases, i) => ({ cases, expected: e[i] as number }))),
      ({ byLikelihood, byMoments }) => ({
        moment_nu: given(byMoments, ({ shape }) => shape),
        moment_alpha: given(byMoments, ({ rate }) => rate),
        moment_eb: given(byMoments, ({ smoothed }) => smoothed),
        ml_nu: byLikelihood.shape,
        ml_alpha: byLikelihood.rate,
        ml_eb: byLikelihood.smoothed,
        loglik: byLikelihood.logLikelihood,
      }),
    ),
  cochran_armitage: (input: {
    readonly x: readonly number[];
    readonly n: readonly number[];
    readonly score: readonly number[];
  }) => {
    const { x, n, score } = input;
    const groups = x.map((positive, i) => ({
      positive,
      examined: n[i] as number,
      score: score[i] as number,
    }));
    return given(surveillance.trendTest(groups), ({ z, chiSquare, pValue }) => ({ z, chi2: chiSquare, p: pValue }));
  },
  logistic_random_intercept: (input: {
    readonly x: readonly number[];
    readonly n: readonly number[];
    readonly group: readonly (string | number)[];
    readonly X: readonly (readonly number[])[];
    readonly nq?: number;
  }) => {
    const { x, n, group, X, nq = 25 } = input;
    const rows = x.map((positive, i) => ({
      positive,
      examined: n[i] as number,
      group: String(group[i]),
      covariates: X[i] as readonly number[],
    }));
    return given(surveillance.logisticRandomIntercept(rows, { nodes: nq }), (fit) => ({
      beta: fit.coefficients.map(({ value }) => value),
      se: fit.standardErrors,
      sigma: fit.sigma,
      loglik: fit.logLikelihood,
    }));
  },
};
