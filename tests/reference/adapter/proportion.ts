/** Intervals of a proportion, the limits of a zero and coverage: the names of the reference cases on ours. */
import {
  agrestiCoullInterval,
  blakerInterval,
  clopperPearsonInterval,
  type Interval,
  intervalCoverage,
  jeffreysInterval,
  likelihoodRatioInterval,
  midPInterval,
  type ProportionData,
  wilsonCorrectedInterval,
  wilsonInterval,
} from "../../../src/numerics/index.ts";
import { sampling } from "../../../src/reasoning/index.ts";

interface Counts {
  readonly x: number;
  readonly n: number;
  readonly conf?: number;
}

const intervals = {
  ci_clopper_pearson: clopperPearsonInterval,
  ci_wilson: wilsonInterval,
  ci_wilson_cc: wilsonCorrectedInterval,
  ci_jeffreys: jeffreysInterval,
  ci_agresti_coull: agrestiCoullInterval,
  ci_midp: midPInterval,
  ci_likelihood_ratio: likelihoodRatioInterval,
  ci_blaker: blakerInterval,
} as const;

const ends =
  (interval: (data: ProportionData) => Interval) =>
  ({ x, n, conf = 0.95 }: Counts) => {
    const { low, high } = interval({ x, n, level: conf });
    return { lo: low, hi: high };
  };

export const methods = {
  ...Object.fromEntries(Object.entries(intervals).map(([name, interval]) => [name, ends(interval)])),
  ci_agresti_coull: ({ x, n, conf = 0.95 }: Counts) => {
    const { low, high, rawLow, rawHigh } = agrestiCoullInterval({ x, n, level: conf });
    return { lo: low, hi: high, lo_raw: rawLow, hi_raw: rawHigh };
  },
  rule_of_three: ({ n, conf = 0.95 }: Omit<Counts, "x">) => {
    const limits = sampling.limitsOfZero({ examined: n, level: conf });
    if (!limits.ok) return limits;
    return {
      exact_upper_one_sided: limits.value.exactOneSided,
      exact_upper_two_sided: limits.value.exactTwoSided,
      jeffreys_upper_one_sided: limits.value.jeffreysOneSided,
      neg_log_over_n: limits.value.logShortcut,
      three_over_n: limits.value.ruleOfThree,
    };
  },
  zero_of_n_finite: ({ N, n, conf = 0.95 }: { readonly N: number; readonly n: number; readonly conf?: number }) => {
    const zero = { population: N, examined: n, level: conf };
    const most = sampling.finiteUpperLimitOfZero({ ...zero, sensitivity: 1 });
    return { D_max: most.ok ? most.value : most, cannon_roe_approx: sampling.cannonRoeLimitOfZero(zero) };
  },
  coverage_exact: ({
    ci,
    n,
    p,
    conf = 0.95,
  }: {
    readonly ci: keyof typeof intervals;
    readonly n: number;
    readonly p: number;
    readonly conf?: number;
  }) => ({ coverage: intervalCoverage({ interval: intervals[ci], n, p, level: conf }) }),
};
