/** Decisions: the names of the reference cases on ours. */
import { decision } from "../../../src/reasoning/index.ts";

interface Stakes {
  readonly benefit: number;
  readonly harm: number;
  readonly se: number;
  readonly sp: number;
  readonly test_cost?: number;
}

interface Prices {
  readonly a: number;
  readonly b: number;
  readonly loss_per_p: number;
  readonly cost_treat: number;
}

const stakesOf = ({ benefit, harm, se, sp, test_cost = 0 }: Stakes) => ({
  benefit,
  harm,
  sensitivity: se,
  specificity: sp,
  testCost: test_cost,
});
const pricesOf = ({ a, b, loss_per_p, cost_treat }: Prices) => ({
  belief: { a, b },
  lossAtFull: loss_per_p,
  actCost: cost_treat,
});
const names = { wait: "none", "act-now": "treat", "test-first": "test" } as const;

export const methods = {
  thresholds: (given: Stakes) => {
    const found = decision.testThresholds(stakesOf(given));
    return {
      treat_threshold: found.treatment,
      testing_threshold: found.testing,
      test_treat_threshold: found.testTreatment,
      test_ever_useful: found.worthTesting,
      max_test_cost: found.largestTestCost,
    };
  },

  expected_utilities: (given: Stakes & { readonly p: number }) => {
    const found = decision.expectedUtilities({ ...stakesOf(given), probability: given.p });
    return {
      none: found.wait,
      treat: found.actNow,
      test: found.testFirst,
      best: names[decision.bestByUtility(found)],
    };
  },

  evpi_evsi_beta: (
    given: Prices & {
      readonly ns: readonly number[];
      readonly cost_per_unit?: number;
      readonly cost_fixed?: number;
    },
  ) => {
    const found = decision.valueOfSampling({
      ...pricesOf(given),
      sizes: given.ns,
      costPerBee: given.cost_per_unit ?? 0,
      fixedCost: given.cost_fixed ?? 0,
    });
    return {
      prior_mean: found.priorMean,
      loss_now: found.lossNow,
      threshold_p: found.threshold,
      evpi: found.evpi,
      rows: found.rows.map(({ bees, evsi, actFrom, neverActs, net }) => ({
        n: bees,
        evsi,
        treat_if_x_ge: actFrom ?? neverActs,
        engs: net,
      })),
      best_n: found.bestSize,
    };
  },

  /** Ours is exact for an imperfect test too, so the grid of the integration has nothing to set. */
  evsi_imperfect_test: (
    given: Prices & { readonly n: number; readonly se: number; readonly sp: number; readonly grid?: number },
  ) => {
    const { n, se, sp, grid: _exact } = given;
    const found = decision.valueOfSampling({
      ...pricesOf(given),
      sizes: [n],
      costPerBee: 0,
      fixedCost: 0,
      sensitivity: se,
      specificity: sp,
    });
    return { evsi: found.rows[0]?.evsi };
  },

  evpi_discrete: ({
    prior,
    utilities,
  }: {
    readonly prior: readonly number[];
    readonly utilities: readonly (readonly number[])[];
  }) => decision.valueOfKnowingState({ chances: prior, utilities }),
};
