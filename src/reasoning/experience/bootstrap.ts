/** How far a mean over cases may lie from what more such cases would give. */
import { randomStream } from "../../numerics/index.ts";
import { type Estimate, ensure } from "../../units/index.ts";

/** Samples of cases drawn anew. */
const resamples = 2000;

/**
 * The mean with the percentile limits of means of cases drawn anew, with the same seed the same.
 *
 * Model: cases are independent; each counts as a whole. Too narrow for a handful of cases.
 *
 * @throws DomainError for fewer than two values, or a value that is not finite
 * @source Efron & Tibshirani 1993, An introduction to the bootstrap, chapter 13 (from memory)
 */
export function bootstrapMean(
  values: readonly number[],
  { level, seed, rule }: { readonly level: number; readonly seed: number; readonly rule: string },
): Estimate {
  const n = values.length;
  ensure(n >= 2, "values", n, "two or more");
  ensure(
    values.every(Number.isFinite),
    "values",
    values.find((each) => !Number.isFinite(each)),
    "finite",
  );
  const random = randomStream({ seed, stream: 0 });
  const means = Float64Array.from({ length: resamples }, () => {
    let sum = 0;
    for (let draw = 0; draw < n; draw++) sum += values[Math.floor(random.next() * n)] as number;
    return sum / n;
  }).sort();
  const at = (share: number) => means[Math.round(share * (resamples - 1))] as number;
  const value = values.reduce((sum, each) => sum + each, 0) / n;
  const tail = (1 - level) / 2;
  return {
    value,
    low: at(tail),
    high: at(1 - tail),
    level,
    interval: "confidence",
    method: "bootstrap-percentile",
    rule,
    n,
  };
}
