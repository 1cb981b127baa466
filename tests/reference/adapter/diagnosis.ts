/** Diagnosis and its scores: the names of the reference cases on ours. */
import { differential } from "../../../src/reasoning/index.ts";
import type { Result } from "../../../src/units/index.ts";

interface Evidence {
  readonly evidence: Readonly<Record<string, 0 | 1>>;
}

interface Network extends Evidence {
  readonly prior: readonly number[];
  readonly link: readonly (readonly number[])[];
  readonly leak: readonly number[];
}

const part = <T, U>(result: Result<T>, of: (value: T) => U) => (result.ok ? of(result.value) : result);
const looked = ({ evidence }: Evidence): ReadonlyMap<number, boolean> =>
  new Map(Object.entries(evidence).map(([finding, state]) => [Number(finding), state === 1]));
const networkOf = (given: Network) => ({
  prior: given.prior,
  link: given.link,
  leak: given.leak,
  evidence: looked(given),
});

export const methods = {
  noisy_or: (given: Network & { readonly top?: number; readonly max_eig?: boolean }) => {
    const { top = 5, max_eig = true } = given;
    return part(differential.noisyOr(networkOf(given)), (found) => {
      const byFinding = (of: (outlook: differential.FindingOutlook) => number) =>
        Object.fromEntries(max_eig ? found.outlook.map((each) => [each.finding, of(each)]) : []);
      return {
        p_evidence: found.evidenceProbability,
        posterior: found.posterior,
        entropy_bits: found.entropyBits,
        p_no_disease: found.noCondition,
        top_states: found.states.slice(0, top).map(({ present, probability }) => ({
          state: given.prior.map((_, condition) => Number(present.includes(condition))),
          p: probability,
        })),
        p_finding: byFinding(({ probability }) => probability),
        eig_joint_bits: byFinding(({ jointBits }) => jointBits),
        eig_sum_of_marginals_bits: byFinding(({ marginalBits }) => marginalBits),
      };
    });
  },

  quickscore: (given: Network) =>
    part(differential.quickscore(networkOf(given)), ({ evidenceProbability, posterior }) => ({
      p_evidence: evidenceProbability,
      posterior,
    })),

  naive_bayes_single: (
    given: Evidence & { readonly prior: readonly number[]; readonly sens: readonly (readonly number[])[] },
  ) => ({
    posterior: part(
      differential.singleFault({ prior: given.prior, rates: given.sens, evidence: looked(given) }),
      (posterior) => posterior,
    ),
  }),

  calibration: ({
    p,
    y,
    bins = 10,
  }: {
    readonly p: readonly number[];
    readonly y: readonly (0 | 1)[];
    readonly bins?: number;
  }) =>
    part(differential.calibration({ stated: p, outcomes: y.map((each) => each === 1), bins }), (found) => ({
      brier: found.brier,
      log_loss: found.logLoss,
      ece_equal_width: found.expectedError,
      mce: found.largestError,
      ece_equal_mass: found.expectedErrorEqualMass,
      reliability: found.murphy.reliability,
      resolution: found.murphy.resolution,
      uncertainty: found.murphy.uncertainty,
      brier_skill: part(found.brierSkill, (skill) => skill),
      auc: part(found.areaUnderCurve, (area) => area),
      recal_intercept: part(found.recalibration, ({ intercept }) => intercept),
      recal_slope: part(found.recalibration, ({ slope }) => slope),
      calibration_in_the_large: part(found.inTheLarge, (shift) => shift),
      bins: found.bins.map(({ bin, n, meanStated, observed }) => ({
        bin,
        n,
        mean_p: meanStated,
        obs: observed.value,
        cp_lo: observed.low,
        cp_hi: observed.high,
      })),
    })),

  multiclass_scores: ({ P, y }: { readonly P: readonly (readonly number[])[]; readonly y: readonly number[] }) =>
    part(differential.rankingScores({ stated: P, held: y }), (found) => ({
      brier: found.brier,
      log_loss: part(found.logLoss, (loss) => loss),
      top1: found.topOne,
      top3: found.topThree,
      mean_reciprocal_rank: found.meanReciprocalRank,
    })),
};
