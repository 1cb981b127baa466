/** True prevalence: the names of the reference cases on ours. */
import type { Interval } from "../../../src/numerics/index.ts";
import { bench } from "../../../src/reasoning/index.ts";

type Shape = readonly [number, number];

const shape = ([a, b]: Shape) => ({ a, b });
const ends = (name: string, { low, high }: Interval) => ({ [`${name}_lo`]: low, [`${name}_hi`]: high });

/** As the scripts write a threshold into a name: six digits, an exponent of two digits below 0.0001. */
const asInNames = (value: number): string =>
  value !== 0 && value < 1e-4
    ? value.toExponential().replace(/e-(\d)$/, "e-0$1")
    : String(Number(value.toPrecision(6)));

export const methods = {
  rogan_gladen: (input: {
    readonly x: number;
    readonly n: number;
    readonly se: number;
    readonly sp: number;
    readonly conf?: number;
  }) => {
    const { x, n, se, sp, conf = 0.95 } = input;
    const found = bench.truePrevalence({ positive: x, examined: n, sensitivity: se, specificity: sp, level: conf });
    if (!found.ok) return found;
    const { apparent, raw, value, standardError, wald, clopperPearson, wilson, blaker } = found.value;
    return {
      ap: apparent,
      tp_raw: raw,
      tp: value,
      se_wald: standardError,
      ...ends("wald", wald),
      ...ends("clopper_pearson", clopperPearson),
      ...ends("wilson", wilson),
      ...ends("blaker", blaker),
    };
  },
  rogan_gladen_est_sesp: (input: {
    readonly x: number;
    readonly n: number;
    readonly xse: number;
    readonly nse: number;
    readonly xsp: number;
    readonly nsp: number;
    readonly conf?: number;
  }) => {
    const { x, n, xse, nse, xsp, nsp, conf = 0.95 } = input;
    const found = bench.deltaPrevalence({
      apparent: bench.shareOf(x, n),
      sensitivity: bench.shareOf(xse, nse),
      specificity: bench.shareOf(xsp, nsp),
      level: conf,
    });
    if (!found.ok) return found;
    const { raw, standardError, rawLimits } = found.value;
    return { tp_raw: raw, sd: standardError, lo_raw: rawLimits.low, hi_raw: rawLimits.high };
  },
  lang_reiczigel: (input: {
    readonly ap: number;
    readonly n: number;
    readonly se: number;
    readonly nse: number;
    readonly sp: number;
    readonly nsp: number;
    readonly conf?: number;
  }) => {
    const { ap, n, se, nse, sp, nsp, conf = 0.95 } = input;
    const found = bench.langReiczigelPrevalence({
      apparent: { share: ap, of: n },
      sensitivity: { share: se, of: nse },
      specificity: { share: sp, of: nsp },
      level: conf,
    });
    if (!found.ok) return found;
    const { raw, centre, rawLimits, limits } = found.value;
    return {
      tp_raw: raw,
      centre,
      lo_raw: rawLimits.low,
      hi_raw: rawLimits.high,
      lo: limits.low,
      hi: limits.high,
    };
  },
  bayes_true_prev: (input: {
    readonly x: number;
    readonly n: number;
    readonly prior_p?: Shape;
    readonly prior_se?: Shape | null;
    readonly prior_sp?: Shape | null;
    readonly se?: number | null;
    readonly sp?: number | null;
    readonly thresholds?: readonly number[];
    readonly k?: number;
    readonly grid?: number;
  }) => {
    const { x, n, prior_p = [1, 1], prior_se, prior_sp, se, sp, thresholds = [0.05, 0.1], k, grid } = input;
    const found = bench.prevalencePosterior({
      positive: x,
      examined: n,
      prevalence: shape(prior_p),
      sensitivity: prior_se ? shape(prior_se) : (se as number),
      specificity: prior_sp ? shape(prior_sp) : (sp as number),
      thresholds,
      ...(k === undefined && grid === undefined ? {} : { work: { nodes: k ?? 32, points: grid ?? 6000 } }),
    });
    if (!found.ok) return found;
    const { mean, standardDeviation, low, median, high, above } = found.value;
    return {
      mean,
      sd: standardDeviation,
      q025: low,
      q50: median,
      q975: high,
      ...Object.fromEntries(above.map(({ threshold, probability }) => [`P(p>${asInNames(threshold)})`, probability])),
    };
  },
};
