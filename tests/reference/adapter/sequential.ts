/** Sequential sampling: the names of the reference cases on ours. */
import { sampling } from "../../../src/reasoning/index.ts";
import { given } from "../given.ts";

interface WaldInput {
  readonly p0: number;
  readonly p1: number;
  readonly alpha: number;
  readonly beta: number;
}

interface PlanInput extends WaldInput {
  readonly n_max: number;
  readonly ps: readonly number[];
  readonly n_min?: number;
  readonly batch?: number;
  readonly final?: "midline" | "none";
}

interface PairInput {
  readonly pA0: number;
  readonly pA1: number;
  readonly pB0: number;
  readonly pB1: number;
  readonly alpha: number;
  readonly beta: number;
  readonly n_max: number;
  readonly ps: readonly number[];
}

const test = ({ p0, p1, alpha, beta }: WaldInput): sampling.SequentialTest => ({
  lowPrevalence: p0,
  highPrevalence: p1,
  alpha,
  beta,
});

const named = ({ slope, lowIntercept, highIntercept }: sampling.SequentialLines) => ({
  slope,
  h0: lowIntercept,
  h1: highIntercept,
});

const atEnd = { midline: "midline", none: "undecided" } as const;

export const methods = {
  sprt_lines: (input: WaldInput) =>
    given(sampling.sequentialLines(test(input)), (lines) => ({
      ...named(lines),
      min_n_low: lines.firstLow,
      min_n_high: lines.firstHigh,
    })),
  sprt_wald_oc_asn: (input: WaldInput & { readonly h_values?: readonly number[] }) =>
    given(sampling.waldCurve(test(input), [...(input.h_values ?? [-2, -1, -0.5, 0.5, 1, 2]), 0]), (points) => ({
      rows: points.map(({ h, prevalence, low, averageBees }) => ({ h, p: prevalence, oc: low, asn: averageBees })),
    })),
  sprt_exact: ({ n_max, ps, n_min = 1, batch = 1, final = "midline", ...input }: PlanInput) =>
    given(
      sampling.sequentialPlan({ ...test(input), maxBees: n_max, minBees: n_min, batch, atEnd: atEnd[final] }),
      (plan) => ({
        lines: named(plan.lines),
        rows: sampling.sequentialCharacteristics(plan, ps).map((row) => ({
          p: row.prevalence,
          p_low: row.low,
          p_high: row.high,
          p_undecided: row.undecided,
          asn: row.averageBees,
          sd_n: row.sdBees,
          p_reach_nmax: row.reachesEnd,
        })),
      }),
    ),
  sprt_three_decision: ({ pA0, pA1, pB0, pB1, alpha, beta, n_max, ps }: PairInput) =>
    given(
      sampling.threeWayPlan({
        lower: test({ p0: pA0, p1: pA1, alpha, beta }),
        upper: test({ p0: pB0, p1: pB1, alpha, beta }),
        maxBees: n_max,
      }),
      (plan) => ({
        rows: sampling.threeWayCharacteristics(plan, ps).map((row) => ({
          p: row.prevalence,
          light: row.light,
          moderate: row.moderate,
          severe: row.severe,
          conflict: row.contradictory,
          asn: row.averageBees,
          p_reach_nmax: row.reachesEnd,
        })),
      }),
    ),
  fixed_plan_oc: ({ n, c, ps }: { readonly n: number; readonly c: number; readonly ps: readonly number[] }) => ({
    p_low: sampling.fixedPlanLow({ bees: n, most: c, prevalences: ps }),
  }),
};
