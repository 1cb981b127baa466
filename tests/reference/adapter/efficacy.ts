/** Efficacy and comparison of two groups: the names of the reference cases on ours. */
import { bench, efficacy } from "../../../src/reasoning/index.ts";
import { fromPercent, percent, type Result } from "../../../src/units/index.ts";

interface Level {
  readonly conf?: number;
}

interface TreatedAndControl extends Level {
  readonly treated_alive: number;
  readonly treated_n: number;
  readonly control_alive: number;
  readonly control_n: number;
}

interface Table {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

const share = (infested: number, examined: number) => ({ infested, examined });
/** Part of an answer, or the refusal itself. */
const part = <T, U>(result: Result<T>, of: (value: T) => U) => (result.ok ? of(result.value) : result);
const percentOf = (result: Result<number>) => part(result, percent);

function changeInPercent(change: Result<efficacy.ChangeRatio>, estimate: Result<{ readonly value: number }>) {
  const limits = part(change, efficacy.efficacyLimits);
  const end = (name: "low" | "high") => (name in limits ? percent(limits[name as keyof typeof limits]) : limits);
  return {
    efficacy_pct: part(estimate, ({ value }) => percent(value)),
    se_log: part(change, ({ logStandardError }) => logStandardError),
    low: end("low"),
    high: end("high"),
  };
}

export const methods = {
  abbott: ({ treated_alive, treated_n, control_alive, control_n, conf: level = 0.95 }: TreatedAndControl) => {
    const [treated, control] = [share(treated_alive, treated_n), share(control_alive, control_n)];
    const pair = { first: treated, second: control, level };
    const katz = efficacy.efficacyLimits(efficacy.katzRatio(pair));
    const koopman = efficacy.efficacyLimits(efficacy.koopmanRatio(pair));
    return {
      efficacy_pct: part(efficacy.abbott({ treated, control, level }), ({ value }) => percent(value)),
      mortality_form_pct: percentOf(
        efficacy.schneiderOrelli({
          treatedDead: efficacy.shareWithout(treated),
          controlDead: efficacy.shareWithout(control),
        }),
      ),
      katz_lo_pct: percent(katz.low),
      katz_hi_pct: percent(katz.high),
      koopman_lo_pct: percent(koopman.low),
      koopman_hi_pct: percent(koopman.high),
    };
  },

  henderson_tilton: ({
    Tb,
    Ta,
    Cb,
    Ca,
    conf: level = 0.95,
  }: Level & { readonly [name in "Tb" | "Ta" | "Cb" | "Ca"]: number }) => {
    const trial = {
      kind: "counts",
      treated: { before: { mites: Tb }, after: { mites: Ta } },
      control: { before: { mites: Cb }, after: { mites: Ca } },
      level,
    } as const;
    const { low, high, ...rest } = changeInPercent(efficacy.changeRatio(trial), efficacy.hendersonTilton(trial));
    return { ...rest, poisson_lo_pct: low, poisson_hi_pct: high };
  },

  henderson_tilton_prevalence: ({
    xb,
    nb,
    xa,
    na,
    yb,
    mb,
    ya,
    ma,
    conf: level = 0.95,
  }: Level & { readonly [name in "xb" | "nb" | "xa" | "na" | "yb" | "mb" | "ya" | "ma"]: number }) => {
    const trial = {
      kind: "shares",
      treated: { before: share(xb, nb), after: share(xa, na) },
      control: { before: share(yb, mb), after: share(ya, ma) },
      level,
    } as const;
    const { low, high, ...rest } = changeInPercent(efficacy.changeRatio(trial), efficacy.hendersonTilton(trial));
    return { ...rest, lo_pct: low, hi_pct: high };
  },

  sun_shepard: (given: { readonly treated_mortality_pct: number; readonly control_change_pct: number }) => ({
    efficacy_pct: percentOf(
      efficacy.sunShepard({
        treatedDead: fromPercent(given.treated_mortality_pct),
        controlChange: fromPercent(given.control_change_pct),
      }),
    ),
  }),

  schneider_orelli: (given: { readonly treated_mort_pct: number; readonly control_mort_pct: number }) => ({
    efficacy_pct: percentOf(
      efficacy.schneiderOrelli({
        treatedDead: fromPercent(given.treated_mort_pct),
        controlDead: fromPercent(given.control_mort_pct),
      }),
    ),
  }),

  fisher_all: ({ a, b, c, d }: Table) => {
    const { less, greater, twoSided, midP } = bench.fisherTest({ a, b, c, d });
    return {
      less,
      greater,
      two_sided: twoSided,
      midp_less: midP.less,
      midp_greater: midP.greater,
      midp_two_sided_minlike: midP.twoSided,
      midp_two_sided_double: midP.doubled,
    };
  },

  unconditional_2x2: ({ a, b, c, d, alternative }: Table & { readonly alternative?: efficacy.Alternative }) => {
    const shares = {
      ...efficacy.sharesOfTable({ a, b, c, d }),
      ...(alternative === undefined ? {} : { alternative }),
    };
    // The reference program compares statistics without slack and so loses a tie to rounding; ours counts it.
    const barnard = efficacy.barnardTest({ ...shares, tieSlack: 0 });
    const boschloo = efficacy.boschlooTest(shares);
    return {
      barnard_stat: part(barnard, ({ statistic }) => statistic),
      barnard_p: part(barnard, ({ pValue }) => pValue),
      boschloo_stat: part(boschloo, ({ statistic }) => statistic),
      boschloo_p: part(boschloo, ({ pValue }) => pValue),
    };
  },

  power_two_prop_exact: ({
    p1,
    p2,
    n1,
    n2,
    alpha = 0.05,
    test = "fisher",
  }: {
    readonly p1: number;
    readonly p2: number;
    readonly n1: number;
    readonly n2: number;
    readonly alpha?: number;
    readonly test?: string;
  }) => ({
    power: efficacy.fisherPower({
      firstShare: p1,
      secondShare: p2,
      firstSize: n1,
      secondSize: n2,
      alpha,
      by: test === "fisher" ? "fisher" : "mid-p",
    }),
  }),

  n_two_prop: ({
    p1,
    p2,
    alpha = 0.05,
    power = 0.8,
    m,
    icc = 0,
  }: {
    readonly p1: number;
    readonly p2: number;
    readonly alpha?: number;
    readonly power?: number;
    readonly m?: number | null;
    readonly icc?: number;
  }) =>
    part(efficacy.groupSize({ firstShare: p1, secondShare: p2, alpha, power }), (size) => {
      const plain = {
        n_pooled: size.pooled,
        n_unpooled: size.unpooled,
        n_fleiss_cc: size.corrected,
        n_pooled_ceil: size.perGroup,
        n_fleiss_cc_ceil: size.perGroupCorrected,
      };
      if (!m) return plain;
      const clusters = efficacy.clustersPerGroup({ individuals: size.pooled, perCluster: m, icc });
      return {
        ...plain,
        deff: clusters.designEffect,
        clusters_per_arm: clusters.perGroup,
        clusters_per_arm_plus1: clusters.perGroupPlusOne,
      };
    }),

  mcnemar_all: ({ b, c }: { readonly b: number; readonly c: number }) =>
    part(bench.mcnemarTest(b, c), ({ exact, midP, chiSquare, corrected }) => ({
      exact,
      midp: midP,
      chi2: chiSquare.statistic,
      p_asym: chiSquare.pValue,
      chi2_cc: corrected.statistic,
    })),

  paired_exact: ({ before, after }: efficacy.Pairs) => {
    const wilcoxon = efficacy.wilcoxonTest({ before, after });
    return {
      sign_two_sided: part(efficacy.signTest({ before, after }), ({ pValue }) => pValue),
      wilcoxon_exact: part(wilcoxon, ({ pValue }) => pValue),
      wilcoxon_stat: part(wilcoxon, ({ statistic }) => statistic),
      permutation_mean_two_sided: part(efficacy.signFlipTest({ before, after }), ({ pValue }) => pValue),
    };
  },

  risk_difference_ci: ({
    x1,
    n1,
    x2,
    n2,
    conf: level = 0.95,
  }: Level & { readonly [name in "x1" | "n1" | "x2" | "n2"]: number }) => {
    const by = (method: efficacy.DifferenceMethod) =>
      efficacy.shareDifference({ first: share(x1, n1), second: share(x2, n2), level, method });
    const [newcombe, score, mee] = [by("newcombe"), by("miettinen-nurminen"), by("mee")];
    return {
      diff: part(newcombe, ({ value }) => value),
      newcombe_lo: part(newcombe, ({ low }) => low),
      newcombe_hi: part(newcombe, ({ high }) => high),
      miettinen_nurminen_lo: part(score, ({ low }) => low),
      miettinen_nurminen_hi: part(score, ({ high }) => high),
      mee_lo: part(mee, ({ low }) => low),
      mee_hi: part(mee, ({ high }) => high),
    };
  },
};
