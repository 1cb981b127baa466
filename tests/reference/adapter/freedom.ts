/** Rounds of none found: the names of the reference cases on ours. */
import { surveillance } from "../../../src/reasoning/index.ts";
import { given } from "../given.ts";

interface Risks {
  readonly rr: readonly number[];
  readonly pop: readonly number[];
}

const strata = ({ rr, pop }: Risks): readonly surveillance.RiskStratum[] =>
  rr.map((relativeRisk, i) => ({ relativeRisk, share: pop[i] as number }));

interface Tested {
  readonly stratum: number;
  readonly clusters: readonly { readonly n: number; readonly se: number }[];
}

export const methods = {
  pfree_series: (input: {
    readonly prior_free: number;
    readonly ses: readonly number[];
    readonly p_intro: number | readonly number[];
    readonly discount_first?: boolean;
  }) =>
    given(
      surveillance.freedomSeries({
        priorFree: input.prior_free,
        sensitivities: input.ses,
        introduction: input.p_intro,
        priorAt: input.discount_first ? "period-before" : "first-round",
      }),
      (rounds) => ({
        rows: rounds.map(({ round, before, after, afterIntroduction }) => ({
          t: round,
          prior_free: before,
          post_free: after,
          post_free_after_intro: afterIntroduction,
        })),
      }),
    ),
  pfree_equilibrium: ({ se, p_intro }: { readonly se: number; readonly p_intro: number }) => {
    const { before, after } = surveillance.freedomEquilibrium({ sensitivity: se, introduction: p_intro });
    return { prior_free: before, post_free: after };
  },
  sse_for_target: (input: { readonly prior_free: number; readonly p_intro: number; readonly target: number }) => {
    const { prior_free: priorFree, p_intro: introduction, target } = input;
    const { priorAfterIntroduction, raw } = surveillance.sensitivityForTarget({ priorFree, introduction, target });
    return { prior_after_intro: priorAfterIntroduction, sse_needed: raw };
  },
  adjusted_risk: (input: Risks) => given(surveillance.adjustedRisks(strata(input)), (ar) => ({ ar })),
  scenario_tree: (
    input: Risks & {
      readonly pstar_cluster: number;
      readonly pstar_unit: number;
      readonly groups: readonly Tested[];
    },
  ) =>
    given(
      surveillance.scenarioTree({
        clusterPrevalence: input.pstar_cluster,
        unitPrevalence: input.pstar_unit,
        strata: strata(input),
        clusters: input.groups.flatMap(({ stratum, clusters }) =>
          clusters.map(({ n, se }) => ({ stratum, units: n, sensitivity: se })),
        ),
      }),
      ({ risks, infestedShares, byStratum, sensitivity }) => ({
        ar: risks,
        epi: infestedShares,
        sse_by_stratum: byStratum,
        sse: sensitivity,
      }),
    ),
  sse_two_stage_finite: ({ H, D, seh }: { readonly H: number; readonly D: number; readonly seh: readonly number[] }) =>
    given(surveillance.twoStageFinite({ clusters: H, infested: D, sensitivities: seh }), ({ approximate, exact }) => ({
      approx: approximate,
      exact_equal_seh: exact,
    })),
  allocate_risk_based: (
    input: Risks & {
      readonly pstar: number;
      readonly se: number;
      readonly cost: readonly number[];
      readonly target: number;
      readonly caps?: readonly number[] | null;
    },
  ) => {
    const { pstar, se, cost, target, caps } = input;
    const plan = { designPrevalence: pstar, sensitivity: se, target };
    const found = surveillance.allocateByRisk({
      ...plan,
      strata: strata(input).map((stratum, i) => ({
        ...stratum,
        cost: cost[i] as number,
        ...(caps ? { cap: caps[i] as number } : {}),
      })),
    });
    return {
      ar: given(surveillance.adjustedRisks(strata(input)), (risks) => risks),
      cost: given(found, (each) => each.cost),
      n: given(found, (each) => each.units),
      sse: given(found, (each) => each.sensitivity),
      proportional_n: surveillance.representativeUnits(plan),
    };
  },
};
