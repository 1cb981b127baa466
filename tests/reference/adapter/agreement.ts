/** Agreement of two readers: the names of the reference cases on ours. */
import { bench } from "../../../src/reasoning/index.ts";
import type { Result } from "../../../src/units/index.ts";

interface Reading {
  readonly table: bench.AgreementTable;
  readonly conf?: number;
}

const part = <T, U>(result: Result<T>, of: (value: T) => U) => (result.ok ? of(result.value) : result);

export const methods = {
  kappa: ({ table, conf: level = 0.95, weights = "none" }: Reading & { readonly weights?: bench.KappaWeights }) =>
    part(bench.agreement({ table, weights, level }), ({ observed, expected, kappa, pabak, indices }) => ({
      po: observed,
      pe: expected,
      kappa: part(kappa, ({ value }) => value),
      se: part(kappa, ({ standardError }) => standardError),
      se0: part(kappa, ({ nullStandardError }) => nullStandardError),
      z: part(kappa, ({ z }) => part(z, (value) => value)),
      lo: part(kappa, ({ low }) => low),
      hi: part(kappa, ({ high }) => high),
      ...(pabak ? { pabak: pabak.value, pabak_lo: pabak.low, pabak_hi: pabak.high } : {}),
      ...(indices
        ? {
            prevalence_index: indices.prevalence,
            bias_index: indices.bias,
            p_pos: part(indices.onFirst, (value) => value),
            p_neg: part(indices.onSecond, (value) => value),
          }
        : {}),
    })),

  gwet_ac1: ({ table, conf: level = 0.95 }: Reading) =>
    part(bench.agreementAc1({ table, level }), (found) => ({
      pa: found.observed,
      pe: found.expected,
      ac1: found.value,
      se_n: found.standardErrorByN,
      se_n_minus_1: found.standardError,
      lo_t: found.low,
      hi_t: found.high,
    })),
};
