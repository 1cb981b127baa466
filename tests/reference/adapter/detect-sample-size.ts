/** Sample sizes to detect: the names of the reference cases on ours. */
import { sampling } from "../../../src/reasoning/index.ts";
import type { Result } from "../../../src/units/index.ts";

/** The value, or the refusal as the library says it. */
const or = <T>(result: Result<T>): unknown => (result.ok ? result.value : result);

interface Finite {
  readonly N: number;
  readonly D: number;
  readonly conf?: number;
  readonly se?: number;
}

interface CutPoint {
  readonly se: number;
  readonly sp: number;
  readonly alpha?: number;
  readonly beta?: number;
  readonly nmax?: number;
}

interface Stages {
  readonly H: number | null;
  readonly p_cluster: number;
  readonly p_within: number;
  readonly se: number;
  readonly conf?: number;
}

const stages = ({ H, p_cluster, p_within, se, conf = 0.95 }: Stages) => ({
  colonies: H,
  colonyPrevalence: p_cluster,
  beePrevalence: p_within,
  sensitivity: se,
  confidence: conf,
});

export const methods = {
  n_detect_binomial: ({
    p,
    conf = 0.95,
    se = 1,
  }: {
    readonly p: number;
    readonly conf?: number;
    readonly se?: number;
  }) => {
    const design = { designPrevalence: p, confidence: conf, sensitivity: se };
    const bees = sampling.detectionSampleSize(design);
    return {
      n: bees,
      n_real: sampling.unroundedDetectionSize(design),
      prob_detect: sampling.detectionProbability({ bees, designPrevalence: p, sensitivity: se }),
    };
  },
  n_detect_hypergeometric: ({ N, D, conf = 0.95, se = 1 }: Finite) => {
    const group = { population: N, infested: D, sensitivity: se };
    const design = sampling.finiteDetectionDesign({ ...group, confidence: conf });
    if (!design.ok) return { n: design, max_prob_detect: or(sampling.mostDetectable(group)) };
    const { examined, reached, oneFewer } = design.value;
    return { n: examined, prob_detect: reached, prob_detect_n_minus_1: oneFewer };
  },
  n_detect_cannon_roe: ({ N, D, conf = 0.95, se = 1 }: Finite) => {
    const design = { population: N, infested: D, confidence: conf, sensitivity: se };
    const { cannonRoe, macDiarmid } = sampling.shortcutSizes(design);
    return { n_approx: sampling.cannonRoeSize(design), n: cannonRoe, n_macdiarmid: macDiarmid };
  },
  surveillance_prob: (input: {
    readonly N: number | null;
    readonly D: number;
    readonly n: number;
    readonly se: number;
    readonly sp: number;
    readonly c: number;
  }) => {
    const { N, D, n, se, sp, c } = input;
    const chances = sampling.surveyChances({
      population: N,
      infested: D,
      sensitivity: se,
      specificity: sp,
      examined: n,
      callInfestedFrom: c,
    });
    if (!chances.ok) return chances;
    const { finds, clears, oneShort } = chances.value;
    return { se_pop: finds, sp_pop: clears, p_exact_c_minus_1: or(oneShort) };
  },
  n_cutpoint_survey: (input: CutPoint & { readonly N: number | null; readonly D: number }) => {
    const { N, D, se, sp, alpha = 0.05, beta = 0.05, nmax = 3000 } = input;
    const design = sampling.smallestSurvey({
      population: N,
      infested: D,
      sensitivity: se,
      specificity: sp,
      missAllowed: alpha,
      falseAlarmAllowed: beta,
      ...(N === null ? { searchUpTo: nmax } : {}),
    });
    if (!design.ok) return { n: design };
    const { examined, callInfestedFrom, finds, clears } = design.value;
    return { n: examined, c: callInfestedFrom, se_pop: finds, sp_pop: clears };
  },
  n_cutpoint_infinite: (input: CutPoint & { readonly p: number }) => {
    const { p, se, sp, alpha = 0.05, beta = 0.05, nmax = 6000 } = input;
    const design = sampling.smallestSurvey({
      population: null,
      infested: p,
      sensitivity: se,
      specificity: sp,
      missAllowed: alpha,
      falseAlarmAllowed: beta,
      searchUpTo: nmax,
    });
    if (!design.ok) return { n: design };
    const { examined, callInfestedFrom, readAsNoneUpTo, missed, falseAlarm } = design.value;
    return {
      n: examined,
      max_positives_if_free: readAsNoneUpTo,
      c: callInfestedFrom,
      miss: missed,
      false_alarm: falseAlarm,
    };
  },
  two_stage: (input: Stages & { readonly m: number }) => {
    const { colonySensitivity, ofMany, ofCounted } = sampling.twoStageDesign({
      ...stages(input),
      beesPerColony: input.m,
    });
    return {
      se_cluster: colonySensitivity,
      clusters_binomial: ofMany,
      ...(ofCounted && { D_clusters: ofCounted.infested, clusters_hypergeometric: or(ofCounted.colonies) }),
    };
  },
  least_cost_two_stage: (
    input: Stages & { readonly cost_cluster: number; readonly cost_unit: number; readonly mmax: number },
  ) => {
    const { cost_cluster, cost_unit, mmax } = input;
    const best = sampling.cheapestTwoStage({
      ...stages(input),
      costPerColony: cost_cluster,
      costPerBee: cost_unit,
      mostBees: mmax,
    });
    if (!best.ok) return best;
    const { beesPerColony, colonies, cost, colonySensitivity, near } = best.value;
    return {
      m: beesPerColony,
      clusters: colonies,
      cost,
      se_cluster: colonySensitivity,
      neighbours: near.map((each) => [each.beesPerColony, each.colonies, each.cost]),
    };
  },
};
